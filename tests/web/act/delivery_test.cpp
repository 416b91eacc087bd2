// The Delivery section through the door the host uses: templates, own values, documents, lists.
#include <doctest/doctest.h>

#include <string>

#include "core/handover/fdl/plan_delivery.h"
#include "core/handover/fdl/read.h"
#include "tests/web/support/harness.h"

using namespace widegate;
using namespace widegate::test;

namespace {

const Device& phone() { return devices()[3]; }

std::string figure(const Screen& screen, std::string_view key) {
  for (const ResultRow& row : screen.ui.mirror().results) {
    if (row.key == key) return row.value_text;
  }
  return {};
}

const Section& section(const Screen& screen) {
  for (const Section& each : screen.ui.mirror().sections) {
    if (each.id == "delivery") return each;
  }
  FAIL("no section");
  return screen.ui.mirror().sections.front();
}

bool noted(const Screen& screen, std::string_view start, std::string_view part) {
  for (const std::string& note : section(screen).notes) {
    if (note.starts_with(start) && note.find(part) != std::string::npos) return true;
  }
  return false;
}

bool has_control(const Screen& screen, std::string_view id) {
  return screen.ui.mirror().find(id) != nullptr;
}

}  // namespace

TEST_CASE("every delivery shows its canvas") {
  Screen screen(phone());
  screen.settle();
  const std::pair<const char*, const char*> rows[] = {{"UHD", "3840 × 2160"},
                                                      {"SCOPE_4K", "4096 × 1716"},
                                                      {"FLAT_4K", "3996 × 2160"},
                                                      {"HD_PROXY", "1920 × 1080"}};
  for (const auto& [id, size] : rows) {
    const auto& at_id = id;
    CAPTURE(at_id);
    CHECK(screen.ui.set("delivery:template", id));
    screen.settle();
    CHECK(screen.control("delivery:template").edit_text == id);
    CHECK(figure(screen, "delivery.canvas") == size);
    CHECK_FALSE(figure(screen, "delivery.framing").empty());
  }
  CHECK(screen.ui.set("delivery:template", "VFX_PULL"));
  CHECK(screen.ui.set("delivery:source", "sensor"));
  const Plan plan;
  CHECK(figure(screen, "delivery.scale") == "1");
  CHECK(screen.ui.set("delivery:template", "no such template"));
  CHECK(screen.control("delivery:template").edit_text == "VFX_PULL");
}

TEST_CASE("the own template takes typed values, and refuses others beside the control") {
  Screen screen(phone());
  screen.settle();
  CHECK_FALSE(has_control(screen, "delivery:own/target_dimensions/width"));
  screen.ui.set("delivery:template", "SCOPE_4K");
  screen.ui.activate("command:own-from-this");
  CHECK(screen.control("delivery:template").edit_text == "OWN");
  CHECK(figure(screen, "delivery.canvas") == "4096 × 1716");
  CHECK(screen.ui.set("delivery:own/maximum_dimensions", "false"));
  CHECK_FALSE(has_control(screen, "delivery:own/pad_to_maximum"));
  CHECK(screen.ui.set("delivery:own/target_dimensions/width", "2000"));
  CHECK(screen.ui.set("delivery:own/fit_method", "width"));
  CHECK(figure(screen, "delivery.canvas").starts_with("2000 × "));
  for (const char* wrong : {"", "0", "-2", "1.5", "40000", "wide"}) {
    CAPTURE(wrong);
    CHECK_FALSE(screen.ui.set("delivery:own/target_dimensions/width", wrong));
    CHECK_FALSE(screen.control("delivery:own/target_dimensions/width").problem.empty());
    CHECK(figure(screen, "delivery.canvas").starts_with("2000 × "));
  }
  screen.ui.reset("delivery:own/target_dimensions/width");
  CHECK(screen.value("delivery:own/target_dimensions/width") == "3840");
  CHECK_FALSE(screen.control("command:undo").enabled);
}

TEST_CASE("a template that asks for a missing layer says so, and comes back") {
  Screen screen(phone());
  screen.settle();
  screen.ui.set("/deliverable/frame_lines/0/protection", "0");
  screen.ui.set("delivery:template", "OWN");
  screen.ui.set("delivery:own/fit_source", "framing_decision.protection_dimensions");
  screen.settle();
  CHECK(noted(screen, "Fails", "/fit_source"));
  CHECK(figure(screen, "delivery.canvas").empty());
  screen.ui.activate("command:save-delivery");
  CHECK(screen.platform.saved.empty());
  CHECK(screen.ui.mirror().message.starts_with("No result document"));
  screen.ui.set("/deliverable/frame_lines/0/protection", "5");
  CHECK_FALSE(figure(screen, "delivery.protection").empty());
}

TEST_CASE("the choice and the own template stay on the device") {
  Screen screen(phone());
  screen.settle();
  screen.ui.set("delivery:template", "OWN");
  screen.ui.set("delivery:source", "sensor");
  screen.ui.set("delivery:own/target_dimensions/width", "2222");
  screen.ui.set("delivery:own/preserve_from_source_canvas", "canvas.dimensions");
  screen.settle();
  Screen again(phone(), screen.platform.kept);
  again.settle();
  CHECK(again.value("delivery:own/target_dimensions/width") == "2222");
  CHECK(again.value("delivery:own/preserve_from_source_canvas") == "Canvas");
  CHECK(again.control("delivery:source").edit_text == "sensor");
  auto damaged = screen.platform.kept;
  damaged["delivery"] = "what 7";
  damaged["delivery-own"] = "{";
  Screen other(phone(), damaged);
  other.settle();
  CHECK(other.control("delivery:template").edit_text == "UHD");
}

TEST_CASE("documents are handed over, and a list comes back in") {
  Screen screen(phone());
  screen.settle();
  screen.ui.set("/title", "ferry");
  screen.ui.set("/deliverable/frame_lines/0/aspect", "1.85");
  for (const char* id :
       {"command:save-delivery", "command:save-delivery-source", "command:save-template"}) {
    screen.ui.activate(id);
  }
  const auto saved = screen.platform.saved;
  REQUIRE(saved.count("ferry-UHD.fdl") == 1);
  REQUIRE(saved.count("ferry.fdl") == 1);
  REQUIRE(saved.count("ferry-UHD-template.fdl") == 1);
  for (const auto& [name, text] : saved) {
    const auto& at_name = name;
    CAPTURE(at_name);
    CHECK(fdl::read_document(text).has_value());
  }
  screen.ui.activate("command:open-framing");
  CHECK(screen.platform.asked_for == "framing");
  screen.ui.set("/deliverable/frame_lines/0/aspect", "2.39");
  screen.ui.file_opened("framing", "ferry.fdl", saved.at("ferry.fdl"));
  screen.settle();
  CHECK(screen.value("/deliverable/frame_lines/0/aspect") == "1.85");
  CHECK(noted(screen, "Fine: taken", "/"));
  CHECK(screen.ui.mirror().message.find("ferry.fdl") != std::string::npos);
  screen.ui.activate("command:clear-import");
  CHECK_FALSE(noted(screen, "Fine: taken", "/"));
  screen.ui.activate("command:undo");
  CHECK(screen.value("/deliverable/frame_lines/0/aspect") == "2.39");
}

TEST_CASE("a damaged list changes nothing and says where") {
  Screen screen(phone());
  screen.settle();
  screen.ui.set("/deliverable/frame_lines/0/aspect", "1.85");
  for (const char* text : {"", "{", "[]", R"({"uuid":"x","version":{"major":3,"minor":0}})",
                           R"({"uuid":"AAAAAAAA-AAAA-AAAA-AAAA-AAAAAAAAAAAA",
                               "version":{"major":2,"minor":0}})"}) {
    CAPTURE(text);
    screen.ui.file_opened("framing", "broken.fdl", text);
    screen.settle();
    CHECK(screen.value("/deliverable/frame_lines/0/aspect") == "1.85");
    CHECK(screen.ui.mirror().message.find("broken.fdl was not taken") == 0);
    CHECK(screen.ui.mirror().message.find("unchanged") != std::string::npos);
    CHECK(noted(screen, "Fails", "/"));
  }
}

TEST_CASE("the section can be drawn and pressed on every device in every template") {
  for (const Device& device : devices()) {
    CAPTURE(device.name);
    Screen screen(device);
    screen.settle();
    if (device.width < 300) continue;
    for (const char* id : {"UHD", "VFX_PULL", "OWN"}) {
      screen.ui.set("delivery:template", id);
      screen.reveal("command:save-delivery");
      CHECK(screen.control("command:save-delivery").visible);
    }
  }
}

TEST_CASE("what rests during a drag is made afresh when the finger lifts") {
  Screen screen(devices().back());
  screen.settle();
  const auto ranking = [&] { return screen.control("command:choose-format").choices; };
  const auto before = ranking();
  const std::string canvas = figure(screen, "delivery.framing");
  screen.reveal("/deliverable/frame_lines/0/aspect");
  const RectPx track = screen.control("/deliverable/frame_lines/0/aspect").rect;
  screen.drag(track.x + track.width * 0.5F, track.y + track.height / 2,
              track.x + track.width * 0.2F, track.y + track.height / 2);
  screen.settle();
  CHECK(ranking() != before);
  CHECK(figure(screen, "delivery.framing") != canvas);
}
