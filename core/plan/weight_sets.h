// The named sets of weights: what productions differ in, as data. What is weighed is
// core/choose/criteria.h's.
#pragma once

#include <array>

#include "core/plan/plan.h"

namespace widegate {

/// How much each share counts; only the proportions matter.
struct Weights {
  double area = 0;
  double pixels = 0;
  double fidelity = 0;
  double speed = 0;
  double data = 0;
  friend bool operator==(const Weights&, const Weights&) = default;
};

/// One set. All are common practice, no source: tried on jobs (tests/core/choose/jobs_*).
struct WeightSetRow {
  WeightSet set;
  Weights weights;
  /// Bits for each delivered pixel that are no more data than wanted.
  double target_bits = 8;
  bool wants_fastest = false;  ///< Speed is full at the fastest rate wanted, not at 1.2 times.
  bool plays_at_once = false;  ///< Only what an edit suite plays as it is.
};

inline constexpr std::array kWeightSetRows = {
    WeightSetRow{WeightSet::balanced, {2, 3, 3, 1, 1}},
    WeightSetRow{WeightSet::best_picture, {2, 4, 4, 0, 0}},
    WeightSetRow{WeightSet::biggest_image, {5, 3, 3, 1, 1}},
    WeightSetRow{
        .set = WeightSet::highest_speed, .weights = {1, 1, 1, 4, 1}, .wants_fastest = true},
    WeightSetRow{.set = WeightSet::least_data, .weights = {1, 1, 2, 1, 4}, .target_bits = 2},
    WeightSetRow{.set = WeightSet::soonest_in_edit,
                 .weights = {1, 1, 2, 1, 2},
                 .target_bits = 4,
                 .plays_at_once = true},
    WeightSetRow{WeightSet::own, {}},  // The weights are the plan's.
};

[[nodiscard]] constexpr const WeightSetRow& weight_set_row(WeightSet set) {
  return kWeightSetRows[static_cast<std::size_t>(set)];
}

/// The weights in force.
[[nodiscard]] constexpr Weights weights_of(const Choosing& choose) {
  if (choose.weights != WeightSet::own) return weight_set_row(choose.weights).weights;
  return {choose.weight_area, choose.weight_pixels, choose.weight_fidelity, choose.weight_speed,
          choose.weight_data};
}

}  // namespace widegate
