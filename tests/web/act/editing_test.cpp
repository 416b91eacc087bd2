// Changing a plan by finger, mouse, typing and from the page; undo; what is kept.
#include <doctest/doctest.h>

#include <string>

#include "core/handover/link/link.h"
#include "core/plan/plan_json.h"
#include "imgui.h"
#include "tests/web/support/harness.h"

using namespace widegate;
using namespace widegate::test;

namespace {

const Device& phone() { return devices()[3]; }
const Device& laptop() { return devices()[6]; }

float middle_y(const RectPx& rect) { return rect.y + rect.height / 2; }

}  // namespace

TEST_CASE("dragging a slider changes the three numbers in the very frame of the drag") {
  Screen screen(laptop());
  screen.settle();
  screen.reveal("/lens/focal_mm");
  const RectPx track = screen.control("/lens/focal_mm").rect;
  const std::string before = screen.headline(0);
  screen.move_to(track.x + track.width * 0.3F, middle_y(track));
  screen.settle();
  screen.press();
  screen.frame();
  screen.move_to(track.x + track.width * 0.8F, middle_y(track));
  const auto version = screen.ui.state_version();
  screen.frame();
  CHECK(screen.ui.state_version() > version);
  CHECK(screen.headline(0) != before);
  const std::string during = screen.headline(0);
  screen.lift();
  screen.settle();
  CHECK(screen.headline(0) == during);
}

TEST_CASE("a finger moves a slider by how far it moves, wherever it starts") {
  Screen screen(phone());
  screen.settle();
  screen.reveal("/lens/focus_m");
  const RectPx track = screen.control("/lens/focus_m").rect;
  const double before = screen.control("/lens/focus_m").value;
  screen.tap(track.x + track.width * 0.9F, middle_y(track));
  CHECK(screen.control("/lens/focus_m").value == before);
  screen.drag(track.x + track.width * 0.9F, middle_y(track), track.x + track.width * 0.7F,
              middle_y(track));
  CHECK(screen.control("/lens/focus_m").value < before);
}

TEST_CASE("one drag is one step back") {
  Screen screen(laptop());
  screen.settle();
  screen.reveal("/lens/focal_mm");
  const RectPx track = screen.control("/lens/focal_mm").rect;
  const std::string before = screen.value("/lens/focal_mm");
  screen.drag(track.x + 40, middle_y(track), track.x + track.width - 20, middle_y(track), 20);
  const std::string after = screen.value("/lens/focal_mm");
  REQUIRE(after != before);
  CHECK(screen.control("command:undo").enabled);
  screen.ui.activate("command:undo");
  screen.settle();
  CHECK(screen.value("/lens/focal_mm") == before);
  CHECK_FALSE(screen.control("command:undo").enabled);
  screen.ui.activate("command:redo");
  screen.settle();
  CHECK(screen.value("/lens/focal_mm") == after);
}

TEST_CASE("what a drag left undrawn out of sight is where a fresh screen has it") {
  Screen screen(phone());
  screen.settle();
  screen.reveal("/lens/focal_mm");
  const RectPx track = screen.control("/lens/focal_mm").rect;
  const RectPx below = screen.control("/store/card").rect;
  screen.move_to(track.x + track.width / 2, middle_y(track));
  screen.settle();
  screen.press();
  screen.settle();
  for (int step = 1; step <= 20; ++step) {
    screen.move_to(track.x + track.width * (0.5F + 0.02F * static_cast<float>(step)),
                   middle_y(track));
    screen.frame();
    CHECK_FALSE(screen.control("/store/card").visible);
  }
  CHECK(screen.control("/store/card").rect == below);
  screen.lift();
  screen.settle();
  Screen fresh(phone(), screen.platform.kept);
  fresh.settle();
  REQUIRE(fresh.value("/lens/focal_mm") == screen.value("/lens/focal_mm"));
  fresh.reveal("/lens/focal_mm");
  const float moved =
      screen.control("/lens/focal_mm").rect.y - fresh.control("/lens/focal_mm").rect.y;
  for (const std::string_view id : {"/store/card", "/format/camera", "/shooting/days"}) {
    CHECK(screen.control(id).rect.y - fresh.control(id).rect.y == moved);
  }
}

TEST_CASE("a value is kept while the finger still rests on the slider") {
  Screen screen(phone());
  screen.settle();
  screen.reveal("/lens/focal_mm");
  const RectPx track = screen.control("/lens/focal_mm").rect;
  screen.move_to(track.x + track.width / 2, middle_y(track));
  screen.settle();
  screen.press();
  screen.settle();
  screen.move_to(track.x + track.width * 0.7F, middle_y(track));
  screen.frame();
  const std::string dragged = screen.value("/lens/focal_mm");
  screen.settle();
  Screen again(phone(), screen.platform.kept);
  again.settle();
  CHECK(again.value("/lens/focal_mm") == dragged);
  CHECK(dragged != "35");
}

TEST_CASE("values are typed as people write them") {
  Screen screen(phone());
  screen.settle();
  CHECK(screen.ui.set("/lens/focal_mm", "52,5"));
  CHECK(screen.value("/lens/focal_mm") == "52.5");
  CHECK(screen.ui.set("/run/project_rate", "23.976"));
  CHECK(screen.control("/run/project_rate").edit_text == "24000/1001");
  CHECK(screen.value("/run/project_rate") == "23.976");
  CHECK(screen.ui.set("/deliverable/frame_lines/0/aspect", "16:9"));
  CHECK(screen.value("/deliverable/frame_lines/0/aspect") == "1.778");
  CHECK(screen.ui.set("/deliverable/frame_lines/0/protection", "7,5 %"));
  CHECK(screen.value("/deliverable/frame_lines/0/protection") == "7.5");
  CHECK(screen.ui.set("/store/upload_share", "25"));
  CHECK(screen.value("/store/upload_share") == "25");
  CHECK(screen.ui.set("/lens/squeeze", "1.8"));
  CHECK(screen.value("/lens/squeeze") == "1.8");
  CHECK(screen.ui.set("/lens/squeeze", ""));
  CHECK(screen.value("/lens/squeeze") == "1");
}

TEST_CASE("text that is not accepted leaves the plan alone and says what is") {
  Screen screen(phone());
  screen.settle();
  const std::string before = screen.headline(0);
  CHECK_FALSE(screen.ui.set("/lens/focal_mm", "0"));
  screen.settle();
  CHECK(screen.value("/lens/focal_mm") == "35");
  CHECK(screen.headline(0) == before);
  CHECK(screen.control("/lens/focal_mm").problem.find("1 to 3000") != std::string::npos);
  CHECK(screen.ui.set("/lens/focal_mm", "40"));
  CHECK(screen.control("/lens/focal_mm").problem.empty());
}

TEST_CASE("a tapped value asks for typing over its own place, and can be given up") {
  Screen screen(phone());
  screen.settle();
  screen.reveal("/lens/focal_mm");
  const RectPx track = screen.control("/lens/focal_mm").rect;
  CHECK_FALSE(screen.ui.text_request().has_value());
  screen.tap(track.x + track.width, track.y - 20);
  const auto request = screen.ui.text_request();
  REQUIRE(request.has_value());
  CHECK(request->id == "/lens/focal_mm");
  CHECK(request->text == "35");
  CHECK(request->numeric);
  CHECK(request->font_px >= 16);
  CHECK(request->rect.height >= 40);
  screen.ui.set("/lens/focal_mm", "8");
  screen.ui.set("/lens/focal_mm", "85");
  screen.settle();
  CHECK(screen.value("/lens/focal_mm") == "85");
  screen.ui.end_text(false);
  screen.settle();
  CHECK(screen.value("/lens/focal_mm") == "35");
  CHECK_FALSE(screen.ui.text_request().has_value());
}

TEST_CASE("steps follow the lens set and the usual values") {
  Screen screen(phone());
  screen.settle();
  screen.ui.step("/run/sensor_rate", 1);
  CHECK(screen.value("/run/sensor_rate") == "25");
  screen.ui.step("/run/sensor_rate", -1);
  screen.ui.step("/run/sensor_rate", -1);
  CHECK(screen.value("/run/sensor_rate") == "23.976");
  const std::string before = screen.value("/lens/focal_mm");
  screen.ui.step("/lens/focal_mm", 1);
  bool in_set = false;
  for (const ChoiceItem& item : screen.control("/lens/focal_mm").choices) {
    in_set = in_set || item.value == screen.control("/lens/focal_mm").edit_text;
  }
  CHECK(in_set);
  CHECK(screen.value("/lens/focal_mm") != before);
}

TEST_CASE("a choice is made from its sheet with a thumb") {
  Screen screen(phone());
  screen.settle();
  const std::string before = screen.value("/format/camera");
  const RectPx row = screen.control("/format/camera").rect;
  screen.tap(row.x + 100, middle_y(row));
  // The sheet stands at the bottom edge; its second entry is another camera.
  const auto& choices = screen.control("/format/camera").choices;
  REQUIRE(choices.size() > 3);
  screen.tap(200, screen.input.height * 0.6F);
  CHECK(screen.value("/format/camera") != before);
  CHECK_FALSE(screen.control("/format/mode").choices.empty());
}

TEST_CASE("pressing outside a sheet closes it and changes nothing") {
  Screen screen(phone());
  screen.settle();
  const std::string before = screen.value("/format/codec");
  screen.ui.focus("/format/codec");
  screen.settle();
  const RectPx row = screen.control("/format/codec").rect;
  screen.tap(row.x + 100, middle_y(row));
  CHECK(screen.ui.covered());
  const Image open = screen.picture();
  screen.tap(100, 60);
  CHECK(screen.value("/format/codec") == before);
  CHECK(screen.picture().pixels != open.pixels);
  CHECK_FALSE(screen.ui.covered());
}

TEST_CASE("reset puts one value back, starting afresh all of them") {
  Screen screen(phone());
  screen.settle();
  screen.ui.set("/lens/focal_mm", "85");
  screen.ui.set("/title", "Scout");
  CHECK(screen.control("/lens/focal_mm").changed);
  screen.ui.reset("/lens/focal_mm");
  CHECK(screen.value("/lens/focal_mm") == "35");
  CHECK(screen.value("/title") == "Scout");
  screen.ui.activate("command:start-afresh");
  CHECK(screen.value("/title") == "Untitled plan");
  screen.ui.activate("command:undo");
  CHECK(screen.value("/title") == "Scout");
}

TEST_CASE("the plan and the colours are kept on the device and come back") {
  FakePlatform device;
  {
    Screen screen(phone());
    screen.settle();
    screen.ui.set("/lens/focal_mm", "85");
    screen.ui.set("view:theme", "sunlight");
    screen.settle();
    device.kept = screen.platform.kept;
  }
  CHECK(device.kept.count("plan") == 1);
  Screen again(phone(), device.kept);
  again.settle();
  CHECK(again.value("/lens/focal_mm") == "85");
  CHECK(again.value("view:theme") == "Sunlight");
  CHECK_FALSE(again.control("command:undo").enabled);
}

TEST_CASE("a kept plan that is damaged is left aside") {
  Screen screen(phone(), {{"plan", "{\"lens\": 7"}, {"theme", "plaid"}});
  screen.settle();
  CHECK(screen.value("/lens/focal_mm") == "35");
  CHECK(screen.value("view:theme") == "As the device");
  CHECK(screen.ui.mirror().message.find("set aside") != std::string::npos);
  CHECK(screen.platform.kept.at("set-aside") == "{\"lens\": 7");
}

TEST_CASE("beside a damaged plan the address is opened, though the tab gave it itself") {
  Plan plan;
  plan.title = "In the address";
  const Device device = phone();
  Screen screen(device, {{"plan", "{\"title\": \"In the addr"}}, plan_to_link(plan),
                RestOfProgram::here, /*own_address=*/true);
  screen.settle();
  CHECK(screen.value("/title") == "In the address");
  CHECK(screen.platform.kept.at("plan").find("In the address") != std::string::npos);
}

TEST_CASE("a device that keeps nothing says so at once, and until it keeps again") {
  Screen screen(phone());
  screen.settle();
  screen.platform.refuses = true;
  screen.ui.set("/lens/focal_mm", "50");
  screen.settle();
  CHECK(screen.ui.mirror().message.find("keeps nothing") != std::string::npos);
  const auto notes = [&] {
    std::string all;
    for (const Section& section : screen.ui.mirror().sections) {
      for (const std::string& note : section.notes) all += note;
    }
    return all;
  };
  screen.ui.set("/lens/focal_mm", "85");
  screen.settle();
  CHECK(notes().find("keeps nothing") != std::string::npos);
  screen.platform.refuses = false;
  screen.ui.set("/lens/focal_mm", "50");
  screen.settle();
  CHECK(notes().find("keeps nothing") == std::string::npos);
  CHECK(screen.platform.kept.at("plan").find("50") != std::string::npos);
}

TEST_CASE("a plan comes in as a file") {
  Screen screen(phone());
  screen.settle();
  Plan plan;
  plan.title = "From a file";
  screen.ui.file_opened("plan", "scout.plan.json", plan_to_json(plan));
  CHECK(screen.value("/title") == "From a file");
  screen.ui.file_opened("plan", "junk.json", "not a plan");
  CHECK(screen.value("/title") == "From a file");
}
