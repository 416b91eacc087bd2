// Libraries of one's own: out and in again, carried by plans.
#include "core/plan/carried_rows.h"

#include <doctest/doctest.h>

#include "core/catalogue/catalogue_json.h"
#include "core/handover/link/link.h"
#include "core/plan/plan_check.h"
#include "tests/core/support/random_plans.h"
#include "tests/core/support/rounds.h"

namespace {

using namespace widegate;

const Catalogue& library() {
  static const Catalogue kLibrary = built_in_catalogue().value_or(Catalogue{});
  return kLibrary;
}

/// A plan that uses the camera, card and lenses of a random library, and carries none of them.
Plan plan_with(const Catalogue& own) {
  Plan plan;
  const Camera& camera = own.cameras.front();
  const SensorMode& mode = camera.modes.back();
  const Recording& recording = mode.recordings.back();
  plan.format = {camera.id, mode.id, recording.id, recording.codecs.front()};
  plan.lens.set = own.lens_sets.front().id;
  plan.store.card = own.cards.front().id;
  return plan;
}

/// Random libraries out and in again as documents, and as links of plans that use them.
void round_trips(int count) {
  testing::Dice dice(5);
  for (int i = 0; i < count; ++i) {
    const Catalogue own = testing::random_library(dice);
    const auto read = catalogue_from_json(catalogue_to_json(own), library());
    REQUIRE(read.has_value());
    REQUIRE(*read == own);
    const Plan plan = plan_with(own);
    const Plan carrying = carrying_plan(plan, own);
    // A plan by itself is complete: the other device has the built-in library only.
    if (!check_plan(carrying, library()).empty()) continue;
    const auto opened = plan_from_link(plan_to_link(carrying), library());
    REQUIRE(opened.has_value());
    REQUIRE(*opened == carrying);
    REQUIRE(lightened_plan(*opened, own) == plan);
  }
}

}  // namespace

TEST_CASE("random libraries come back from documents, and from links of plans that use them") {
  round_trips(testing::rounds(1'000, 300));
}

TEST_CASE("a plan takes along what it uses, and nothing else") {
  testing::Dice dice(6);
  const Catalogue own = testing::random_library(dice);
  const Plan plan = plan_with(own);
  const Catalogue used = rows_in_use(plan, own);
  CHECK(used.cameras == own.cameras);
  CHECK(used.cards == own.cards);
  CHECK(used.lens_sets == own.lens_sets);
  CHECK(used.drives.empty());
  CHECK(is_empty(rows_in_use(Plan{}, own)));
  CHECK(is_empty(rows_in_use(carrying_plan(plan, own), own)));
  CHECK(carrying_plan(carrying_plan(plan, own), own) == carrying_plan(plan, own));
  Plan ranked;
  ranked.choose.cameras = {own.cameras.front().id};
  CHECK(rows_in_use(ranked, own).cameras == own.cameras);
}

TEST_CASE("a plan keeps its own version of a row that the library has otherwise") {
  testing::Dice dice(7);
  const Catalogue own = testing::random_library(dice);
  Catalogue changed = own;
  changed.cards.front().price += 1;
  const Plan carrying = carrying_plan(plan_with(own), own);
  const Plan light = lightened_plan(carrying, changed);
  CHECK(light.own.cameras.empty());
  CHECK(light.own.cards == own.cards);
  CHECK(carrying_plan(light, changed).own.cards == own.cards);
  CHECK(rows_also_in(light.own, changed).cards == own.cards);
  CHECK(is_empty(rows_not_in(light.own, changed)));
  CHECK(rows_not_in(own, Catalogue{}) == own);
}
