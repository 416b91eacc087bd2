#include "core/optics/lens_squeeze.h"

#include <algorithm>

namespace widegate {

Rational lens_squeeze(const LensChoice& lens, const LensSet* set) {
  if (lens.squeeze) return *lens.squeeze;
  return set == nullptr ? Rational(1) : set->squeeze;
}

double focal_length_mm(const LensChoice& lens) { return lens.focal_mm * lens.extender.to_double(); }

double working_f_number(const LensChoice& lens) {
  return lens.f_number * lens.extender.to_double();
}

const Lens* listed_lens(const LensSet* set, double focal_mm) {
  if (set == nullptr) return nullptr;
  const auto found = std::find_if(set->lenses.begin(), set->lenses.end(),
                                  [=](const Lens& lens) { return lens.focal_mm == focal_mm; });
  return found == set->lenses.end() ? nullptr : &*found;
}

CircleAt circle_at(const LensSet& set, double focal_mm) {
  const Lens* below = nullptr;
  for (const Lens& lens : set.lenses) {
    if (lens.focal_mm == focal_mm) return {.diameter_mm = lens.image_circle_mm};
    if (lens.focal_mm > focal_mm) {
      const double circle = below == nullptr
                                ? lens.image_circle_mm
                                : std::min(below->image_circle_mm, lens.image_circle_mm);
      return {.diameter_mm = circle, .interpolated = true};
    }
    below = &lens;
  }
  return {.diameter_mm = below == nullptr ? 0 : below->image_circle_mm, .interpolated = true};
}

std::optional<CircleAt> image_circle(const LensChoice& lens, const LensSet* set) {
  if (!lens.image_circle_mm && set == nullptr) return std::nullopt;
  CircleAt circle = lens.image_circle_mm ? CircleAt{.diameter_mm = *lens.image_circle_mm}
                                         : circle_at(*set, lens.focal_mm);
  circle.diameter_mm *= lens.extender.to_double();
  return circle;
}

}  // namespace widegate
