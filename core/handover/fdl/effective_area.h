// The part of a sensor mode that a lens lights, as the rectangle a framing decision list can state.
#pragma once

#include <optional>

#include "core/handover/fdl/boxes.h"

namespace widegate::fdl {

/// Sizes in millimetres on the sensor, all centred on the optical axis.
struct CircleOnMode {
  double width_mm = 0;  ///< Of the sensor mode.
  double height_mm = 0;
  double circle_mm = 0;  ///< Image circle, diameter.
  /// The smallest rectangle about the axis that holds every protected area of the plan.
  double needed_width_mm = 0;
  double needed_height_mm = 0;
};

/// The largest rectangle about the axis that lies in the mode and in the circle and holds what is
/// needed, as shares of the mode's width and height (0 to 1); nothing when the circle does not even
/// hold what is needed.
///
/// Inside a circle of diameter D the rectangle w by sqrt(D^2 - w^2) has its largest area at
/// w = D / sqrt(2) and falls off to both sides, so that width is taken as far as the mode and the
/// need allow. Source: elementary geometry.
[[nodiscard]] std::optional<Size> effective_share(const CircleOnMode& given);

/// Whole pixels for one side: the share of `canvas` rounded down, but never below `needed` pixels
/// (rounded up) nor above the canvas.
[[nodiscard]] std::int64_t effective_side(double share, std::int64_t canvas, double needed);

}  // namespace widegate::fdl
