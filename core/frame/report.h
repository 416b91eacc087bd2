// What the Frame question answers, as plain data; filled by frame.h.
#pragma once

#include <cstdint>
#include <string>

#include "core/base/rational.h"

namespace widegate {

/// An exact rectangle; left and top are measured from the mode's top left corner.
struct ExactRect {
  Rational left, top, width, height;
};

/// A rectangle in recorded pixels. `even` edges are rounded inward to even pixels.
struct PixelRect {
  double left = 0, top = 0, width = 0, height = 0;
  std::int64_t even_left = 0, even_top = 0, even_width = 0, even_height = 0;
};

/// One frame line on the sensor mode and in the recorded raster.
struct FrameReport {
  std::string name;
  double aspect = 0;
  double protection = 0;
  ExactRect photosites;            ///< Frame line, exact.
  ExactRect protected_photosites;  ///< Protected area, exact.
  PixelRect pixels;
  PixelRect protected_pixels;
  double width_mm = 0;
  double height_mm = 0;
  double diagonal_mm = 0;
  /// What is left around the line, in percent: 100 (1 - w/w0) inside the protected area, 100
  /// (1 - w/W) inside the mode, and the part of the latter on each side.
  double room_protected_percent = 0;
  double room_horizontal_percent = 0;
  double room_vertical_percent = 0;
  double room_left_percent = 0, room_right_percent = 0;
  double room_top_percent = 0, room_bottom_percent = 0;
  /// The line's own deliverable raster, and how many pixels of it one pixel inside the line makes
  /// after de-squeeze: above 1 the picture is enlarged. See set_nominal_scale() in resolve.h.
  double picture_width_pixels = 0;
  double picture_height_pixels = 0;
  double nominal_horizontal_scale = 0;
  double nominal_vertical_scale = 0;
  double nominal_scale = 0;             ///< The larger of both.
  double push_in_percent = 0;           ///< 100 (1 - nominal_scale), nought when upscaled.
  double shift_horizontal_percent = 0;  ///< Room to each side over the frame's width.
  double shift_vertical_percent = 0;
  double max_rotation_deg = 0;  ///< Largest roll that keeps the frame line inside the mode.
  /// Share of the room beside the protected area that lies to its left, above it (0 to 1).
  double left_share = 0.5;
  double top_share = 0.5;
  /// From the middle of the frame line to the nearest side of the mode, on the sensor.
  double room_horizontal_mm = 0;
  double room_vertical_mm = 0;
  bool anchor_limited = false;  ///< Common top could not be reached without leaving the mode.
};

}  // namespace widegate
