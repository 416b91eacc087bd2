// Lengths, angles and times as distinct types, so that a millimetre cannot be passed for a metre.
// Only units and their conversions live here.
#pragma once

#include <compare>
#include <numbers>

namespace widegate {

/// A number that carries its unit in its type; ratios of like quantities are plain numbers.
template <class Unit>
struct Quantity {
  double value = 0;

  friend constexpr auto operator<=>(const Quantity&, const Quantity&) = default;
  friend constexpr Quantity operator+(Quantity a, Quantity b) { return {a.value + b.value}; }
  friend constexpr Quantity operator-(Quantity a, Quantity b) { return {a.value - b.value}; }
  friend constexpr Quantity operator*(Quantity a, double k) { return {a.value * k}; }
  friend constexpr Quantity operator*(double k, Quantity a) { return {a.value * k}; }
  friend constexpr Quantity operator/(Quantity a, double k) { return {a.value / k}; }
  friend constexpr double operator/(Quantity a, Quantity b) { return a.value / b.value; }
};

using Millimetres = Quantity<struct MillimetreUnit>;
using Metres = Quantity<struct MetreUnit>;
using Degrees = Quantity<struct DegreeUnit>;
using Seconds = Quantity<struct SecondUnit>;

[[nodiscard]] constexpr Millimetres to_millimetres(Metres length) { return {length.value * 1000}; }
[[nodiscard]] constexpr Metres to_metres(Millimetres length) { return {length.value / 1000}; }
[[nodiscard]] constexpr double to_radians(Degrees angle) {
  return angle.value * std::numbers::pi / 180;
}
[[nodiscard]] constexpr Degrees from_radians(double radians) {
  return {radians * 180 / std::numbers::pi};
}

static_assert(to_millimetres(Metres{254}) / Millimetres{25.4} == 10000, "100 in are 2540 mm");

}  // namespace widegate
