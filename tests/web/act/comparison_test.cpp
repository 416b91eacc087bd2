// Two formats compared: chosen from the library or kept, on every screen, over a reload.
#include <doctest/doctest.h>

#include <string>
#include <vector>

#include "tests/web/support/harness.h"
#include "web/state/comparison_state.h"
#include "web/view/see_rows.h"

using namespace widegate;
using namespace widegate::test;

namespace {

std::string row(const Screen& screen, std::string_view key) {
  for (const ResultRow& each : screen.ui.mirror().results) {
    if (each.key == key) return each.value_text + "; " + each.unit;
  }
  return {};
}

void set(Screen& screen, std::string_view id, std::string_view text) {
  screen.ui.set(id, text);
  screen.settle();
}

}  // namespace

TEST_CASE("another format of the library is compared for the same plan") {
  Screen screen(devices()[3]);
  screen.settle();
  CHECK(row(screen, "compare.mode.width_mm").empty());
  CHECK_FALSE(screen.control(kCompareMode).enabled);
  set(screen, kCompareCamera, "birch");
  CHECK(screen.control(kCompareMode).enabled);
  CHECK(row(screen, "compare.mode.width_mm") == "26.96 mm against 36.19; mm, +34 %");
  const std::string before = row(screen, "compare.see.horizontal_fov_deg");
  set(screen, "/lens/focal_mm", "50");
  CHECK(row(screen, "compare.see.horizontal_fov_deg") != before);
  const std::string whole = row(screen, "compare.mode.height_mm");
  set(screen, kCompareMode, screen.control(kCompareMode).choices.back().value);
  CHECK(row(screen, "compare.mode.height_mm") != whole);
  set(screen, kCompareCamera, "");
  CHECK(row(screen, "compare.mode.width_mm").empty());
}

TEST_CASE("a plan that was kept stays as it was") {
  Screen screen(devices()[6]);
  screen.settle();
  screen.ui.activate(kKeepToCompare);
  screen.settle();
  CHECK(screen.value("view:picture") == "Compare");
  CHECK(row(screen, "compare.headline.frame_megapixels").find("the same") != std::string::npos);
  set(screen, "/format/camera", "cedar");
  CHECK(row(screen, "compare.mode.width_mm") == "53.96 mm against 26.96; mm, −50 %");
  CHECK_FALSE(screen.control(kCompareMode).enabled);
  screen.ui.activate(kStopComparing);
  screen.settle();
  CHECK(row(screen, "compare.mode.width_mm").empty());
}

TEST_CASE("what is compared survives a reload") {
  Screen first(devices()[3]);
  first.settle();
  set(first, kCompareCamera, "cedar");
  Screen second(devices()[3], first.platform.kept);
  second.settle();
  CHECK(second.control(kCompareCamera).edit_text == "cedar");
  second.ui.activate(kKeepToCompare);
  second.settle();
  Screen third(devices()[3], second.platform.kept);
  third.settle();
  CHECK(third.control(kCompareCamera).edit_text == "kept");
  for (const char* rubbish : {"format a", "{", "format ", "format x/y/z/w"}) {
    Screen broken(devices()[3], {{"comparison", rubbish}});
    CHECK(broken.settle() < 12);
  }
}

TEST_CASE("the comparison draws on every screen, over each other and side by side") {
  for (const Device& device : devices()) {
    CAPTURE(device.name);
    Screen screen(device);
    screen.settle();
    set(screen, "view:picture", "compare");
    CHECK(screen.ui.seconds_to_next_frame() < 0);
    for (const char* camera : {"birch", "cedar", "dogwood"}) {
      for (const char* beside : {"false", "true"}) {
        set(screen, kCompareCamera, camera);
        set(screen, kSideBySide, beside);
        set(screen, "/lens/squeeze", *camera == 'c' ? "2" : "1");
        CHECK(screen.ui.seconds_to_next_frame() < 0);
      }
    }
    set(screen, "/lens/image_circle_mm", "1");
    CHECK(screen.ui.seconds_to_next_frame() < 0);
  }
}

TEST_CASE("without anything to compare with, a press on the picture keeps the plan") {
  Screen screen(devices()[3]);
  screen.settle();
  set(screen, "view:picture", "compare");
  const RectPx bar = screen.control("view:picture").rect;
  for (float y = 100; y < bar.y && row(screen, "compare.mode.width_mm").empty(); y += 30) {
    screen.tap(195, y);
  }
  CHECK(screen.control(kCompareCamera).edit_text == "kept");
}

TEST_CASE(
    "the same view on another camera: a focal length for each of its modes, with its working") {
  Screen screen(devices()[3]);
  screen.settle();
  const std::string_view key = "see.equivalent_focal_mm.";
  const auto listed = [&screen, key] {
    std::vector<ResultRow> rows;
    for (const ResultRow& each : screen.ui.mirror().results) {
      if (each.key.starts_with(key)) rows.push_back(each);
    }
    return rows;
  };
  CHECK(listed().empty());
  set(screen, kSameView, "birch");
  const auto rows = listed();
  REQUIRE(rows.size() > 3);
  CHECK(rows.front().label == "Whole sensor, 3:2");
  CHECK(rows.front().value_text == "47");
  screen.ui.show_working(rows.front().working);
  CHECK(screen.ui.mirror().working.result == "47 mm");
  REQUIRE(screen.ui.mirror().working.numbers.size() == 2);
  CHECK(screen.ui.mirror().working.numbers.back() == "= 46.99 mm");
  set(screen, kSameView, "no-such-camera");
  CHECK(listed().empty());
  set(screen, kSameView, "alder");
  CHECK(listed().size() > 3);
}
