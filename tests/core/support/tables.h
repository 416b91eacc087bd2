// Published tables that several tests read.
#pragma once

#include <array>
#include <cstdint>
#include <string_view>

#include "core/base/rational.h"

namespace widegate::testing {

struct RasterRow {
  std::string_view name;
  std::int64_t width, height, photosites;
  Rational aspect;
  double diagonal_px;
  std::string_view standard;
};
inline constexpr auto kRasters = std::to_array<RasterRow>({
#include "tests/data/rasters.inc"
});

struct ApertureRow {
  std::string_view name;
  double width_in, height_in, width_mm, height_mm, ratio, diagonal_mm, area_mm2, ratio_after_2x;
};
inline constexpr auto kApertures = std::to_array<ApertureRow>({
#include "tests/data/film_apertures.inc"
});

}  // namespace widegate::testing
