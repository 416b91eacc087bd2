#include "tests/core/support/draws.h"

#include <algorithm>
#include <array>

#include "core/plan/plan_fields.h"

namespace widegate::testing {
namespace {

constexpr std::int64_t kLargestSide = 65535;

/// Largest primes below 100 and 1000: fractions with them reduce with nothing.
constexpr auto kAwkward = std::to_array<std::int64_t>({1, 7, 89, 97, 991, 997, 9973});

std::int64_t draw_denominator(Dice& dice, std::int64_t most) {
  if (dice.one_in(2)) return dice.whole(1, most);
  return std::min(dice.pick(kAwkward), most);
}

std::int64_t draw_side(Dice& dice) {
  if (dice.one_in(4)) return dice.pick(std::to_array<std::int64_t>({16, 17, 65521, kLargestSide}));
  return dice.whole(16, dice.one_in(2) ? 9000 : kLargestSide);
}

}  // namespace

Rational draw_fraction(Dice& dice, const FieldSpec& spec) {
  while (true) {
    const std::int64_t den = draw_denominator(dice, spec.max_den);
    const std::int64_t least = (spec.low * Rational(den)).ceil();
    const std::int64_t most = (spec.high * Rational(den)).floor();
    if (least > most) continue;
    const Rational value(dice.one_in(6) ? most : dice.whole(least, most), den);
    if (value_accepted(spec, value)) return value;
  }
}

Rational draw_field(Dice& dice, std::string_view pointer) {
  return draw_fraction(dice, *find_field(pointer)->info);
}

FrameLine frame_line(Rational aspect, Rational protection, Anchor anchor) {
  FrameLine line;
  line.aspect = aspect;
  line.protection = protection;
  line.anchor = anchor;
  return line;
}

LensChoice lens_at(double focal_mm, std::optional<double> image_circle_mm) {
  LensChoice lens;
  lens.focal_mm = focal_mm;
  lens.image_circle_mm = image_circle_mm;
  return lens;
}

FrameLine draw_frame_line(Dice& dice) {
  FrameLine line;
  line.aspect = draw_field(dice, "/deliverable/frame_lines/0/aspect");
  if (!dice.one_in(4)) line.protection = draw_field(dice, "/deliverable/frame_lines/0/protection");
  line.anchor.kind = static_cast<AnchorKind>(dice.whole(0, 3));
  if (line.anchor.kind == AnchorKind::free) {
    line.anchor.x = draw_field(dice, "/deliverable/frame_lines/0/anchor/x");
    line.anchor.y = draw_field(dice, "/deliverable/frame_lines/0/anchor/y");
  }
  return line;
}

Geometry draw_geometry(Dice& dice) {
  const std::int64_t width = draw_side(dice);
  Geometry geometry = plain_geometry(width, draw_side(dice));
  geometry.squeeze = draw_field(dice, "/lens/squeeze");
  geometry.width = {dice.between(0.5, 500)};
  geometry.height = {dice.between(0.5, 500)};
  if (dice.one_in(2)) {
    geometry.recorded_width_pixels = draw_side(dice);
    geometry.recorded_height_pixels = draw_side(dice);
  }
  return geometry;
}

Geometry plain_geometry(std::int64_t width, std::int64_t height, Rational squeeze) {
  constexpr double kPitchMm = 0.005;
  return {.width_photosites = width,
          .height_photosites = height,
          .width = {kPitchMm * static_cast<double>(width)},
          .height = {kPitchMm * static_cast<double>(height)},
          .squeeze = squeeze,
          .recorded_width_pixels = width,
          .recorded_height_pixels = height};
}

}  // namespace widegate::testing
