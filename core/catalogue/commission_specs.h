// What each requirement of a commission accepts and how it is called, for the tables of catalogue
// rows and of plans, whose pointers differ.
#pragma once

#include <span>

#include "core/field/field.h"

namespace widegate::commission_specs {

inline constexpr ChoiceName kCountedOn[] = {{"mode", "On the sensor mode"},
                                            {"frame", "Inside the frame line"}};
inline constexpr ChoiceName kWishes[] = {
    {"either", "Either"}, {"wanted", "Wanted"}, {"refused", "Refused"}};
inline constexpr ChoiceName kChromas[] = {
    {"4:2:0", "4:2:0"}, {"4:2:2", "4:2:2"}, {"4:4:4", "4:4:4"}, {"raw", "Raw of the sensor"}};

constexpr FieldSpec number(std::string_view pointer, std::string_view label, std::string_view unit,
                           Rational low, Rational high, Rational step, Rational usual_high) {
  return {.pointer = pointer,
          .label = label,
          .unit = unit,
          .low = low,
          .high = high,
          .step = step,
          .usual_low = low,
          .usual_high = usual_high};
}
constexpr FieldSpec fraction(FieldSpec spec, std::int64_t max_num, std::int64_t max_den) {
  spec.max_num = max_num;
  spec.max_den = max_den;
  return spec;
}
constexpr FieldSpec choice(std::string_view pointer, std::string_view label,
                           std::span<const ChoiceName> choices) {
  return {.pointer = pointer, .label = label, .choices = choices};
}

inline constexpr std::int64_t kMostPhotosites = std::int64_t{65535} * 65535;

constexpr FieldSpec photosites(std::string_view pointer) {
  return number(pointer, "Photosites, at least", "", 0, kMostPhotosites, 1, 36'000'000);
}
constexpr FieldSpec counted_on(std::string_view pointer) {
  return choice(pointer, "Photosites counted", kCountedOn);
}
constexpr FieldSpec recorded_width(std::string_view pointer) {
  return number(pointer, "Recorded width, at least", "px", 0, 65535, 1, 8192);
}
constexpr FieldSpec recorded_height(std::string_view pointer) {
  return number(pointer, "Recorded height, at least", "px", 0, 65535, 1, 8192);
}
constexpr FieldSpec largest_upscaling(std::string_view pointer) {
  return fraction(number(pointer, "Upscaling, at most", "x", 1, 100, Rational(1, 100), 2), 100'000,
                  1000);
}
constexpr FieldSpec bit_depth(std::string_view pointer) {
  return number(pointer, "Bit depth, at least", "bit", 0, 32, 1, 16);
}
constexpr FieldSpec chroma(std::string_view pointer) {
  return choice(pointer, "Chroma, at least", kChromas);
}
constexpr FieldSpec sensor_raw(std::string_view pointer) {
  return choice(pointer, "Raw of the sensor", kWishes);
}
constexpr FieldSpec compression(std::string_view pointer) {
  return fraction(number(pointer, "Compression ratio, at most", "", 1, 1000, 1, 20), 100'000, 1000);
}
constexpr FieldSpec flag(std::string_view pointer, std::string_view label) {
  return {.pointer = pointer, .label = label};
}
constexpr FieldSpec lossless(std::string_view pointer) { return flag(pointer, "Lossless only"); }
constexpr FieldSpec intra(std::string_view pointer) {
  return flag(pointer, "Every frame coded by itself");
}
constexpr FieldSpec plays_at_once(std::string_view pointer) {
  return flag(pointer, "Plays at once in the edit");
}
constexpr FieldSpec in_camera_desqueeze(std::string_view pointer) {
  return choice(pointer, "De-squeezed in camera", kWishes);
}
constexpr FieldSpec protection(std::string_view pointer) {
  FieldSpec spec = fraction(number(pointer, "Protection, at least", "", 0, Rational(1, 2),
                                   Rational(1, 100), Rational(1, 4)),
                            500, 1000);
  spec.high_excluded = true;
  return spec;
}

}  // namespace widegate::commission_specs
