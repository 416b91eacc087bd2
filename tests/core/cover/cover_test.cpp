// Image circles: overlap against polygons of another library and against strips, laws, lens sets.
#include "core/cover/cover.h"

#include <doctest/doctest.h>

#include <array>
#include <cmath>

#include "core/frame/frame.h"
#include "core/optics/lens_squeeze.h"
#include "tests/core/support/draws.h"
#include "tests/core/support/tables.h"

namespace widegate {
namespace {

using testing::Dice;
using testing::lens_at;
using testing::plain_geometry;

RectMm rect_around(double x, double y, double width, double height) {
  return {.left = x - width / 2,
          .top = y - height / 2,
          .right = x + width / 2,
          .bottom = y + height / 2};
}

struct OverlapRow {
  std::string_view name;
  double width_mm, height_mm, circle_x_mm, circle_y_mm, circle_mm, overlap_mm2;
};
constexpr auto kOverlaps = std::to_array<OverlapRow>({
#include "tests/data/circle_rect_overlap.inc"
});

TEST_CASE("Overlap of circle and rectangle against polygons") {
  for (const OverlapRow& row : kOverlaps) {
    CAPTURE(row.name);
    // The table moves the circle; here the circle stays on the axis and the rectangle moves.
    const RectMm rect =
        rect_around(-row.circle_x_mm, -row.circle_y_mm, row.width_mm, row.height_mm);
    CHECK(overlap_mm2(rect, row.circle_mm / 2) ==
          doctest::Approx(row.overlap_mm2).epsilon(1e-9).scale(1));
    const RectMm mirrored =
        rect_around(row.circle_x_mm, row.circle_y_mm, row.width_mm, row.height_mm);
    CHECK(overlap_mm2(mirrored, row.circle_mm / 2) ==
          doctest::Approx(row.overlap_mm2).epsilon(1e-9).scale(1));
  }
}

struct UncoveredRow {
  double width_mm, height_mm, circle_mm, percent;
};
constexpr auto kUncovered = std::to_array<UncoveredRow>({
#include "tests/data/uncovered_area.inc"
});

TEST_CASE("Dark share of a centred rectangle against polygons") {
  constexpr double kPolygonError = 1e-4;
  for (const UncoveredRow& row : kUncovered) {
    CAPTURE(row.circle_mm);
    CAPTURE(row.width_mm);
    const CoverFigures figures =
        cover_figures(rect_around(0, 0, row.width_mm, row.height_mm), {row.circle_mm});
    CHECK(std::abs(figures.uncovered_area_percent - row.percent) < kPolygonError);
    CHECK(figures.covered == (row.circle_mm >= std::hypot(row.width_mm, row.height_mm)));
  }
}

TEST_CASE("Film apertures ask for a circle of their diagonal") {
  for (const testing::ApertureRow& row : testing::kApertures) {
    CAPTURE(row.name);
    const RectMm rect = rect_around(0, 0, row.width_mm, row.height_mm);
    const CoverFigures enough = cover_figures(rect, {row.diagonal_mm + 1e-3});
    CHECK(enough.diagonal_mm == doctest::Approx(row.diagonal_mm).epsilon(3e-6));
    CHECK(enough.area_mm2 == doctest::Approx(row.area_mm2).epsilon(1e-6));
    CHECK(enough.covered);
    CHECK(enough.uncovered_area_percent == 0);
    const CoverFigures short_by = cover_figures(rect, {row.diagonal_mm - 1e-3});
    CHECK_FALSE(short_by.covered);
    CHECK(short_by.uncovered_area_percent > 0);
    CHECK(short_by.margin_mm < 0);
    CHECK(row.width_mm / row.height_mm == doctest::Approx(row.ratio).epsilon(1e-5));
    CHECK(2 * row.width_mm / row.height_mm == doctest::Approx(row.ratio_after_2x).epsilon(1e-5));
  }
}

TEST_CASE("A circle of exactly the diagonal covers with a margin of nothing") {
  // 24.892 x 18.669 mm is an exact 3-4-5 triangle of 31.115 mm.
  const CoverFigures figures = cover_figures(rect_around(0, 0, 24.892, 18.669), {31.115});
  CHECK(figures.covered);
  CHECK(figures.margin_mm == 0);
  CHECK(figures.overlap_mm2 == figures.area_mm2);
  CHECK(figures.uncovered_area_percent == 0);
}

TEST_CASE("An off-centre frame is measured to its farthest corner") {
  // 6 x 8 moved 3 right and 4 down: farthest corner (6, 8), 10 mm away, so a 20 mm circle.
  const CoverFigures figures = cover_figures(rect_around(3, 4, 6, 8), {22});
  CHECK(figures.diagonal_mm == doctest::Approx(20).epsilon(1e-15));
  CHECK(figures.margin_mm == doctest::Approx(1).epsilon(1e-14));
  CHECK(figures.largest_covered_scale == doctest::Approx(1.1).epsilon(1e-15));
}

// The same area in strips: the chord of each, cut to the rectangle.
double overlap_in_strips(const RectMm& rect, double radius) {
  constexpr int kStrips = 20000;
  const double strip = rect.height() / kStrips;
  double area = 0;
  for (int i = 0; i < kStrips; ++i) {
    const double y = rect.top + (i + 0.5) * strip;
    if (std::abs(y) >= radius) continue;
    const double half_chord = std::sqrt(radius * radius - y * y);
    area +=
        std::max(0.0, std::min(rect.right, half_chord) - std::max(rect.left, -half_chord)) * strip;
  }
  return area;
}

RectMm draw_rect(Dice& dice) {
  return rect_around(dice.between(-20, 20), dice.between(-20, 20), dice.between(0.5, 60),
                     dice.between(0.5, 60));
}

TEST_CASE("Overlap against summed strips, anywhere on or off the axis") {
  const std::uint64_t seed = 20261108;
  CAPTURE(seed);
  Dice dice(seed);
  for (int round = 0; round < 300; ++round) {
    CAPTURE(round);
    const RectMm rect = draw_rect(dice);
    const double radius = dice.between(0.5, 50);
    const double strips = overlap_in_strips(rect, radius);
    const double error = 1e-3 * std::sqrt(radius * rect.height()) + 1e-6;
    REQUIRE(std::abs(overlap_mm2(rect, radius) - strips) < error);
  }
}

TEST_CASE("Area is never negative, never more than either shape, and grows with the circle") {
  const std::uint64_t seed = 20261109;
  CAPTURE(seed);
  Dice dice(seed);
  for (int round = 0; round < 2000; ++round) {
    CAPTURE(round);
    const RectMm rect = draw_rect(dice);
    double last_overlap = 0;
    double last_dark = 100;
    for (double diameter = 0; diameter <= 130; diameter += 6.5) {
      const CoverFigures figures = cover_figures(rect, {diameter});
      const double circle_area = std::numbers::pi * diameter * diameter / 4;
      REQUIRE(figures.overlap_mm2 >= 0);
      REQUIRE(figures.overlap_mm2 <= figures.area_mm2);
      REQUIRE(figures.overlap_mm2 <= circle_area + 1e-12 * figures.area_mm2);
      REQUIRE(figures.overlap_mm2 >= last_overlap);
      REQUIRE(figures.uncovered_area_percent >= 0);
      REQUIRE(figures.uncovered_area_percent <= last_dark);
      REQUIRE(figures.covered == (figures.uncovered_area_percent == 0 || figures.covered));
      REQUIRE(figures.covered == (figures.margin_mm >= 0));
      last_overlap = figures.overlap_mm2;
      last_dark = figures.uncovered_area_percent;
    }
  }
}

TEST_CASE("The same picture at any scale") {
  const std::uint64_t seed = 20261110;
  CAPTURE(seed);
  Dice dice(seed);
  for (int round = 0; round < 2000; ++round) {
    const RectMm rect = draw_rect(dice);
    const double diameter = dice.between(1, 100);
    const double k = dice.between(0.1, 10);
    const CoverFigures one = cover_figures(rect, {diameter});
    const CoverFigures scaled = cover_figures({.left = k * rect.left,
                                               .top = k * rect.top,
                                               .right = k * rect.right,
                                               .bottom = k * rect.bottom},
                                              {k * diameter});
    REQUIRE(scaled.margin_mm == doctest::Approx(k * one.margin_mm).epsilon(1e-9).scale(1));
    REQUIRE(scaled.uncovered_area_percent ==
            doctest::Approx(one.uncovered_area_percent).epsilon(1e-9).scale(1));
    REQUIRE(scaled.largest_covered_scale ==
            doctest::Approx(one.largest_covered_scale).epsilon(1e-12));
  }
}

// Four lenses; only the widest fails the frame line below.
LensSet four_lenses() {
  LensSet set;
  set.lenses = {{.focal_mm = 18, .image_circle_mm = 28},
                {.focal_mm = 25, .image_circle_mm = 31},
                {.focal_mm = 35, .image_circle_mm = 36},
                {.focal_mm = 75, .image_circle_mm = 34}};
  return set;
}

CoverReport cover_of(LensChoice lens, const LensSet* set, Rational aspect, Rational protection) {
  const Geometry geometry = plain_geometry(4992, 3744);  // 24.96 x 18.72 mm, diagonal 31.2
  const FrameReport frame =
      frame_report(testing::frame_line(aspect, protection), geometry, nullptr);
  return cover_report(lens, set, geometry, frame);
}

TEST_CASE("A lens set against a mode, its protected area and its frame line") {
  // 2:1 protected by a tenth: protected 24.96 x 12.48 (diagonal 27.906), frame 22.464 x 11.232
  // (25.115). The mode needs 31.2.
  const LensSet set = four_lenses();
  const CoverReport cover = cover_of(lens_at(25), &set, 2, Rational(1, 10));
  CHECK(cover.known);
  CHECK_FALSE(cover.interpolated);
  CHECK(cover.image_circle_mm == 31);
  CHECK_FALSE(cover.mode.covered);
  CHECK(cover.protected_area.covered);
  CHECK(cover.frame.covered);
  CHECK(cover.mode.margin_mm == doctest::Approx(-0.1).epsilon(1e-9));
  CHECK(cover.protected_area.diagonal_mm ==
        doctest::Approx(24.96 * std::sqrt(1.25)).epsilon(1e-12));
  CHECK(cover.largest_frame_width_mm == doctest::Approx(24.96).epsilon(1e-12));
  REQUIRE(cover.lens_set.size() == 4);
  CHECK(cover.lens_set[0].covers_frame);
  CHECK_FALSE(cover.lens_set[0].covers_mode);
  CHECK(cover.lens_set[2].covers_mode);
  CHECK_FALSE(cover.longest_uncovering_focal_mm.has_value());
}

TEST_CASE("The longest focal length that fails the frame line") {
  const LensSet set = four_lenses();
  const CoverReport cover = cover_of(lens_at(35), &set, Rational(4, 3), 0);
  CHECK(cover.mode.covered);
  CHECK(cover.longest_uncovering_focal_mm == 25.0);  // 31 mm against 31.2
  CHECK(cover.lost_padding_percent == 0);
}

TEST_CASE("The largest frame a small circle covers keeps the wanted shape") {
  const CoverReport cover = cover_of(lens_at(35, 20), nullptr, 2, 0);
  // Of a 2:1 rectangle the width is 2/sqrt(5) of the diagonal.
  CHECK(cover.largest_frame_width_mm == doctest::Approx(20 * 2 / std::sqrt(5.0)).epsilon(1e-12));
  CHECK(cover.largest_frame_height_mm == doctest::Approx(20 / std::sqrt(5.0)).epsilon(1e-12));
  CHECK(cover.lens_set.empty());
}

TEST_CASE("Lost padding counts only what lies outside the frame line") {
  // The circle covers the frame line, so all that is dark is padding.
  const CoverReport cover = cover_of(lens_at(35, 29), nullptr, 2, 0);
  CHECK(cover.frame.covered);
  const double dark = cover.mode.area_mm2 - cover.mode.overlap_mm2;
  CHECK(dark > 0);
  CHECK(cover.lost_padding_percent ==
        doctest::Approx(100 * dark / (cover.mode.area_mm2 - cover.frame.area_mm2)).epsilon(1e-9));
}

TEST_CASE("Which circle holds between the listed focal lengths") {
  const LensSet set = four_lenses();
  struct Row {
    double focal_mm, circle_mm;
    bool interpolated;
  };
  for (const Row& row : std::to_array<Row>({{18, 28, false},
                                            {12, 28, true},
                                            {20, 28, true},
                                            {30, 31, true},
                                            {50, 34, true},
                                            {75, 34, false},
                                            {100, 34, true}})) {
    CAPTURE(row.focal_mm);
    const CircleAt circle = circle_at(set, row.focal_mm);
    CHECK(circle.diameter_mm == row.circle_mm);
    CHECK(circle.interpolated == row.interpolated);
  }
  const auto own = image_circle(lens_at(20, 40), &set);
  REQUIRE(own.has_value());
  CHECK(own->diameter_mm == 40);
  CHECK_FALSE(own->interpolated);
  CHECK_FALSE(image_circle(lens_at(20), nullptr).has_value());
}

}  // namespace
}  // namespace widegate
