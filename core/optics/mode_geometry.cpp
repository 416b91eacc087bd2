#include "core/optics/mode_geometry.h"

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

double raster_stretch(const Geometry& geometry) {
  const double recorded = static_cast<double>(geometry.recorded_width_pixels) /
                          static_cast<double>(geometry.recorded_height_pixels);
  const double read = static_cast<double>(geometry.width_photosites) /
                      static_cast<double>(geometry.height_photosites);
  return recorded / (read * geometry.in_camera_desqueeze.to_double());
}

RectMm mode_rect(const Geometry& geometry) {
  const double half_width = geometry.width.value / 2;
  const double half_height = geometry.height.value / 2;
  return {.left = -half_width, .top = -half_height, .right = half_width, .bottom = half_height};
}

}  // namespace widegate
