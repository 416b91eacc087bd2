// Frame: where a frame line sits on the sensor mode and in the recorded raster, and the room around
// it. Whether a lens covers it is cover.h's.
#pragma once

#include <string>

#include "core/frame/report.h"
#include "core/optics/mode_geometry.h"
#include "core/plan/plan.h"

namespace widegate {

/// Places one frame line.
///
/// On the sensor it has aspect A/s. The protected area is the largest such rectangle in the mode,
/// w0 = min(W, H A/s), h0 = w0 s/A; the frame line is (1 - q) of it, centred in it (the meaning of
/// protection in ASC FDL 2.0). All of this is exact, with one exception: a common top whose terms
/// would pass 64 bits (three awkward fractions at once) is level to 1/4096 photosite.
///
/// @param line      checked frame line (plan_check.h).
/// @param geometry  the format; photosites 1 to 65535, squeeze 1 to 4.
/// @param main      the main frame line for common_top anchors; nullptr for the main one itself,
///                  which then sits at the top of the mode.
/// @return every field of FrameReport but those of set_nominal_scale() in resolve.h;
/// `pixels.even_*` are rounded inward to even pixels, 0 wide
///         when nothing is left.
/// @source ASC FDL 2.0 (protection), geometry for the rest; docs/formulas.md, "Frame".
[[nodiscard]] FrameReport frame_report(const FrameLine& line, const Geometry& geometry,
                                       const FrameReport* main);

/// Largest roll in degrees (0 to 90) through which the rectangle can turn about its own middle and
/// stay inside the mode, in de-squeezed space, where a roll is a rotation.
///
///   a corner (a, b) swings out to a cos t + b sin t and meets the side at distance a + g when
///   tan(t/2) = g / (b + sqrt(b^2 - g (2a + g))); it never does when g (2a + g) >= b^2.
///
/// @param half_width, half_height  of the rectangle, de-squeezed, positive.
/// @param gap_x, gap_y             from its side to the nearest side of the mode (g), same unit,
///                                 not negative. Exactly 0 when either is.
/// @source the half-angle form of a cos t + b sin t = a + g, which loses no digits to small gaps.
[[nodiscard]] Degrees largest_rotation(double half_width, double half_height, double gap_x,
                                       double gap_y);

/// A rectangle of photosites in millimetres from the middle of the mode.
[[nodiscard]] RectMm to_mm(const ExactRect& rect, const Geometry& geometry);

}  // namespace widegate
