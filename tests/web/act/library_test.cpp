// Equipment of one's own and the list of kept plans, through the door the host uses.
#include <doctest/doctest.h>

#include <string>
#include <vector>

#include "core/catalogue/catalogue_json.h"
#include "core/handover/link/link.h"
#include "core/plan/kept_plans.h"
#include "tests/web/support/harness.h"

using namespace widegate;
using namespace widegate::test;

namespace {

const Device& phone() { return devices()[3]; }

/// What the sheet of an invented camera prints, put into the form.
void fill_hazel(Screen& screen) {
  screen.ui.set("library:new", "cameras");
  const std::pair<const char*, const char*> texts[] = {
      {"library:/name", "Hazel"},
      {"library:/width_photosites", "5,760"},
      {"library:/height_photosites", "3240"},
      {"library:/pitch_um", "4.3"},
      {"library:/max_rate", "60"},
      {"library:/modes/0/recordings/0/codecs", "bayer-12-3-1"}};
  for (const auto& [id, text] : texts) {
    const auto& at_id = id;
    CAPTURE(at_id);
    CHECK(screen.ui.set(id, text));
  }
}

void add_hazel(Screen& screen) {
  fill_hazel(screen);
  screen.ui.activate("library:keep");
  screen.settle();
}

bool offers(const Screen& screen, std::string_view id, std::string_view value) {
  for (const ChoiceItem& item : screen.control(id).choices) {
    if (item.value == value) return true;
  }
  return false;
}

bool has(const Screen& screen, std::string_view id) {
  return screen.ui.mirror().find(id) != nullptr;
}

}  // namespace

TEST_CASE("a commission typed in where it is chosen is asked for, kept, and travels by link") {
  Screen screen(phone());
  screen.settle();
  screen.ui.activate("library:commission");
  screen.settle();
  const std::pair<const char*, const char*> texts[] = {{"library:/name", "Estuary"},
                                                       {"library:/bit_depth", "10"},
                                                       {"library:/sensor_raw", "refused"},
                                                       {"library:/rates", "24 25"}};
  for (const auto& [id, text] : texts) {
    const auto& at_id = id;
    CAPTURE(at_id);
    CHECK(screen.ui.set(id, text));
  }
  screen.ui.activate("library:keep");
  screen.settle();
  REQUIRE(offers(screen, "/commission/id", "estuary"));
  screen.ui.activate("library:use");
  screen.settle();
  CHECK(screen.value("/commission/id") == "Estuary");
  const auto told = [](const Screen& each) {
    for (const Section& section : each.ui.mirror().sections) {
      for (const std::string& note : section.notes) {
        if (note == "Fails: Raw of the sensor missed: raw, not a picture") return true;
      }
    }
    return false;
  };
  CHECK(told(screen));
  Screen elsewhere(phone(), {}, screen.platform.fragment_text);
  elsewhere.settle();
  CHECK(elsewhere.value("/commission/id") == "Estuary");
  CHECK(told(elsewhere));
}

TEST_CASE("a camera typed in is chosen, worked out, kept, and travels by link") {
  Screen screen(phone());
  screen.settle();
  add_hazel(screen);
  CHECK_FALSE(has(screen, "library:/name"));
  REQUIRE(offers(screen, "/format/camera", "hazel"));
  screen.ui.activate("library:use");
  screen.settle();
  CHECK(screen.value("/format/camera") == "Hazel");
  CHECK(screen.headline(1) != "0");
  Screen again(phone(), screen.platform.kept);
  again.settle();
  CHECK(again.value("/format/camera") == "Hazel");
  CHECK(again.control("library:row").enabled);
  Screen elsewhere(phone(), {}, screen.platform.fragment_text);
  elsewhere.settle();
  CHECK(elsewhere.value("/format/camera") == "Hazel");
  CHECK(elsewhere.headline(0) == screen.headline(0));
  CHECK(elsewhere.ui.mirror().message.find("Hazel") != std::string::npos);
  elsewhere.ui.activate("library:brought");
  elsewhere.ui.activate("library:import-new");
  elsewhere.settle();
  CHECK(elsewhere.platform.kept.count("library") == 1);
  CHECK_FALSE(has(elsewhere, "library:brought"));
}

TEST_CASE("the form marks what is wrong, and what is missing once it was tried") {
  Screen screen(phone());
  screen.settle();
  screen.ui.set("library:new", "cameras");
  CHECK(screen.control("library:/name").problem.empty());
  screen.ui.activate("library:keep");
  CHECK(screen.control("library:/name").problem.find("Needed") == 0);
  CHECK_FALSE(screen.ui.set("library:/width_photosites", "many"));
  CHECK(screen.control("library:/width_photosites").problem.find("16 to 65535") !=
        std::string::npos);
  fill_hazel(screen);
  CHECK_FALSE(screen.ui.set("library:/width_mm", "36"));
  CHECK(screen.control("library:/width_mm").problem.find("24.768") != std::string::npos);
  CHECK(screen.ui.set("library:/width_mm", ""));
  CHECK(screen.control("library:keep").help.find("4.30 µm") != std::string::npos);
  CHECK(screen.platform.kept.count("library") == 0);
}

TEST_CASE("a row can be changed, taken out and put back; a plan keeps what it uses") {
  Screen screen(phone());
  screen.settle();
  add_hazel(screen);
  screen.ui.activate("library:use");
  screen.settle();
  screen.ui.set("library:row", "cameras/hazel");
  CHECK(screen.control("library:/pitch_um").edit_text == "4.3");
  screen.ui.set("library:/pitch_um", "4.4");
  screen.ui.activate("library:keep");
  screen.settle();
  CHECK(screen.platform.kept.at("library").find("25.344") != std::string::npos);
  screen.ui.set("library:row", "cameras/hazel");
  screen.ui.activate("library:take-out");
  screen.settle();
  CHECK(screen.platform.kept.count("library") == 0);
  CHECK(screen.value("/format/camera") == "Hazel");
  screen.ui.activate("library:put-back");
  screen.settle();
  CHECK_FALSE(has(screen, "library:brought"));
  CHECK(screen.platform.kept.at("library").find("Hazel") != std::string::npos);
}

TEST_CASE("bringing in shows what would change and replaces nothing unasked") {
  Screen screen(phone());
  screen.settle();
  add_hazel(screen);
  screen.ui.activate("library:export");
  const std::string mine = screen.platform.saved.at("widegate-equipment.json");
  Catalogue other = *catalogue_from_json(mine, *built_in_catalogue());
  other.cameras.front().name = "Hazel, second body";
  Card card;
  card.id = "truck";
  card.name = "Card of the truck";
  card.source = "sheet";
  card.capacity_bytes = 1'000'000'000;
  card.write_bytes_per_s = card.read_bytes_per_s = 1'000'000;
  other.cards.push_back(card);
  const std::string theirs = catalogue_to_json(other);
  screen.ui.file_opened("library", "theirs.json", theirs);
  const std::string words = screen.control("library:import-new").help;
  CHECK(words.find("New: Card: Card of the truck") != std::string::npos);
  CHECK(words.find("Different from what is here: Camera: Hazel, second body") != std::string::npos);
  CHECK(screen.platform.kept.at("library") == mine);
  screen.ui.activate("library:import-none");
  CHECK(screen.platform.kept.at("library") == mine);
  screen.ui.file_opened("library", "theirs.json", theirs);
  screen.ui.activate("library:import-new");
  CHECK(screen.platform.kept.at("library").find("second body") == std::string::npos);
  CHECK(screen.platform.kept.at("library").find("Card of the truck") != std::string::npos);
  screen.ui.file_opened("library", "theirs.json", theirs);
  screen.ui.activate("library:import-all");
  CHECK(screen.platform.kept.at("library").find("second body") != std::string::npos);
  const std::string before = screen.platform.kept.at("library");
  for (const char* junk : {"", "{", "[]", R"({"widegate_catalogue":9})", R"({"cameras":[{}]})"}) {
    screen.ui.file_opened("library", "junk.json", junk);
    CHECK(screen.ui.mirror().message.find("junk.json is no equipment") == 0);
    CHECK(screen.platform.kept.at("library") == before);
  }
}

TEST_CASE("a built-in row is only replaced when that is agreed to") {
  Screen screen(phone());
  screen.settle();
  Catalogue other;
  other.cameras.push_back(built_in_catalogue()->cameras.front());
  other.cameras.front().name = "An impostor";
  screen.ui.file_opened("library", "other.json", catalogue_to_json(other));
  CHECK_FALSE(screen.control("library:import-new").enabled);
  CHECK(screen.control("library:import-all").label.find("replace 1") != std::string::npos);
  screen.ui.activate("library:import-none");
  CHECK_FALSE(screen.platform.kept.count("library") != 0);
}

TEST_CASE("a plan's own version of a row stands beside the library's until it is decided") {
  Screen first(phone());
  first.settle();
  add_hazel(first);
  first.ui.activate("library:use");
  first.settle();
  const std::string link = first.platform.fragment_text;
  first.ui.set("library:row", "cameras/hazel");
  first.ui.set("library:/pitch_um", "6");
  first.ui.activate("library:keep");
  first.settle();
  const std::string wide = first.headline(0);
  first.ui.fragment_changed(link);
  first.settle();
  CHECK(first.ui.mirror().message.find("its own version of Hazel") != std::string::npos);
  CHECK(first.headline(0) != wide);
  CHECK(first.platform.kept.at("library").find("34.56") != std::string::npos);
  first.ui.activate("library:use-mine");
  first.settle();
  CHECK(first.headline(0) == wide);
}

TEST_CASE("a damaged library is told, left alone, and kept aside before it is written over") {
  Screen screen(phone(), {{"library", "{\"cameras\":3}"}});
  screen.settle();
  CHECK(screen.ui.mirror().message.find("could not be read") != std::string::npos);
  CHECK(screen.platform.kept.at("library") == "{\"cameras\":3}");
  add_hazel(screen);
  CHECK(screen.platform.kept.at("set-aside") == "{\"cameras\":3}");
  CHECK(screen.platform.kept.at("library").find("Hazel") != std::string::npos);
}

TEST_CASE("plans are kept in a list, opened, copied, deleted and put back") {
  Screen screen(phone());
  screen.settle();
  screen.ui.set("/title", "Day one");
  screen.ui.activate("plans:add");
  screen.settle();
  screen.ui.set("/lens/focal_mm", "75");
  screen.settle();
  screen.ui.activate("command:start-afresh");
  screen.settle();
  CHECK(screen.control("plans:list").edit_text.empty());
  screen.ui.set("/title", "Day two");
  screen.settle();
  CHECK(screen.ui.mirror().find("plans:list")->choices.size() == 2);
  screen.ui.set("plans:list", "1");
  screen.settle();
  CHECK(screen.value("/title") == "Day one");
  CHECK(screen.value("/lens/focal_mm") == "75");
  CHECK(offers(screen, "plans:list", "2"));
  screen.ui.activate("plans:copy");
  CHECK(offers(screen, "plans:list", "3"));
  Screen again(phone(), screen.platform.kept);
  again.settle();
  CHECK(again.control("plans:list").edit_text == "1");
  again.ui.set("/title", "Day one, revised");
  again.settle();
  CHECK(again.platform.kept.at("plans").find("Day one, revised") != std::string::npos);
  again.ui.activate("plans:delete");
  again.settle();
  CHECK_FALSE(offers(again, "plans:list", "1"));
  CHECK(again.value("/title") == "Day one, revised");
  again.ui.activate("plans:restore");
  CHECK(again.control("plans:list").edit_text == "1");
}

TEST_CASE("a plan changed in two tabs becomes two plans") {
  Screen first(phone());
  first.settle();
  first.ui.set("/title", "Shared");
  first.ui.activate("plans:add");
  first.settle();
  Screen second(phone(), first.platform.kept);
  second.settle();
  second.ui.set("/lens/focal_mm", "50");
  second.settle();
  first.platform.kept["plans"] = second.platform.kept["plans"];
  first.ui.stored_changed("plans");
  first.ui.set("/lens/focal_mm", "85");
  first.settle();
  CHECK(first.ui.mirror().message.find("changed in another tab") != std::string::npos);
  CHECK(first.value("/title") == "Shared (2)");
  const auto shelf = shelf_from_json(first.platform.kept.at("plans"));
  REQUIRE(shelf.has_value());
  REQUIRE(shelf->plans.size() == 2);
  CHECK(plan_from_link(shelf->plans[0].link, *built_in_catalogue())->lens.focal_mm == 50);
  CHECK(plan_from_link(shelf->plans[1].link, *built_in_catalogue())->lens.focal_mm == 85);
}

TEST_CASE("a third tab's version of a plan gets a number of its own") {
  Screen first(phone());
  first.settle();
  first.ui.set("/title", "Shared");
  first.ui.activate("plans:add");
  first.settle();
  const auto at_first = first.platform.kept;
  auto device = at_first;
  for (const char* focal : {"50", "85"}) {
    Screen other(phone(), at_first);
    other.settle();
    Screen changed(phone(), at_first);
    changed.settle();
    changed.ui.set("/lens/focal_mm", "18");
    changed.settle();
    if (device == at_first) device["plans"] = changed.platform.kept.at("plans");
    other.platform.kept["plans"] = device.at("plans");
    other.ui.set("/lens/focal_mm", focal);
    other.settle();
    device["plans"] = other.platform.kept.at("plans");
  }
  const auto shelf = shelf_from_json(device.at("plans"));
  REQUIRE(shelf.has_value());
  REQUIRE(shelf->plans.size() == 3);
  CHECK(shelf->plans[1].title == "Shared (2)");
  CHECK(shelf->plans[2].title == "Shared (3)");
}

TEST_CASE("a list of plans that cannot be read is set aside, and can be saved") {
  Screen screen(phone(), {{"plans", "{\"widegate_plans\":1,"}});
  screen.settle();
  CHECK(screen.ui.mirror().message.find("set aside") != std::string::npos);
  screen.ui.activate("plans:add");
  screen.settle();
  CHECK(screen.platform.kept.at("plans").find("next_id") != std::string::npos);
  screen.ui.activate("plans:save-set-aside");
  CHECK(screen.platform.saved.at("widegate-set-aside.txt") == "{\"widegate_plans\":1,");
  Screen again(phone(), screen.platform.kept);
  again.settle();
  CHECK(again.control("plans:save-set-aside").enabled);
}

TEST_CASE("what cannot be set aside is not written over") {
  Screen screen(phone(), {{"plans", "{"}});
  screen.platform.refuses = true;
  screen.platform.kept.erase("set-aside");
  screen.ui.activate("plans:add");
  screen.settle();
  CHECK(screen.platform.kept.at("plans") == "{");
}

TEST_CASE("the form fits every screen, and its fields can be touched") {
  for (const Device& device : devices()) {
    CAPTURE(device.name);
    Screen screen(device);
    screen.settle();
    fill_hazel(screen);
    screen.settle();
    if (device.width < 300) continue;
    screen.reveal("library:/pitch_um");
    const RectPx field = screen.control("library:/pitch_um").rect;
    CHECK(field.height >= (device.touch ? 44 : 30));
    CHECK(field.x + field.width <= device.width);
    screen.tap(field.x + field.width / 2, field.y + field.height / 2);
    REQUIRE(screen.ui.text_request().has_value());
    CHECK(screen.ui.text_request()->numeric);
    screen.ui.set("library:/pitch_um", "9");
    screen.ui.end_text(false);
    CHECK(screen.control("library:/pitch_um").edit_text == "4.3");
  }
}
