// Resolve: photosites behind the frame line, the commissioner's pixel requirement, what resampling
// and de-squeeze really sample, and where diffraction takes over.
#pragma once

#include "core/frame/report.h"
#include "core/optics/mode_geometry.h"
#include "core/plan/plan.h"
#include "core/resolve/report.h"

namespace widegate {

/// Both ways in which a commissioner may count photosites on the main frame line.
struct PixelMandates {
  MandateFigures photosites;
  MandateFigures across;
};

/// What is required against what the frame line holds; met or not is decided on exact fractions.
[[nodiscard]] PixelMandates pixel_mandates(const Mandate& mandate, const Geometry& geometry,
                                           const FrameReport& frame);

/// Everything of the Resolve question for the main frame line.
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
                                           const FrameReport& frame);

}  // namespace widegate
