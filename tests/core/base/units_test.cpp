// Lengths, angles and times as distinct types.
#include "core/base/units.h"

#include <doctest/doctest.h>

#include <array>
#include <concepts>
#include <string_view>

#include "tests/core/support/tables.h"

namespace widegate {
namespace {

template <class A, class B>
concept Addable = requires(A a, B b) {
  a + b;
};
template <class A, class B>
concept Comparable = requires(A a, B b) {
  a < b;
};

// Each refusal has a twin that holds, so that a slip of the pen cannot pass for it.
static_assert(Addable<Millimetres, Millimetres> && !Addable<Millimetres, Metres>);
static_assert(Comparable<Metres, Metres> && !Comparable<Metres, Millimetres>);
static_assert(!Addable<Degrees, Seconds> && !Addable<Millimetres, double>);
static_assert(!std::convertible_to<double, Millimetres> && !std::convertible_to<Metres, double>);
static_assert(std::same_as<decltype(Metres{1} / Metres{2}), double>, "a ratio is a plain number");

TEST_CASE("Inches of published film apertures are 25.4 mm") {
  constexpr Millimetres kInch{25.4};
  for (const testing::ApertureRow& row : testing::kApertures) {
    if (row.width_in == 0) continue;  // published in millimetres
    CAPTURE(row.name);
    CHECK((row.width_in * kInch).value == doctest::Approx(row.width_mm).epsilon(1e-9));
    CHECK((row.height_in * kInch).value == doctest::Approx(row.height_mm).epsilon(1e-9));
  }
}

TEST_CASE("Metres and millimetres, degrees and radians go both ways") {
  CHECK(to_millimetres(Metres{2.54}).value == doctest::Approx(2540).epsilon(1e-15));
  CHECK(to_metres(Millimetres{35}).value == 0.035);
  CHECK(from_radians(to_radians(Degrees{172.8})).value == doctest::Approx(172.8).epsilon(1e-15));
  CHECK(to_radians(Degrees{180}) == std::numbers::pi);
  CHECK((Metres{3} - Metres{1} * 2.0 + 0.5 * Metres{4}) / Metres{1.5} == 2);
}

}  // namespace
}  // namespace widegate
