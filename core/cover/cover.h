// Cover: the lens's image circle against the mode, the protected area and the frame line.
// Rectangles come from frame.h, the circle from lens_squeeze.h.
#pragma once

#include "core/catalogue/catalogue.h"
#include "core/cover/report.h"
#include "core/frame/report.h"
#include "core/optics/mode_geometry.h"
#include "core/plan/plan.h"

namespace widegate {

/// Area of a rectangle inside a circle about the origin, by the exact integral.
/// @param rect    any place; right > left and bottom > top.
/// @param radius  mm, not negative.
/// @return mm^2, from 0 to the smaller of the two areas, in steps of 2^-40 of the rectangle's: sums
///         of arcs cancel, and what is left below that differs between C libraries.
/// @source elementary integration; checked against Shapely polygons in the tests.
[[nodiscard]] double overlap_mm2(const RectMm& rect, double radius_mm);

/// Circle of this diameter, centred on the optical axis, against a rectangle.
/// Covered when the circle reaches the rectangle's farthest corner; the margin is measured there.
/// A margin below one part in 10^12 of the diagonal is rounding of the corner's distance: it is 0,
/// and covered.
[[nodiscard]] CoverFigures cover_figures(const RectMm& rect, Millimetres circle_diameter);

/// Everything of the Cover question for the main frame line.
/// @param set  the plan's lens set, or nullptr when the lens is not in the library.
[[nodiscard]] CoverReport cover_report(const LensChoice& lens, const LensSet* set,
                                       const Geometry& geometry, const FrameReport& frame);

}  // namespace widegate
