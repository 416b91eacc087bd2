// What the first release wrote opens for ever, and means what it asked for.
#include "core/plan/carry_over.h"

#include <doctest/doctest.h>

#include <string>

#include "core/catalogue/catalogue_json.h"
#include "core/handover/link/link.h"
#include "core/plan/plan_fields.h"
#include "core/plan/plan_json.h"

namespace widegate {
namespace {

const Catalogue& library() {
  static const Catalogue kLibrary = built_in_catalogue().value();
  return kLibrary;
}

Plan opened(const std::string& members) {
  const auto plan = plan_from_json(R"({"widegate_plan": 1, )" + members + "}", library());
  REQUIRE(plan);
  return *plan;
}

TEST_CASE("a document without a commission follows its deliverable") {
  CHECK(opened(R"("title": "Old")").commission == Commissioned{});
}

TEST_CASE("no photosites, or a mandate that need not be met, is the commission of nothing") {
  CHECK(opened(R"("mandate": {"photosites": 0})").commission.id == "none");
  CHECK(opened(R"("choose": {"must_meet_mandate": false})").commission.id == "none");
  CHECK(opened(R"("choose": {"must_meet_mandate": true})").commission == Commissioned{});
}

TEST_CASE("photosites are the first requirement, photosites across a recorded width") {
  const Commissioned asked =
      opened(R"("mandate": {"photosites": 2073600, "photosites_across": 1920})").commission;
  CHECK(asked.id.empty());
  CHECK(asked.terms.photosites == 2'073'600);
  CHECK(asked.terms.recorded_width_pixels == 1920);
  const Commissioned across =
      opened(R"("mandate": {"photosites": 0, "photosites_across": 3840})").commission;
  CHECK(across.id == "none");
  CHECK(across.terms.recorded_width_pixels == 3840);
}

TEST_CASE("retired fields are still checked") {
  const auto plan =
      plan_from_json(R"({"widegate_plan": 1, "mandate": {"photosites": -1}})", library());
  REQUIRE_FALSE(plan);
  CHECK(plan.error().front().pointer == "/mandate/photosites");
  CHECK_FALSE(plan_from_json(R"({"widegate_plan": 1, "mandate": {"pixels": 1}})", library()));
}

TEST_CASE("weights without a set: untouched ones are balanced, others one's own") {
  const std::string alike =
      R"("choose": {"weight_area": 1, "weight_pixels": 1, "weight_speed": 1, "weight_data": 1})";
  CHECK(opened(alike).choose.weights == WeightSet::balanced);
  const Choosing own = opened(R"("choose": {"weight_data": 4})").choose;
  CHECK(own.weights == WeightSet::own);
  CHECK(own.weight_data == 4);
  CHECK(opened(R"("choose": {"weight_data": 4, "weights": "balanced"})").choose.weights ==
        WeightSet::balanced);
}

TEST_CASE("a set of weights beside weights of one's own survives a link") {
  for (const WeightSet set : {WeightSet::balanced, WeightSet::own, WeightSet::least_data}) {
    for (const double weight : {1.0, 4.0}) {
      Plan plan;
      plan.choose.weights = set;
      plan.choose.weight_data = weight;
      const auto back = plan_from_link(plan_to_link(plan), library());
      REQUIRE(back);
      CHECK(*back == plan);
      CHECK(plan_from_json(plan_to_json(plan), library()) == plan);
    }
  }
}

TEST_CASE("what was typed for a retired field still says what it said") {
  const auto plan = with_field(Plan{}, "/mandate/photosites", "0", library());
  REQUIRE(plan);
  CHECK(plan->commission.id == "none");
  CHECK_FALSE(with_field(Plan{}, "/mandate/photosites", "-1", library()));
}

TEST_CASE("one's own weights begin with those that were in force") {
  const auto plan = with_field(Plan{}, "/choose/weight_data", "5", library());
  REQUIRE(plan);
  CHECK(plan->choose.weights == WeightSet::own);
  CHECK(plan->choose.weight_area == 2);
  CHECK(plan->choose.weight_fidelity == 3);
  CHECK(plan->choose.weight_data == 5);
}

TEST_CASE("a plan's own commission travels in its link") {
  Plan plan;
  Commission own;
  own.id = "quay";
  own.name = "Quay";
  own.source = "written requirements";
  own.terms.bit_depth = 12;
  own.terms.sensor_raw = Wish::refused;
  own.rates = {24, Rational(24000, 1001)};
  plan.own.commissions = {own};
  plan.commission.id = "quay";
  const auto back = plan_from_link(plan_to_link(plan), library());
  REQUIRE(back);
  CHECK(*back == plan);
  CHECK(plan_from_json(plan_to_json(plan), library()) == plan);
}

}  // namespace
}  // namespace widegate
