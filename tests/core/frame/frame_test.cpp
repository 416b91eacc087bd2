// Frame lines on sensor modes: standard rasters, anamorphic practice, hand-worked placements, laws
// over everything a plan may hold, and the largest roll against turning corners step by step.
#include "core/frame/frame.h"

#include <doctest/doctest.h>

#include <array>
#include <cmath>

#include "core/base/number_text.h"
#include "core/plan/plan_fields.h"
#include "tests/core/support/draws.h"
#include "tests/core/support/tables.h"

namespace widegate {
namespace {

using testing::Dice;
using testing::frame_line;
using testing::plain_geometry;

FrameReport centred(Rational aspect, const Geometry& geometry, Rational protection = 0) {
  return frame_report(frame_line(aspect, protection), geometry, nullptr);
}

void check_rect(const ExactRect& rect, const ExactRect& wanted) {
  CHECK(rect.left == wanted.left);
  CHECK(rect.top == wanted.top);
  CHECK(rect.width == wanted.width);
  CHECK(rect.height == wanted.height);
}

TEST_CASE("A frame of a raster's own aspect fills it exactly") {
  for (const testing::RasterRow& row : testing::kRasters) {
    CAPTURE(row.name);
    CHECK(Rational(row.width, row.height) == row.aspect);
    CHECK(row.width * row.height == row.photosites);
    const FrameReport frame = centred(row.aspect, plain_geometry(row.width, row.height));
    check_rect(frame.photosites, {.left = 0, .top = 0, .width = row.width, .height = row.height});
    CHECK(frame.pixels.even_width == row.width);
    CHECK(frame.pixels.even_height == row.height);
    CHECK(frame.diagonal_mm / 0.005 == doctest::Approx(row.diagonal_px).epsilon(1e-9));
    CHECK(frame.max_rotation_deg == 0);
    CHECK(frame.room_protected_percent == 0);
    CHECK(frame.room_horizontal_percent == 0);
    CHECK(frame.room_vertical_percent == 0);
  }
}

struct AnamorphicRow {
  std::string_view region;
  std::int64_t width, height;
  Rational squeeze;
  double desqueezed_ratio, region_ratio_needed, width_used, height_used;
};
constexpr auto kAnamorphic = std::to_array<AnamorphicRow>({
#include "tests/data/anamorphic.inc"
});

TEST_CASE("How much of a sensor region an anamorphic 2.39:1 frame uses") {
  const Rational wanted(239, 100);
  for (const AnamorphicRow& row : kAnamorphic) {
    CAPTURE(row.region);
    CAPTURE(print_rational(row.squeeze));
    const FrameReport frame = centred(wanted, plain_geometry(row.width, row.height, row.squeeze));
    const double width = frame.photosites.width.to_double();
    const double height = frame.photosites.height.to_double();
    CHECK(width / height == doctest::Approx(row.region_ratio_needed).epsilon(1e-9));
    CHECK(width / static_cast<double>(row.width) == doctest::Approx(row.width_used).epsilon(1e-9));
    CHECK(height / static_cast<double>(row.height) ==
          doctest::Approx(row.height_used).epsilon(1e-9));
    const Rational whole = Rational(row.width, row.height) * row.squeeze;
    CHECK(whole.to_double() == doctest::Approx(row.desqueezed_ratio).epsilon(1e-9));
    const FrameReport full = centred(whole, plain_geometry(row.width, row.height, row.squeeze));
    check_rect(full.photosites, {.left = 0, .top = 0, .width = row.width, .height = row.height});
  }
}

TEST_CASE("Trade facts: common practice, no source") {
  // 2x on 6:5 is 2.39:1 within half a percent: all of the height, 0.42 % less than the width.
  const FrameReport scope = centred(Rational(239, 100), plain_geometry(3840, 3200, 2));
  CHECK(scope.photosites.height == Rational(3200));
  CHECK(scope.photosites.width >= Rational(3840) * Rational(995, 1000));
  CHECK(scope.photosites.width < Rational(3840));
  // 2x on 1:1 is 2:1 and on 8:9 is 16:9, exactly.
  check_rect(centred(2, plain_geometry(3000, 3000, 2)).photosites,
             {.left = 0, .top = 0, .width = 3000, .height = 3000});
  check_rect(centred(Rational(16, 9), plain_geometry(3200, 3600, 2)).photosites,
             {.left = 0, .top = 0, .width = 3200, .height = 3600});
}

TEST_CASE("A protected frame line worked out by hand") {
  // 4000 x 3000 read, 2:1 wanted, a tenth protected, recorded at half size. Protected 4000 x 2000
  // at (0, 500); frame line 3600 x 1800 at (200, 600); in the file 1800 x 900 at (100, 300).
  Geometry geometry = plain_geometry(4000, 3000);
  geometry.recorded_width_pixels = 2000;
  geometry.recorded_height_pixels = 1500;
  const FrameReport frame = centred(2, geometry, Rational(1, 10));
  check_rect(frame.protected_photosites, {.left = 0, .top = 500, .width = 4000, .height = 2000});
  check_rect(frame.photosites, {.left = 200, .top = 600, .width = 3600, .height = 1800});
  CHECK(frame.pixels.left == 100);
  CHECK(frame.pixels.top == 300);
  CHECK(frame.pixels.width == 1800);
  CHECK(frame.pixels.height == 900);
  CHECK(frame.protected_pixels.even_top == 250);
  CHECK(frame.protected_pixels.even_height == 1000);
  CHECK(frame.width_mm == doctest::Approx(18).epsilon(1e-14));
  CHECK(frame.height_mm == doctest::Approx(9).epsilon(1e-14));
  CHECK(frame.room_protected_percent == doctest::Approx(10).epsilon(1e-14));
  CHECK(frame.room_horizontal_percent == doctest::Approx(10).epsilon(1e-14));
  CHECK(frame.room_vertical_percent == doctest::Approx(40).epsilon(1e-14));  // 1800 of 3000
  CHECK(frame.room_left_percent == doctest::Approx(5).epsilon(1e-14));
  CHECK(frame.room_right_percent == doctest::Approx(5).epsilon(1e-14));
  CHECK(frame.room_top_percent == doctest::Approx(20).epsilon(1e-14));
  CHECK(frame.room_bottom_percent == doctest::Approx(20).epsilon(1e-14));
  CHECK(frame.shift_horizontal_percent == doctest::Approx(100 * 200.0 / 3600).epsilon(1e-14));
  CHECK(frame.shift_vertical_percent == doctest::Approx(100 * 600.0 / 1800).epsilon(1e-14));
  CHECK(frame.room_horizontal_mm == doctest::Approx(10).epsilon(1e-14));
  CHECK(frame.room_vertical_mm == doctest::Approx(7.5).epsilon(1e-14));
}

TEST_CASE("The worked example of the handbook") {
  // docs/formulas/frame.md, worked out there step by step.
  Geometry geometry = plain_geometry(4992, 3744, 2);
  geometry.width = {4992 * 0.0054};
  geometry.height = {3744 * 0.0054};
  geometry.recorded_width_pixels = 4096;
  geometry.recorded_height_pixels = 3072;
  const FrameReport frame = centred(Rational(239, 100), geometry, Rational(1, 20));
  CHECK(frame.protected_photosites.width == Rational(447408, 100));
  check_rect(frame.photosites, {.left = Rational(370812, 1000),
                                .top = Rational(936, 10),
                                .width = Rational(4250376, 1000),
                                .height = Rational(35568, 10)});
  CHECK(frame.pixels.left == doctest::Approx(304.256).epsilon(1e-12));
  CHECK(frame.pixels.height == doctest::Approx(2918.4).epsilon(1e-12));
  CHECK(frame.pixels.even_left == 306);
  CHECK(frame.pixels.even_top == 78);
  CHECK(frame.pixels.even_width == 3484);
  CHECK(frame.pixels.even_height == 2916);
  CHECK(frame.shift_horizontal_percent == doctest::Approx(8.7242).epsilon(1e-5));
  CHECK(frame.max_rotation_deg == doctest::Approx(1.2677).epsilon(1e-4));
}

TEST_CASE("Extraction rounds inward to even pixels") {
  // 4000 wide at 2.39:1 is 400000/239 = 1673.64 high: 663.18 to 2336.82, even 664 to 2336.
  const FrameReport frame = centred(Rational(239, 100), plain_geometry(4000, 3000));
  CHECK(frame.photosites.height == Rational(400000, 239));
  CHECK(frame.photosites.top == Rational(158500, 239));
  CHECK(frame.pixels.even_left == 0);
  CHECK(frame.pixels.even_width == 4000);
  CHECK(frame.pixels.even_top == 664);
  CHECK(frame.pixels.even_height == 1672);
}

TEST_CASE("Resampling to a whole raster gives whole pixels") {
  // 6240 * (3840 / 6240) is not 3840 in binary; 6240 * 3840 / 6240 is.
  Geometry geometry = plain_geometry(6240, 4160);
  geometry.recorded_width_pixels = 3840;
  geometry.recorded_height_pixels = 2560;
  const FrameReport frame = centred(Rational(3, 2), geometry);
  CHECK(frame.pixels.width == 3840);
  CHECK(frame.pixels.height == 2560);
}

TEST_CASE("Anchors") {
  const Geometry geometry = plain_geometry(4000, 3000);
  const Rational tenth(1, 10);
  SUBCASE("top: the protected area touches the top of the mode") {
    const FrameReport frame =
        frame_report(frame_line(2, tenth, Anchor{.kind = AnchorKind::top}), geometry, nullptr);
    check_rect(frame.protected_photosites, {.left = 0, .top = 0, .width = 4000, .height = 2000});
    check_rect(frame.photosites, {.left = 200, .top = 100, .width = 3600, .height = 1800});
    CHECK_FALSE(frame.anchor_limited);
    CHECK(frame.top_share == 0);
  }
  SUBCASE("free: shares of the room from -1 to 1") {
    const Anchor anchor{.kind = AnchorKind::free, .x = 1, .y = Rational(-1, 2)};
    const FrameReport frame = frame_report(frame_line(1, 0, anchor), geometry, nullptr);
    check_rect(frame.photosites, {.left = 1000, .top = 0, .width = 3000, .height = 3000});
    const FrameReport wide = frame_report(frame_line(2, 0, anchor), geometry, nullptr);
    check_rect(wide.photosites, {.left = 0, .top = 250, .width = 4000, .height = 2000});
    CHECK(wide.top_share == 0.25);
  }
  SUBCASE("common top: level with the main frame line") {
    // Main 2:1 with a tenth protected: top at 600. 16:9 beside it: protected 4000 x 2250, frame
    // 4000 x 2250 unprotected, so its protected area starts at 600 too.
    const FrameReport main = centred(2, geometry, tenth);
    const FrameReport frame = frame_report(
        frame_line(Rational(16, 9), 0, Anchor{.kind = AnchorKind::common_top}), geometry, &main);
    check_rect(frame.photosites, {.left = 0, .top = 600, .width = 4000, .height = 2250});
    CHECK_FALSE(frame.anchor_limited);
    // 4:3 fills the mode and cannot move down.
    const FrameReport tall = frame_report(
        frame_line(Rational(4, 3), 0, Anchor{.kind = AnchorKind::common_top}), geometry, &main);
    CHECK(tall.photosites.top == Rational(0));
    CHECK(tall.anchor_limited);
    // A frame line whose protection would stick out above the mode is limited too.
    const FrameReport top_main =
        frame_report(frame_line(2, 0, Anchor{.kind = AnchorKind::top}), geometry, nullptr);
    const FrameReport shielded = frame_report(
        frame_line(2, tenth, Anchor{.kind = AnchorKind::common_top}), geometry, &top_main);
    CHECK(shielded.photosites.top == Rational(100));
    CHECK(shielded.anchor_limited);
  }
  SUBCASE("common top of the main line itself is the top") {
    const FrameReport frame =
        frame_report(frame_line(2, 0, Anchor{.kind = AnchorKind::common_top}), geometry, nullptr);
    CHECK(frame.photosites.top == Rational(0));
  }
}

bool all_exact(const ExactRect& rect) {
  return rect.left.ok() && rect.top.ok() && rect.width.ok() && rect.height.ok() &&
         (rect.left + rect.width).ok() && (rect.top + rect.height).ok();
}

bool inside(const ExactRect& inner, const ExactRect& outer) {
  return inner.left >= outer.left && inner.top >= outer.top &&
         inner.left + inner.width <= outer.left + outer.width &&
         inner.top + inner.height <= outer.top + outer.height;
}

/// Even edges are inside the exact ones and less than two pixels away.
void require_even_inside(const PixelRect& rect) {
  const double rounding = 1e-9 * (1 + rect.left + rect.width + rect.top + rect.height);
  REQUIRE(rect.even_left % 2 == 0);
  REQUIRE(rect.even_top % 2 == 0);
  REQUIRE(rect.even_width % 2 == 0);
  REQUIRE(rect.even_height % 2 == 0);
  const auto require_edge = [&](double exact, std::int64_t start, std::int64_t length) {
    const auto even = static_cast<double>(start);
    REQUIRE(even >= exact - rounding);
    REQUIRE(even < exact + 2 + rounding);
    REQUIRE(length >= 0);
  };
  require_edge(rect.left, rect.even_left, rect.even_width);
  require_edge(rect.top, rect.even_top, rect.even_height);
  const auto require_far = [&](double exact, std::int64_t start, std::int64_t length) {
    if (length == 0) return;
    const auto even = static_cast<double>(start + length);
    REQUIRE(even <= exact + rounding);
    REQUIRE(even > exact - 2 - rounding);
  };
  require_far(rect.left + rect.width, rect.even_left, rect.even_width);
  require_far(rect.top + rect.height, rect.even_top, rect.even_height);
}

void require_frame_laws(const FrameLine& line, const Geometry& geometry, const FrameReport& frame) {
  const ExactRect mode{.left = 0,
                       .top = 0,
                       .width = geometry.width_photosites,
                       .height = geometry.height_photosites};
  REQUIRE(all_exact(frame.photosites));
  REQUIRE(all_exact(frame.protected_photosites));
  REQUIRE(inside(frame.photosites, frame.protected_photosites));
  REQUIRE(inside(frame.protected_photosites, mode));
  const Rational on_sensor = line.aspect / geometry.squeeze;
  REQUIRE(frame.photosites.width / frame.photosites.height == on_sensor);
  REQUIRE(frame.protected_photosites.width / frame.protected_photosites.height == on_sensor);
  const bool touches = frame.protected_photosites.width == mode.width ||
                       frame.protected_photosites.height == mode.height;
  REQUIRE(touches);
  REQUIRE(frame.photosites.width ==
          frame.protected_photosites.width * (Rational(1) - line.protection));
  require_even_inside(frame.pixels);
  require_even_inside(frame.protected_pixels);
  REQUIRE(frame.max_rotation_deg >= 0);
  REQUIRE(frame.max_rotation_deg <= 90);
  REQUIRE(frame.room_protected_percent ==
          doctest::Approx(100 * line.protection.to_double()).epsilon(1e-9));
  for (const double room : {frame.room_left_percent, frame.room_right_percent,
                            frame.room_top_percent, frame.room_bottom_percent}) {
    REQUIRE(room > -1e-9);
    REQUIRE(room < 100);
  }
  for (const double share : {frame.left_share, frame.top_share}) {
    REQUIRE(share >= 0);
    REQUIRE(share <= 1);
  }
}

void require_level(const FrameReport& frame, const FrameReport& main) {
  if (frame.anchor_limited) return;
  const Rational off = frame.photosites.top - main.photosites.top;
  const double apart = off.ok()
                           ? off.to_double()
                           : frame.photosites.top.to_double() - main.photosites.top.to_double();
  REQUIRE(apart >= -1e-9);
  REQUIRE(apart <= 1.0 / 4096 + 1e-9);
}

TEST_CASE("Frame line inside protected area inside mode, exactly, for all a plan may hold") {
  const std::uint64_t seed = 20261105;
  CAPTURE(seed);
  Dice dice(seed);
  int inexact_levels = 0;
  for (int round = 0; round < 20000; ++round) {
    CAPTURE(round);
    const Geometry geometry = testing::draw_geometry(dice);
    const FrameLine main_line = testing::draw_frame_line(dice);
    const FrameReport main = frame_report(main_line, geometry, nullptr);
    require_frame_laws(main_line, geometry, main);
    const FrameLine line = testing::draw_frame_line(dice);
    const FrameReport frame = frame_report(line, geometry, &main);
    require_frame_laws(line, geometry, frame);
    if (line.anchor.kind == AnchorKind::common_top) {
      require_level(frame, main);
      if (!frame.anchor_limited && frame.photosites.top != main.photosites.top) ++inexact_levels;
    }
  }
  CHECK(inexact_levels > 0);  // the awkward fractions that call for it do come up
}

TEST_CASE("Usual fractions are level exactly") {
  const Geometry geometry = plain_geometry(4992, 3744, 2);
  for (const Rational main_protection : {Rational(0), Rational(1, 20), Rational(1, 10)}) {
    const FrameReport main =
        frame_report(frame_line(Rational(239, 100), main_protection,
                                Anchor{.kind = AnchorKind::free, .y = Rational(-7, 20)}),
                     geometry, nullptr);
    for (const Rational aspect : {Rational(1024, 429), Rational(256, 135), Rational(285, 100)}) {
      const FrameReport frame =
          frame_report(frame_line(aspect, Rational(1, 40), Anchor{.kind = AnchorKind::common_top}),
                       geometry, &main);
      CHECK((frame.anchor_limited || frame.photosites.top == main.photosites.top));
    }
  }
}

// Turns the four corners in steps of a hundredth of a degree until one leaves the room.
double rotation_by_turning(double half_width, double half_height, double gap_x, double gap_y) {
  constexpr double kStepDeg = 0.01;
  const double slack = 1e-12 * (half_width + half_height);
  double turned = 0;
  for (double angle = kStepDeg; angle <= 90; angle += kStepDeg) {
    const double t = to_radians({angle});
    for (const double sign : {-1.0, 1.0}) {
      const double x = half_width * std::cos(t) - sign * half_height * std::sin(t);
      const double y = half_width * std::sin(t) + sign * half_height * std::cos(t);
      const bool outside =
          std::abs(x) > half_width + gap_x + slack || std::abs(y) > half_height + gap_y + slack;
      if (outside) return turned;
    }
    turned = angle;
  }
  return 90;
}

TEST_CASE("The largest roll is where turned corners first leave the mode") {
  const std::uint64_t seed = 20261106;
  CAPTURE(seed);
  Dice dice(seed);
  for (int round = 0; round < 400; ++round) {
    const double half_width = dice.between(0.5, 50);
    const double half_height = dice.between(0.5, 50);
    const double gap_x = dice.one_in(8) ? 0 : dice.between(0, dice.one_in(2) ? 2 : 60);
    const double gap_y = dice.one_in(8) ? 0 : dice.between(0, dice.one_in(2) ? 2 : 60);
    CAPTURE(round);
    const double exact = largest_rotation(half_width, half_height, gap_x, gap_y).value;
    const double turned = rotation_by_turning(half_width, half_height, gap_x, gap_y);
    REQUIRE(exact >= turned - 1e-9);
    REQUIRE(exact <= turned + 0.0101);
    if (gap_x == 0 || gap_y == 0) REQUIRE(exact == 0);
  }
}

TEST_CASE("A square turns 45 degrees when its corner only just passes") {
  const double gap = std::sqrt(2.0) - 1;
  CHECK(largest_rotation(1, 1, gap * (1 - 1e-12), 10).value == doctest::Approx(45).epsilon(1e-5));
  CHECK(largest_rotation(1, 1, 0.5, 0.5).value == 90);
  // a cos t + b sin t = a + g with a = 4, b = 3, g = 0.96: t = atan(3/4) - acos(4.96/5), by hand
  // 36.8699 - 7.2522 degrees.
  CHECK(largest_rotation(4, 3, 0.96, 100).value == doctest::Approx(29.6177).epsilon(1e-5));
}

TEST_CASE("A roll is judged in de-squeezed space") {
  // 3200 x 3600 at 2x is 6400 x 3600; a frame of 16:9 with a tenth protected behaves as on a
  // spherical mode of that size.
  const FrameReport squeezed =
      centred(Rational(16, 9), plain_geometry(3200, 3600, 2), Rational(1, 10));
  const FrameReport spherical =
      centred(Rational(16, 9), plain_geometry(6400, 3600), Rational(1, 10));
  CHECK(squeezed.max_rotation_deg == doctest::Approx(spherical.max_rotation_deg).epsilon(1e-12));
  CHECK(squeezed.max_rotation_deg > 1);
}

TEST_CASE("A frame that touches the mode has no roll at all, to the last bit") {
  const std::uint64_t seed = 20261107;
  CAPTURE(seed);
  Dice dice(seed);
  for (int round = 0; round < 2000; ++round) {
    const Geometry geometry = testing::draw_geometry(dice);
    FrameLine line = testing::draw_frame_line(dice);
    line.protection = 0;
    REQUIRE(frame_report(line, geometry, nullptr).max_rotation_deg == 0);
  }
}

}  // namespace
}  // namespace widegate
