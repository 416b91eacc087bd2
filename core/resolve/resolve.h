// Resolve: photosites behind the frame line, the commissioner's pixel requirement, what resampling
// and de-squeeze really sample, and where diffraction takes over.
#pragma once

#include <vector>

#include "core/frame/report.h"
#include "core/optics/mode_geometry.h"
#include "core/plan/plan.h"
#include "core/resolve/report.h"

namespace widegate {

/// A picture's size in the deliverable, exact and not rounded to whole pixels.
struct LineRaster {
  Rational width_pixels = 0;
  Rational height_pixels = 0;
};

/// The frame line's own deliverable raster: its aspect fitted into the deliverable's raster.
[[nodiscard]] LineRaster line_raster(const Deliverable& deliverable, const FrameLine& line);

/// Fills a frame's picture_*, nominal_*scale and push_in_percent for one recorded raster.
///
///   nominal scale = wanted / (recorded pixels inside the line * squeeze left, across the width)
///
/// on each axis; the larger one says how much post has to enlarge. Pixels are counted after
/// de-squeeze, whatever was really sampled. Push-in = 100 (1 - that), nought when it is above 1:
/// how far post can enlarge inside the line before anything is upscaled.
/// @param frame  frame_report() of this line and geometry.
void set_nominal_scale(FrameReport& frame, const LineRaster& raster, const Geometry& geometry);

/// Both ways in which a commissioner may count photosites on the main frame line.
struct PixelMandates {
  MandateFigures photosites;
  MandateFigures across;
};

/// What is required against what the frame line holds; met or not is decided on exact fractions.
[[nodiscard]] PixelMandates pixel_mandates(const Mandate& mandate, const Geometry& geometry,
                                           const FrameReport& frame);

/// Everything of the Resolve question: of the main frame line, but for the largest nominal scale.
/// @param frames  of all frame lines, the main one first, with their nominal scales set.
///
/// Scales compare the deliverable picture (the frame line's aspect fitted into the deliverable
/// raster) with the frame in the recorded raster after de-squeeze; the sampled scales compare it
/// with the fewer of photosites and recorded pixels, which is what was really sampled. Diffraction:
/// an ideal lens passes nothing beyond 1/(wavelength N) cycles per mm; the limit is the N at which
/// that falls to the photosites' Nyquist frequency, N = 2 pitch / wavelength, for 550 nm.
///
/// @source counting; Nyquist 1/(2 pitch); diffraction cut-off of incoherent imaging (textbook
///         optics), wavelength 550 nm common practice, no source.
[[nodiscard]] ResolveReport resolve_report(const Plan& plan, const Geometry& geometry,
                                           const std::vector<FrameReport>& frames);

}  // namespace widegate
