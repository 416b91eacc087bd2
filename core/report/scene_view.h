// The scene as a sensor mode sees it: everything that drawing it needs, from a Report. Lengths on
// the sensor are told as shares of half the mode, so one point is the same for every raster.
#pragma once

#include "core/report/report.h"

namespace widegate {

/// A raster laid over the whole sensor mode. Counts may be fractions: the deliverable's pixels
/// belong to the frame line, the mode around it holds more of them.
struct SampleGrid {
  double columns = 0;  ///< Samples across the width of the mode, above 0.
  double rows = 0;     ///< Samples down its height, above 0.
  double left = 0;     ///< Where the first whole sample begins, in samples; 0 to below 1.
  double top = 0;
};

/// What the lens draws on the sensor mode.
struct SceneView {
  double half_width_m = 0;  ///< From the middle of the mode to its edge, in the scene at the focus.
  double half_height_m = 0;
  double half_tangent_x = 0;  ///< Tangent of half the field of view; for what is far away.
  double half_tangent_y = 0;
  double circle_x = 0;  ///< Radius of the image circle over half the mode's width; 0: not known.
  double circle_y = 0;
  SampleGrid photosites;
  SampleGrid recorded;   ///< Pixels of the file; never finer than the photosites it comes from.
  SampleGrid delivered;  ///< Pixels of the deliverable; never finer than the recording.
};

/// The view of a valid report; all zero for a report with problems.
/// @source the Report's own figures (see.h, cover.h, resolve.h); a raster that is larger than the
///         one before it holds no more detail, so the coarser of the two is given.
[[nodiscard]] SceneView scene_view(const Report& report);

}  // namespace widegate
