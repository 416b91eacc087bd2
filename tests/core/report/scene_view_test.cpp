// The scene as the mode sees it, against hand-worked numbers of the built-in plan.
#include "core/report/scene_view.h"

#include <doctest/doctest.h>

#include "core/catalogue/catalogue_json.h"
#include "core/report/evaluate.h"

using namespace widegate;

namespace {

Report report_of(const Plan& plan) {
  const auto library = built_in_catalogue();
  REQUIRE(library.has_value());
  const Report report = evaluate(plan, *library);
  REQUIRE(report.problems.empty());
  return report;
}

}  // namespace

TEST_CASE("scene: 26.9568 x 20.2176 mm behind 35 mm at 3 m") {
  const SceneView view = scene_view(report_of(Plan{}));
  // Closer than 100 focal lengths: extent over the magnification 35 / (3000 - 35).
  CHECK(view.half_width_m == doctest::Approx(26.9568 * 2965 / 35 / 2000));
  CHECK(view.half_height_m == doctest::Approx(20.2176 * 2965 / 35 / 2000));
  CHECK(view.half_tangent_x == doctest::Approx(26.9568 / 70));
  CHECK(view.half_tangent_y == doctest::Approx(20.2176 / 70));
  CHECK(view.photosites.columns == 4992);
  CHECK(view.recorded.columns == 4992);
  // The 2.39:1 picture is 3840 wide and fills the width of the mode.
  CHECK(view.delivered.columns == doctest::Approx(3840));
  CHECK(view.delivered.rows == doctest::Approx(3840.0 * 3744 / 4992));
  CHECK(view.delivered.left == 0);
  CHECK(view.delivered.top >= 0);
  CHECK(view.delivered.top < 1);
}

TEST_CASE("scene: a longer focal length shows less, in the same proportion") {
  Plan plan;
  plan.lens.focus_m = 20;
  const SceneView wide = scene_view(report_of(plan));
  plan.lens.focal_mm = 70;
  const SceneView narrow = scene_view(report_of(plan));
  // At 20 m: (20 - 0.035) / 0.035 over (20 - 0.07) / 0.07.
  CHECK(wide.half_width_m / narrow.half_width_m == doctest::Approx(2 * 19.965 / 19.93));
  CHECK(wide.half_tangent_x / narrow.half_tangent_x == doctest::Approx(2));
}

TEST_CASE("scene: a squeeze widens the view and not the circle on the sensor") {
  Plan plan;
  const SceneView plain = scene_view(report_of(plan));
  plan.lens.squeeze = 2;
  const SceneView squeezed = scene_view(report_of(plan));
  CHECK(squeezed.half_width_m / plain.half_width_m == doctest::Approx(2));
  CHECK(squeezed.half_height_m == plain.half_height_m);
  CHECK(squeezed.circle_x == plain.circle_x);
}

TEST_CASE("scene: the circle's radius over half the mode") {
  Plan plan;
  plan.lens.image_circle_mm = 26.9568;
  const SceneView view = scene_view(report_of(plan));
  CHECK(view.circle_x == doctest::Approx(1));
  CHECK(view.circle_y == doctest::Approx(26.9568 / 20.2176));
  plan.lens.image_circle_mm.reset();
  plan.lens.set.clear();
  CHECK(scene_view(report_of(plan)).circle_x == 0);
}

TEST_CASE("scene: no stage is finer than the one before it") {
  Plan plan;
  plan.deliverable.width_pixels = 8192;
  plan.deliverable.height_pixels = 4320;
  const SceneView view = scene_view(report_of(plan));
  CHECK(view.delivered.columns == 4992);
  CHECK(view.delivered.rows == 3744);
  CHECK(view.delivered.top == 0);
}

TEST_CASE("scene: nothing of a plan that cannot be worked out") {
  Report broken;
  broken.problems.push_back({});
  CHECK(scene_view(broken).half_width_m == 0);
}
