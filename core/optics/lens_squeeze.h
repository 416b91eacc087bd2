// What a plan's choice of lens comes to: its squeeze and its image circle, from the plan itself or
// from the lens set. Whether the circle covers anything is cover.h's.
#pragma once

#include <optional>

#include "core/base/rational.h"
#include "core/catalogue/catalogue.h"
#include "core/plan/plan.h"

namespace widegate {

/// The plan's own squeeze, otherwise the set's, otherwise (a lens outside the library) 1.
/// @param set  the plan's lens set, or nullptr.
[[nodiscard]] Rational lens_squeeze(const LensChoice& lens, const LensSet* set);

/// An image circle at a focal length.
struct CircleAt {
  double diameter_mm = 0;
  bool interpolated = false;  ///< Not a listed focal length: the smaller neighbouring circle.
};

/// The circle a lens set has at a focal length.
[[nodiscard]] CircleAt circle_at(const LensSet& set, double focal_mm);

/// The plan's own circle, otherwise the set's at this focal length; nothing when neither is known.
[[nodiscard]] std::optional<CircleAt> image_circle(const LensChoice& lens, const LensSet* set);

}  // namespace widegate
