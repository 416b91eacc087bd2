// What the questions share about the chosen format: the sensor mode as the lens meets it and the
// raster it is recorded in. Resolved once per evaluation; no formula of a question lives here.
#pragma once

#include <cmath>
#include <cstdint>

#include "core/base/rational.h"
#include "core/base/units.h"
#include "core/catalogue/catalogue.h"

namespace widegate {

/// Sensor mode, squeeze of the lens and recorded raster.
struct Geometry {
  std::int64_t width_photosites = 1;
  std::int64_t height_photosites = 1;
  Millimetres width;
  Millimetres height;
  Rational squeeze = 1;  ///< Of the lens.
  std::int64_t recorded_width_pixels = 1;
  std::int64_t recorded_height_pixels = 1;
  Rational in_camera_desqueeze = 1;

  [[nodiscard]] double mm_per_photosite_x() const {
    return width.value / static_cast<double>(width_photosites);
  }
  [[nodiscard]] double mm_per_photosite_y() const {
    return height.value / static_cast<double>(height_photosites);
  }
};

/// Puts a mode, one of its recording options and the lens's squeeze together. A recording raster of
/// 0 x 0 keeps the mode's raster.
[[nodiscard]] Geometry make_geometry(const SensorMode& mode, const Recording& recording,
                                     Rational squeeze);

/// How much wider the file's picture is than the mode's once the in-camera de-squeeze is taken out:
/// 1 when the recorded raster has the shape of the mode.
[[nodiscard]] double raster_stretch(const Geometry& geometry);

/// Length of the diagonal. Not std::hypot: C libraries differ in its last bit, sqrt is exact to the
/// last bit everywhere, and these lengths cannot overflow.
[[nodiscard]] inline double diagonal_of(double width, double height) {
  return std::sqrt(width * width + height * height);
}

/// A rectangle in millimetres on the sensor, measured from the middle of the mode (the optical
/// axis): x to the right, y downwards.
struct RectMm {
  double left = 0, top = 0, right = 0, bottom = 0;

  [[nodiscard]] double width() const { return right - left; }
  [[nodiscard]] double height() const { return bottom - top; }
};

/// The whole sensor mode.
[[nodiscard]] RectMm mode_rect(const Geometry& geometry);

}  // namespace widegate
