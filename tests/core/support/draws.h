// Random but repeatable inputs for property tests: values a field of the plan accepts, frame lines,
// and formats. Awkward fractions and the ends of every range come up often.
#pragma once

#include <cstdint>

#include "core/field/field.h"
#include "core/optics/mode_geometry.h"
#include "core/plan/plan.h"
#include "tests/core/handover/fdl/dice.h"

namespace widegate::testing {

using fdl::Dice;

/// A fraction inside the limits of the spec, often with the largest terms it allows.
[[nodiscard]] Rational draw_fraction(Dice& dice, const FieldSpec& spec);

/// The fraction field of the plan with this pointer.
[[nodiscard]] Rational draw_field(Dice& dice, std::string_view pointer);

[[nodiscard]] FrameLine frame_line(Rational aspect, Rational protection = 0, Anchor anchor = {});

/// A lens outside the library, or one of a set; its circle overrides the set's.
[[nodiscard]] LensChoice lens_at(double focal_mm, std::optional<double> image_circle_mm = {});

/// A frame line with any aspect, protection and anchor that a plan may hold.
[[nodiscard]] FrameLine draw_frame_line(Dice& dice);

/// A format as large or small as the library allows, of any squeeze, resampled or not.
[[nodiscard]] Geometry draw_geometry(Dice& dice);

/// Geometry of square photosites 5 micrometres apart, recorded as read.
[[nodiscard]] Geometry plain_geometry(std::int64_t width, std::int64_t height,
                                      Rational squeeze = 1);

}  // namespace widegate::testing
