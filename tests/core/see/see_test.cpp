// Field of view, scene sizes and the way back, equivalent focal lengths, depth of field: against
// another library, published manuals, and laws.
#include "core/see/see.h"

#include <doctest/doctest.h>

#include <array>
#include <cmath>

#include "core/frame/frame.h"
#include "tests/core/support/draws.h"

namespace widegate {
namespace {

using testing::Dice;
using testing::plain_geometry;

struct CalibrationRow {
  std::string_view name;
  double width_mm, height_mm, focal_mm, horizontal_deg, vertical_deg, diagonal_deg;
};
constexpr auto kCalibrations = std::to_array<CalibrationRow>({
#include "tests/data/fov_calibration.inc"
});

TEST_CASE("Field of view against a camera calibration library") {
  for (const CalibrationRow& row : kCalibrations) {
    CAPTURE(row.name);
    CAPTURE(row.focal_mm);
    const double diagonal = std::hypot(row.width_mm, row.height_mm);
    CHECK(field_of_view({row.width_mm}, {row.focal_mm}).value ==
          doctest::Approx(row.horizontal_deg).epsilon(1e-12));
    CHECK(field_of_view({row.height_mm}, {row.focal_mm}).value ==
          doctest::Approx(row.vertical_deg).epsilon(1e-12));
    CHECK(field_of_view({diagonal}, {row.focal_mm}).value ==
          doctest::Approx(row.diagonal_deg).epsilon(1e-12));
  }
}

struct ViewRow {
  double width_mm, height_mm, focal_mm, horizontal_deg, vertical_deg;
};
constexpr auto kViews = std::to_array<ViewRow>({
#include "tests/data/field_of_view.inc"
});

TEST_CASE("Fields of view of more apertures") {
  for (const ViewRow& row : kViews) {
    CAPTURE(row.width_mm);
    CAPTURE(row.focal_mm);
    CHECK(field_of_view({row.width_mm}, {row.focal_mm}).value ==
          doctest::Approx(row.horizontal_deg).epsilon(1e-10));
    CHECK(field_of_view({row.height_mm}, {row.focal_mm}).value ==
          doctest::Approx(row.vertical_deg).epsilon(1e-10));
  }
}

TEST_CASE("A squeeze doubles the tangent, not the angle") {
  // 21.9964 mm at 50 mm: 2 atan(2 w / 2f) is 47.492076 degrees, twice the spherical
  // angle 49.621804.
  CHECK(field_of_view({2 * 21.9964}, {50}).value == doctest::Approx(47.492076).epsilon(1e-8));
  CHECK(2 * field_of_view({21.9964}, {50}).value == doctest::Approx(49.621804).epsilon(1e-8));
}

TEST_CASE("Scaling millimetres and focal length together leaves the view alone") {
  const std::uint64_t seed = 20261111;
  CAPTURE(seed);
  Dice dice(seed);
  for (int round = 0; round < 5000; ++round) {
    const Millimetres extent{dice.between(0.5, 500)};
    const Millimetres focal{dice.between(1, 3000)};
    const double k = dice.between(0.01, 100);
    const double view = field_of_view(extent, focal).value;
    REQUIRE(view > 0);
    REQUIRE(view < 180);
    REQUIRE(field_of_view(k * extent, k * focal).value == doctest::Approx(view).epsilon(1e-12));
    REQUIRE(field_of_view(1.01 * extent, focal).value > view);
    REQUIRE(field_of_view(extent, 1.01 * focal).value < view);
  }
}

TEST_CASE("At close range the picture is as wide as the thin lens makes it") {
  // A 36 mm wide frame at 50 mm, focused at 0.5 and 1 m from the lens, sees 35.904649 and
  // 37.761376 degrees: worked out apart from this project from the effective focal length.
  for (const auto& [distance, degrees] : {std::pair(0.5, 35.904649), std::pair(1.0, 37.761376)}) {
    const Focused lens{.focal = {50}, .distance = {distance}};
    const double width = scene_extent({36}, lens).value;
    CHECK(from_radians(2 * std::atan(width / (2 * distance))).value ==
          doctest::Approx(degrees).epsilon(2e-8));
  }
  // 1:1 at twice the focal length.
  CHECK(magnification({.focal = {60}, .distance = {0.12}}) == doctest::Approx(1).epsilon(1e-14));
}

TEST_CASE("A scene size grows steadily with the distance, without a jump anywhere") {
  // (d - f) / f times the frame: 9.95 m through 50 mm shows 199 times 25 mm.
  CHECK(scene_extent({25}, {.focal = {50}, .distance = {10}}).value ==
        doctest::Approx(4.975).epsilon(1e-14));
  // Across 100 focal lengths a step of a millimetre shows a fiftieth of 25 mm more, as elsewhere.
  const double nearer = scene_extent({25}, {.focal = {50}, .distance = {4.999}}).value;
  const double farther = scene_extent({25}, {.focal = {50}, .distance = {5}}).value;
  CHECK(farther - nearer == doctest::Approx(0.0005).epsilon(1e-9));
  // Tables print d / f times the frame: a hundredth more at 100 focal lengths, nothing far away.
  CHECK(farther == doctest::Approx(2.5 * 0.99).epsilon(1e-12));
  CHECK(scene_extent({25}, {.focal = {50}, .distance = {1000}}).value ==
        doctest::Approx(500).epsilon(1e-4));
}

TEST_CASE("Distance and focal length for a wanted size lead back to that size") {
  const std::uint64_t seed = 20261112;
  CAPTURE(seed);
  Dice dice(seed);
  for (int round = 0; round < 20000; ++round) {
    CAPTURE(round);
    const Millimetres extent{dice.between(1, 100)};
    const Metres wanted{dice.one_in(2) ? extent.value * dice.between(0.05, 0.2)
                                       : dice.between(0.01, 300)};
    constexpr double tolerance = 1e-11;
    const Millimetres focal{dice.between(4, 600)};
    const Metres distance = distance_for(wanted, extent, focal);
    REQUIRE(to_millimetres(distance) > focal);
    REQUIRE(scene_extent(extent, {.focal = focal, .distance = distance}).value ==
            doctest::Approx(wanted.value).epsilon(tolerance));
    const Metres from{dice.between(0.05, 400)};
    const Millimetres needed = focal_for(wanted, extent, from);
    REQUIRE(needed.value > 0);
    REQUIRE(needed < to_millimetres(from));
    REQUIRE(scene_extent(extent, {.focal = needed, .distance = from}).value ==
            doctest::Approx(wanted.value).epsilon(tolerance));
  }
}

struct DepthRow {
  std::string_view name;
  double focal_mm, f_number, circle_mm, focus_mm, hyperfocal_mm, near_mm, far_mm;
};
constexpr auto kDepths = std::to_array<DepthRow>({
#include "tests/data/thin_lens_depth.inc"
});

DepthOfField depth(double focal_mm, double f_number, double circle_mm, double focus_mm) {
  return depth_of_field(
      {.lens = {.focal = {focal_mm}, .distance = to_metres(Millimetres{focus_mm})},
       .f_number = f_number,
       .circle_of_confusion = {circle_mm}});
}

TEST_CASE("Depth of field of a thin lens") {
  for (const DepthRow& row : kDepths) {
    CAPTURE(row.name);
    CAPTURE(row.f_number);
    const DepthOfField found = depth(row.focal_mm, row.f_number, row.circle_mm, row.focus_mm);
    CHECK(found.hyperfocal_m * 1000 == doctest::Approx(row.hyperfocal_mm).epsilon(1e-9));
    CHECK(found.near_m * 1000 == doctest::Approx(row.near_mm).epsilon(2e-9));
    REQUIRE(found.far_m.has_value() == (row.far_mm != 0));
    if (found.far_m) CHECK(*found.far_m * 1000 == doctest::Approx(row.far_mm).epsilon(2e-9));
  }
}

TEST_CASE("Depth of field in published manuals") {
  constexpr double kFootMm = 304.8;
  constexpr double kInchMm = 25.4;
  // Manuals leave the last + f out of the hyperfocal distance: allow that one focal length.
  SUBCASE("United States Army photography course: 2 inches, f/8, 0.002 inch") {
    const double focal = 2 * kInchMm;
    const DepthOfField at = depth(focal, 8, 0.002 * kInchMm, 20.8 * kFootMm);
    CHECK(std::abs(at.hyperfocal_m * 1000 / kFootMm - 20.8) < focal / kFootMm + 0.05);
    CHECK(std::abs(at.near_m * 1000 / kFootMm - 10.4) < 0.05 + focal / kFootMm / 2);
  }
  SUBCASE("United States Navy manual 14209: 155 mm, f/2.8, 0.002 inch, focused at 10 feet") {
    const DepthOfField at = depth(6.1 * kInchMm, 2.8, 0.002 * kInchMm, 10 * kFootMm);
    CHECK(std::abs(at.hyperfocal_m * 1000 / kFootMm - 554) < 1);
    CHECK(std::abs(at.near_m * 1000 / kFootMm - 9.8) < 0.05);
    REQUIRE(at.far_m.has_value());
    CHECK(std::abs(*at.far_m * 1000 / kFootMm - 10.2) < 0.05);
  }
  SUBCASE("Hawkins and Avon, 1979: 70 mm, 0.021 mm; the near limit worked out apart from it") {
    CHECK(std::abs(depth(70, 8, 0.021, 10000).hyperfocal_m - 29.2) < 0.05 + 0.07);
    const DepthOfField at = depth(70, 22, 0.021, 10606);
    CHECK(std::abs(at.hyperfocal_m - 10.6) < 0.05 + 0.07);
    CHECK(at.near_m * 1000 == doctest::Approx(5320.573).epsilon(1e-7));
  }
  SUBCASE("Photographic lenses FAQ: focused at an eighth of the hyperfocal distance") {
    const double hyperfocal = depth(50, 4, 0.03, 1000).hyperfocal_m;
    const DepthOfField at = depth(50, 4, 0.03, 1000 * hyperfocal / 8);
    CHECK(at.near_m == doctest::Approx(hyperfocal / 8 * 8 / 9).epsilon(0.003));
    REQUIRE(at.far_m.has_value());
    CHECK(*at.far_m == doctest::Approx(hyperfocal / 8 * 8 / 7).epsilon(0.003));
  }
}

TEST_CASE("Near and far enclose the focus; stopping down widens them") {
  const std::uint64_t seed = 20261113;
  CAPTURE(seed);
  Dice dice(seed);
  for (int round = 0; round < 20000; ++round) {
    CAPTURE(round);
    const double focal = dice.between(1, 600);
    const double focus =
        focal * dice.between(1.01, 1.5) + (dice.one_in(2) ? dice.between(0, 1e5) : 0);
    const double circle = dice.between(0.001, 0.1);
    const double f_number = dice.between(0.5, 32);
    const DepthOfField wide = depth(focal, f_number, circle, focus);
    const double focus_m = to_metres(Millimetres{focus}).value;
    const double rounding = 1e-12 * focus_m;
    REQUIRE(wide.near_m > 0);
    REQUIRE(wide.near_m <= focus_m + rounding);
    REQUIRE(wide.far_m.value_or(1e300) >= focus_m - rounding);
    REQUIRE(wide.far_m.has_value() == (focus_m < wide.hyperfocal_m * (1 - 1e-12)));
    const DepthOfField stopped = depth(focal, 2 * f_number, circle, focus);
    REQUIRE(stopped.near_m <= wide.near_m + rounding);
    REQUIRE(stopped.far_m.value_or(1e300) >= wide.far_m.value_or(1e300) - rounding);
  }
}

TEST_CASE("Focused at the hyperfocal distance everything to infinity is sharp from half of it") {
  for (const double focal : {12.0, 18.0, 35.0, 50.0, 75.0, 135.0}) {
    for (const double f_number : {1.4, 2.0, 2.8, 4.0, 5.6, 8.0, 11.0}) {
      const double hyperfocal_mm = depth(focal, f_number, 0.025, 1e4).hyperfocal_m * 1000;
      const DepthOfField at = depth(focal, f_number, 0.025, hyperfocal_mm);
      CHECK_FALSE(at.far_m.has_value());
      CHECK(at.near_m * 1000 == doctest::Approx(hyperfocal_mm / 2).epsilon(1e-12));
    }
  }
}

TEST_CASE("The circle of confusion by convention scales with the frame") {
  CHECK(conventional_circle_of_confusion({31.115}).value == 0.025);
  CHECK(conventional_circle_of_confusion({2 * 31.115}).value == 0.05);
}

SeeReport see_of(const Plan& plan, const Geometry& geometry, const Catalogue& library = {},
                 const LensSet* set = nullptr) {
  const FrameReport frame = frame_report(plan.deliverable.frame_lines.front(), geometry, nullptr);
  return see_report(plan, set, geometry, frame, library);
}

TEST_CASE("An anamorphic lens sees wider and deeper across than along") {
  Plan plan;
  plan.lens.focal_mm = 50;
  plan.lens.focus_m = 10;
  plan.lens.circle_of_confusion_mm = 0.025;
  const SeeReport see = see_of(plan, plain_geometry(4400, 3700, 2));  // 22 x 18.5 mm
  CHECK(see.horizontal_fov_deg == doctest::Approx(field_of_view({44}, {50}).value).epsilon(1e-14));
  CHECK(see.vertical_fov_deg == doctest::Approx(field_of_view({18.5}, {50}).value).epsilon(1e-14));
  CHECK(see.diagonal_fov_deg ==
        doctest::Approx(field_of_view({std::hypot(44, 18.5)}, {50}).value).epsilon(1e-14));
  CHECK(see.mode_width_at_focus_m == doctest::Approx(44.0 * 9.95 / 50).epsilon(1e-14));
  CHECK(see.mode_height_at_focus_m == doctest::Approx(18.5 * 9.95 / 50).epsilon(1e-14));
  // Across, focal length and tolerable blur are both halved: H is f^2/(N c s) + f/s, half as far.
  CHECK(see.horizontal_depth.hyperfocal_m ==
        doctest::Approx(see.depth.hyperfocal_m / 2).epsilon(1e-12));
  CHECK(see.horizontal_depth.near_m < see.depth.near_m);
}

TEST_CASE("The same blur on the screen, whatever the squeeze") {
  // 20 x 17 mm behind a 2x lens is seen as 40 x 17: the circle is that of a spherical frame of 40 x
  // 17, not of 20 x 17.
  Plan plan;
  plan.deliverable.frame_lines.front().aspect = Rational(40, 17);
  const double squeezed = see_of(plan, plain_geometry(4000, 3400, 2)).circle_of_confusion_mm;
  CHECK(squeezed == doctest::Approx(0.025 * std::hypot(40, 17) / 31.115).epsilon(1e-12));
  const double spherical = see_of(plan, plain_geometry(8000, 3400)).circle_of_confusion_mm;
  CHECK(spherical == doctest::Approx(squeezed).epsilon(1e-12));
}

TEST_CASE("An extender or a reducer multiplies focal length and stop") {
  Plan plan;
  plan.lens.focal_mm = 50;
  plan.lens.f_number = 2.8;
  plan.lens.extender = Rational(2);
  const SeeReport longer = see_of(plan, plain_geometry(4992, 3744));
  CHECK(longer.focal_mm == 100);
  CHECK(longer.f_number == 5.6);
  CHECK(longer.marked_focal_mm == 50);
  plan.lens.extender = Rational(71, 100);
  CHECK(see_of(plan, plain_geometry(4992, 3744)).focal_mm == doctest::Approx(35.5));
  CHECK(see_of(plan, plain_geometry(4992, 3744)).f_number == doctest::Approx(1.988));
}

TEST_CASE("Widest stop and nearest focus are those of the listed lens, and only of a listed one") {
  LensSet set;
  set.lenses = {{.focal_mm = 50, .image_circle_mm = 40, .widest_t_stop = 2, .close_focus_m = 0.5}};
  Plan plan;
  plan.lens.focal_mm = 50;
  const SeeReport listed = see_of(plan, plain_geometry(4992, 3744), {}, &set);
  CHECK(listed.widest_stop == std::optional(2.0));
  CHECK(listed.close_focus_m == std::optional(0.5));
  plan.lens.focal_mm = 51;
  CHECK_FALSE(see_of(plan, plain_geometry(4992, 3744), {}, &set).widest_stop.has_value());
}

TEST_CASE("A spherical lens has one depth") {
  Plan plan;
  const SeeReport see = see_of(plan, plain_geometry(4992, 3744));
  CHECK(see.horizontal_depth.near_m == see.depth.near_m);
  CHECK(see.horizontal_depth.far_m == see.depth.far_m);
}

TEST_CASE("Wanted sizes ask how far and how long, and only when wanted") {
  Plan plan;
  plan.lens.focal_mm = 50;
  plan.lens.focus_m = 10;
  plan.deliverable.frame_lines.front().aspect = 2;
  const Geometry geometry = plain_geometry(4000, 3000);  // the frame is 20 x 10 mm
  const SeeReport nothing = see_of(plan, geometry);
  CHECK_FALSE(nothing.distance_for_wanted_width_m.has_value());
  CHECK_FALSE(nothing.focal_for_wanted_height_mm.has_value());
  CHECK(nothing.width_at_focus_m == doctest::Approx(3.98).epsilon(1e-12));
  plan.lens.wanted_width_m = 8;
  plan.lens.wanted_height_m = 4;
  const SeeReport see = see_of(plan, geometry);
  CHECK(see.distance_for_wanted_width_m.value() == doctest::Approx(20.05).epsilon(1e-12));
  CHECK(see.distance_for_wanted_height_m.value() == doctest::Approx(20.05).epsilon(1e-12));
  CHECK(see.focal_for_wanted_width_mm.value() == doctest::Approx(10000.0 / 401).epsilon(1e-12));
  CHECK(see.focal_for_wanted_height_mm.value() == doctest::Approx(10000.0 / 401).epsilon(1e-12));
}

Camera camera_with(std::string id, std::vector<SensorMode> modes) {
  Camera camera;
  camera.id = std::move(id);
  camera.modes = std::move(modes);
  return camera;
}
SensorMode mode_of(std::string id, double width_mm, double height_mm) {
  SensorMode mode;
  mode.id = std::move(id);
  mode.width_mm = width_mm;
  mode.height_mm = height_mm;
  return mode;
}

Catalogue library_of(std::vector<Camera> cameras) {
  Catalogue library;
  library.cameras = std::move(cameras);
  return library;
}

Catalogue three_cameras() {
  return library_of({camera_with("a", {mode_of("full", 24, 18), mode_of("crop", 12, 12)}),
                     camera_with("b", {mode_of("full", 36, 24)}),
                     camera_with("c", {mode_of("full", 48, 20)})});
}

Geometry mode_24_by_18() {
  Geometry geometry = plain_geometry(4800, 3600);
  geometry.width = {24};
  geometry.height = {18};
  return geometry;
}

Plan plan_for_equivalents() {
  Plan plan;
  plan.format.camera = "a";
  plan.format.mode = "full";
  plan.lens.focal_mm = 40;
  return plan;
}

TEST_CASE("A mode made for another squeeze has an answer for each lens") {
  SensorMode squeezed = mode_of("squeezed", 24, 20);
  squeezed.squeeze = Rational(2);
  const Catalogue library = library_of({camera_with("a", {mode_of("full", 24, 18), squeezed})});
  // By width 40 mm on 24 mm: a spherical lens of 40 mm, or a 2x lens of 80 mm.
  const SeeReport spherical = see_of(plan_for_equivalents(), mode_24_by_18(), library);
  REQUIRE(spherical.equivalent_focal.size() == 2);
  CHECK(spherical.equivalent_focal[0].squeeze == 1);
  CHECK(spherical.equivalent_focal[0].focal_mm == doctest::Approx(40).epsilon(1e-12));
  CHECK(spherical.equivalent_focal[1].squeeze == 2);
  CHECK(spherical.equivalent_focal[1].focal_mm == doctest::Approx(80).epsilon(1e-12));
  // With the 2x lens the mode is made for there is one answer.
  Geometry geometry = mode_24_by_18();
  geometry.squeeze = 2;
  const SeeReport same = see_of(plan_for_equivalents(), geometry, library);
  REQUIRE(same.equivalent_focal.size() == 1);
  CHECK(same.equivalent_focal[0].squeeze == 2);
  CHECK(same.equivalent_focal[0].focal_mm == doctest::Approx(40).epsilon(1e-12));
}

TEST_CASE("The same view in other modes by width, height and diagonal") {
  struct Row {
    MatchBy match;
    std::array<double, 3> focals;  // of a/crop, b/full, c/full, for 40 mm on 24 x 18 (diagonal 30)
  };
  const auto kRows = std::to_array<Row>({
      {MatchBy::width, {20, 60, 80}},
      {MatchBy::height, {40.0 * 12 / 18, 40.0 * 24 / 18, 40.0 * 20 / 18}},
      {MatchBy::diagonal,
       {40 * std::sqrt(288.0) / 30, 40 * std::sqrt(1872.0) / 30, 40 * 52.0 / 30}},
  });
  for (const Row& row : kRows) {
    Plan plan = plan_for_equivalents();
    plan.lens.match = row.match;
    const SeeReport see = see_of(plan, mode_24_by_18(), three_cameras());
    REQUIRE(see.equivalent_focal.size() == 3);
    for (std::size_t i = 0; i < 3; ++i) {
      CHECK(see.equivalent_focal[i].focal_mm == doctest::Approx(row.focals[i]).epsilon(1e-12));
    }
    CHECK(see.equivalent_focal[0].mode == "crop");
    CHECK(see.equivalent_focal[1].camera == "b");
  }
}

TEST_CASE("Only cameras considered are listed, always with the plan's own") {
  Plan plan = plan_for_equivalents();
  plan.choose.cameras = {"c"};
  const SeeReport see = see_of(plan, mode_24_by_18(), three_cameras());
  REQUIRE(see.equivalent_focal.size() == 2);
  CHECK(see.equivalent_focal[0].camera == "a");
  CHECK(see.equivalent_focal[1].camera == "c");
}

TEST_CASE("One's own camera hides the library's of the same id") {
  Plan plan = plan_for_equivalents();
  plan.own.cameras = {camera_with("b", {mode_of("full", 30, 20)})};
  const SeeReport see = see_of(plan, mode_24_by_18(), three_cameras());
  REQUIRE(see.equivalent_focal.size() == 3);
  CHECK(see.equivalent_focal[0].camera == "b");
  CHECK(see.equivalent_focal[0].focal_mm == doctest::Approx(50).epsilon(1e-12));
}

TEST_CASE("There and back again gives the focal length started from") {
  const std::uint64_t seed = 20261114;
  CAPTURE(seed);
  Dice dice(seed);
  for (int round = 0; round < 500; ++round) {
    const double other_width = dice.between(5, 60);
    const double other_height = dice.between(5, 60);
    Plan plan = plan_for_equivalents();
    plan.lens.match = static_cast<MatchBy>(dice.whole(0, 2));
    plan.lens.focal_mm = dice.between(8, 300);
    const Catalogue library = library_of(
        {camera_with("a", {mode_of("full", 24, 18), mode_of("other", other_width, other_height)})});
    Geometry other = mode_24_by_18();
    other.width = {other_width};
    other.height = {other_height};
    const double there = see_of(plan, mode_24_by_18(), library).equivalent_focal[0].focal_mm;
    Plan back = plan;
    back.format.mode = "other";
    back.lens.focal_mm = there;
    REQUIRE(see_of(back, other, library).equivalent_focal[0].focal_mm ==
            doctest::Approx(plan.lens.focal_mm).epsilon(1e-12));
  }
}

}  // namespace
}  // namespace widegate
