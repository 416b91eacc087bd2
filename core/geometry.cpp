#include "core/geometry.h"

namespace widegate {

Geometry make_geometry(const SensorMode& mode, const Recording& recording, Rational squeeze) {
  const bool keeps_raster = recording.width_pixels == 0;
  return {.width_photosites = mode.width_photosites,
          .height_photosites = mode.height_photosites,
          .width = {mode.width_mm},
          .height = {mode.height_mm},
          .squeeze = squeeze,
          .recorded_width_pixels = keeps_raster ? mode.width_photosites : recording.width_pixels,
          .recorded_height_pixels = keeps_raster ? mode.height_photosites : recording.height_pixels,
          .in_camera_desqueeze = recording.desqueeze};
}

}  // namespace widegate
