// The figures of film as a medium; nothing of it for a digital camera.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "core/base/rational.h"

namespace widegate {

/// How long a length of film runs.
struct FilmMagazine {
  std::int64_t feet = 0;
  double minutes = 0;
};

/// Film: stock, magazines, money, and the picture that a scan holds. From feet_per_minute on
/// nothing holds where the frames of a foot are not known.
struct FilmReport {
  std::optional<double> gauge_mm;
  std::optional<std::int64_t> perforations;  ///< Of a frame.
  double scan_pixels_per_mm = 0;             ///< No more than these are counted as picture.
  double frame_picture_pixels = 0;           ///< Inside the main frame line.
  double mode_picture_pixels = 0;
  std::optional<Rational> frames_per_foot;
  double feet_per_minute = 0;
  double metres_per_minute = 0;
  std::int64_t magazine_feet = 0;
  double magazine_minutes = 0;          ///< Running time of one.
  std::vector<FilmMagazine> magazines;  ///< Of the lengths that stock is sold in.
  double feet_per_day = 0;              ///< Each camera.
  std::int64_t magazines_per_day = 0;   ///< Each camera.
  double feet = 0;                      ///< The whole shoot.
  double metres = 0;
  double stock_cost = 0, processing_cost = 0, scanning_cost = 0;
  double cost = 0;
};

}  // namespace widegate
