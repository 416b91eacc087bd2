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

/// Focal length and f-number as they work: the marks on the lens times the extender's factor.
[[nodiscard]] double focal_length_mm(const LensChoice& lens);
[[nodiscard]] double working_f_number(const LensChoice& lens);

/// The lens of the set with exactly this mark; nullptr when there is none.
[[nodiscard]] const Lens* listed_lens(const LensSet* set, double focal_mm);

/// An image circle at a focal length.
struct CircleAt {
  double diameter_mm = 0;
  bool interpolated = false;  ///< Not a listed focal length: the smaller neighbouring circle.
};

/// The circle a lens set has at a marked focal length, without an extender.
[[nodiscard]] CircleAt circle_at(const LensSet& set, double focal_mm);

/// The plan's own circle, otherwise the set's at this focal length, times the extender's factor;
/// nothing when neither is known.
[[nodiscard]] std::optional<CircleAt> image_circle(const LensChoice& lens, const LensSet* set);

}  // namespace widegate
