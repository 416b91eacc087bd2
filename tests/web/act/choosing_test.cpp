// The ranking in parts, the cameras considered, and more than one frame line, as people use them.
#include <doctest/doctest.h>

#include <set>
#include <string>
#include <utility>
#include <vector>

#include "imgui.h"
#include "tests/web/support/harness.h"
#include "web/view/frame_lines.h"
#include "web/view/ranking_controls.h"
#include "web/view/screen_controls.h"

using namespace widegate;
using namespace widegate::test;

namespace {

const Device& phone() { return devices()[3]; }

void set(Screen& screen, std::string_view id, std::string_view text) {
  CHECK(screen.ui.set(id, text));
  screen.settle();
}

void press(Screen& screen, std::string_view id) {
  screen.ui.activate(id);
  screen.settle();
}

/// The number behind the label of one part: "Rejected 12".
std::size_t count_of(const Screen& screen, std::string_view part) {
  for (const ChoiceItem& item : screen.control(kRankingPart).choices) {
    if (item.value != part) continue;
    return std::stoul(item.label.substr(item.label.rfind(' ') + 1));
  }
  FAIL("no such part");
  return 0;
}

}  // namespace

TEST_CASE("every rejected format can be reached, with all its reasons and what would help") {
  Screen screen(phone());
  screen.settle();
  const std::size_t rejected = count_of(screen, "rejected");
  REQUIRE(rejected > kFormatsAtFirst);
  set(screen, kRankingPart, "rejected");
  for (const ChoiceItem& item : screen.control(kFormat).choices) {
    if (item.detail.starts_with("passes")) continue;  // the plan's own
    CHECK(item.detail.find("needed") != std::string::npos);
    CHECK((item.detail.find("Passes with") != std::string::npos ||
           item.detail.find("No single change") != std::string::npos));
  }
  set(screen, kRankingListing, "every-recording");
  while (screen.control(kMoreFormats).enabled) press(screen, kMoreFormats);
  CHECK(screen.control(kFormat).choices.size() >= rejected);
}

TEST_CASE("the list begins with the best of each sensor mode, and every recording is a step away") {
  Screen screen(phone());
  screen.settle();
  while (screen.control(kMoreFormats).enabled) press(screen, kMoreFormats);
  std::set<std::string> modes;
  const auto choices = screen.control(kFormat).choices;
  for (const ChoiceItem& item : choices) {
    if (item.value == screen.control(kFormat).edit_text) continue;
    const std::size_t mode = item.value.find('/', item.value.find('/') + 1);
    CHECK_MESSAGE(modes.insert(item.value.substr(0, mode)).second, item.value);
  }
  CHECK(choices.size() < count_of(screen, "passing"));
  set(screen, kRankingListing, "every-recording");
  while (screen.control(kMoreFormats).enabled) press(screen, kMoreFormats);
  CHECK(screen.control(kFormat).choices.size() >= count_of(screen, "passing"));
}

TEST_CASE("the list can be narrowed to raw, to pictures, and to what carries no caution") {
  Screen screen(phone());
  screen.settle();
  set(screen, kRankingListing, "every-recording");
  const auto listed = [&screen](std::string_view kind) {
    set(screen, kRankingKind, kind);
    while (screen.control(kMoreFormats).enabled) press(screen, kMoreFormats);
    std::vector<ChoiceItem> items = screen.control(kFormat).choices;
    std::erase_if(items, [&screen](const ChoiceItem& item) {
      return item.value == screen.control(kFormat).edit_text;
    });
    REQUIRE_FALSE(items.empty());
    return items;
  };
  for (const ChoiceItem& item : listed("raw")) {
    CHECK(item.value.find("/bayer-") != std::string::npos);
  }
  for (const ChoiceItem& item : listed("picture")) {
    CHECK(item.value.find("/bayer-") == std::string::npos);
  }
  for (const ChoiceItem& item : listed("without-caution")) {
    CHECK(item.detail.find("Caution") == std::string::npos);
  }
}

TEST_CASE("when nothing passes the screen says what binds, and one press mends it") {
  Screen screen(phone());
  screen.settle();
  set(screen, "/choose/min_minutes_per_card", "5000");
  REQUIRE(count_of(screen, "passing") == 0);
  CHECK(screen.control(kFormat).help.find("Minutes on a card") != std::string::npos);
  const std::string way = ranking_way_id(0);
  REQUIRE(screen.control(way).enabled);
  CHECK_FALSE(screen.control(way).help.empty());
  press(screen, way);
  CHECK(count_of(screen, "passing") > 0);
  CHECK_FALSE(screen.ui.mirror().message.empty());
  press(screen, "command:undo");
  CHECK(screen.ui.mirror().message.starts_with("Undone. "));
  CHECK(count_of(screen, "passing") == 0);
}

TEST_CASE("the best trade-offs are passing formats, and fewer") {
  Screen screen(phone());
  screen.settle();
  CHECK(count_of(screen, "trade-offs") > 0);
  CHECK(count_of(screen, "trade-offs") < count_of(screen, "passing"));
  set(screen, kRankingPart, "trade-offs");
  for (const ChoiceItem& item : screen.control(kFormat).choices) {
    if (item.value == screen.control(kFormat).edit_text) continue;
    CHECK(item.detail.find("best trade-off") != std::string::npos);
  }
}

TEST_CASE("a long ranking is drawn only where it can be seen") {
  Screen screen(phone());
  screen.settle();
  screen.reveal(kRankingPart);
  const int few = ImGui::GetDrawData()->TotalVtxCount;
  for (int i = 0; i < 20; ++i) press(screen, kMoreFormats);
  screen.reveal(kRankingPart);
  CHECK(ImGui::GetDrawData()->TotalVtxCount < 2 * few);
}

TEST_CASE("one camera alone can be considered, and all again") {
  Screen screen(phone());
  screen.settle();
  const std::size_t all = count_of(screen, "passing") + count_of(screen, "rejected");
  set(screen, kCamerasConsidered, "birch");
  const std::size_t one = count_of(screen, "passing") + count_of(screen, "rejected");
  CHECK(one < all);
  set(screen, kRankingPart, "passing");
  for (const ChoiceItem& item : screen.control(kFormat).choices) {
    if (item.value == screen.control(kFormat).edit_text) continue;
    CHECK(item.value.starts_with("birch/"));
  }
  set(screen, kCamerasConsidered, "");
  CHECK(count_of(screen, "passing") + count_of(screen, "rejected") == all);
}

TEST_CASE("frame lines are added, picked, changed and removed") {
  Screen screen(phone());
  screen.settle();
  press(screen, kAddFrameLine);
  CHECK(screen.control(kFrameLine).edit_text == "1");
  CHECK(screen.value("/deliverable/frame_lines/1/aspect") == "1.778");
  set(screen, "/deliverable/frame_lines/1/aspect", "2");
  set(screen, "/deliverable/frame_lines/1/protection", "5");
  CHECK(screen.value("/deliverable/frame_lines/1/protection") == "5");
  set(screen, "/deliverable/frame_lines/1/anchor/kind", "common_top");
  set(screen, kFrameLine, "0");
  CHECK(screen.value("/deliverable/frame_lines/0/aspect") == "2.39");
  CHECK(screen.value("/deliverable/frame_lines/0/protection") == "0");
  set(screen, kFrameLine, "1");
  screen.ui.reset("/deliverable/frame_lines/1/protection");
  screen.settle();
  CHECK(screen.value("/deliverable/frame_lines/1/protection") == "0");
  CHECK(screen.value("/deliverable/frame_lines/1/aspect") == "2");
  press(screen, kRemoveFrameLine);
  CHECK(screen.value("/deliverable/frame_lines/0/aspect") == "2.39");
  press(screen, "command:undo");
  press(screen, kAddFrameLine);
  CHECK(screen.control(kFrameLine).choices.size() == 3);
}

TEST_CASE("no more than eight frame lines; the picked one follows an undo") {
  Screen screen(phone());
  screen.settle();
  for (int i = 0; i < 7; ++i) press(screen, kAddFrameLine);
  CHECK_FALSE(screen.control(kAddFrameLine).enabled);
  CHECK(screen.control(kFrameLine).edit_text == "7");
  for (int i = 0; i < 6; ++i) press(screen, "command:undo");
  CHECK(screen.control(kFrameLine).edit_text == "1");
  press(screen, "command:undo");
  CHECK(screen.value("/deliverable/frame_lines/0/aspect") == "2.39");
}

TEST_CASE("every section is a step away") {
  Screen screen(phone());
  screen.settle();
  const std::set<std::pair<std::string_view, std::string_view>> kPlaces = {
      {"format", "/format/camera"}, {"handover", kCopyLink}, {"lesson", kLesson}};
  for (const auto& [section, control] : kPlaces) {
    screen.ui.set(kGoTo, section);
    screen.settle();
    CHECK(screen.control(control).visible);
  }
}
