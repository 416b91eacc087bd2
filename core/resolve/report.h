// What the Resolve question answers, as plain data; filled by resolve.h.
#pragma once

#include <cstdint>

namespace widegate {

/// A requirement with what there is.
struct MandateFigures {
  std::int64_t required = 0;
  double have = 0;
  double mode_have = 0;
  bool met = true;
  bool mode_meets = true;
};

/// Photosites, resampling, sampling.
struct ResolveReport {
  std::int64_t recorded_width_pixels = 0;
  std::int64_t recorded_height_pixels = 0;
  double in_camera_desqueeze = 1;
  double recorded_squeeze = 1;     ///< Left in the file; 1 after in-camera de-squeeze.
  double horizontal_resample = 1;  ///< Recorded pixels per photosite.
  double vertical_resample = 1;
  double frame_photosites = 0;
  std::int64_t mode_photosites = 0;
  std::int64_t deliverable_width_pixels = 0;
  std::int64_t deliverable_height_pixels = 0;
  double picture_width_pixels = 0;  ///< The main frame fitted into the deliverable raster.
  double picture_height_pixels = 0;
  double horizontal_scale = 0;  ///< De-squeezed recording to deliverable; above 1 is upscaling.
  double vertical_scale = 0;
  double nominal_scale = 0;             ///< The largest of all frame lines; see FrameReport.
  double horizontal_sampled_scale = 0;  ///< Photosites really read to deliverable, per axis.
  double vertical_sampled_scale = 0;
  MandateFigures mandate;
  MandateFigures mandate_across;
  double nyquist_cycles_per_mm = 0;       ///< Of the photosites, 1 / (2 pitch).
  double diffraction_limit_f_number = 0;  ///< Where the diffraction cut-off falls to Nyquist.
};

}  // namespace widegate
