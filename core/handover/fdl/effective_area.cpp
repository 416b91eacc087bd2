#include "core/handover/fdl/effective_area.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/handover/fdl/rounding.h"

namespace widegate::fdl {
namespace {

/// The other side of a rectangle whose diagonal is the circle's diameter.
double other_side(double diameter, double side) {
  return std::sqrt(std::max(0.0, diameter * diameter - side * side));
}

}  // namespace

std::optional<Size> effective_share(const CircleOnMode& given) {
  const double circle = given.circle_mm;
  const double narrowest = std::max(given.needed_width_mm, other_side(circle, given.height_mm));
  const double widest = std::min(given.width_mm, other_side(circle, given.needed_height_mm));
  // What the circle just reaches may miss by the rounding of a square root.
  if (narrowest > widest * (1 + 1e-12)) return std::nullopt;
  const double width =
      std::clamp(circle / std::numbers::sqrt2, std::min(narrowest, widest), widest);
  const double height = std::min(given.height_mm, other_side(circle, width));
  return Size{width / given.width_mm, height / given.height_mm};
}

std::int64_t effective_side(double share, std::int64_t canvas, double needed) {
  const double lit = std::floor(snapped(share * static_cast<double>(canvas)));
  const double kept = std::max(lit, std::ceil(snapped(needed)));
  return std::min(canvas, static_cast<std::int64_t>(kept));
}

}  // namespace widegate::fdl
