// Exact fractions: identities, the edges of 64 bits, and published frame rates.
#include "core/base/rational.h"

#include <doctest/doctest.h>

#include <array>

#include "tests/core/support/draws.h"

namespace widegate {
namespace {

static_assert(Rational(24000, 1001) * Rational(1001) == Rational(24000));
static_assert(Rational(6, -4) == Rational(-3, 2), "sign goes up, terms are reduced");
static_assert(Rational(0, 7) == Rational(0) && Rational(0, -7).den() == 1);
static_assert(!Rational(1, 0).ok() && !(Rational(1) / Rational(0)).ok());
static_assert(Rational(7, 2).floor() == 3 && Rational(-7, 2).floor() == -4);
static_assert(Rational(7, 2).ceil() == 4 && Rational(-7, 2).ceil() == -3);
static_assert(Rational(4).floor() == 4 && Rational(4).ceil() == 4 && Rational(-4).floor() == -4);
static_assert(Rational(INT64_MAX).ok() && Rational(-INT64_MAX).ok());
static_assert(!Rational(INT64_MIN).ok(), "has no positive twin");
static_assert(!Rational(INT64_MIN, -1).ok());
static_assert(Rational(INT64_MIN, 2) == Rational(-(std::int64_t{1} << 62)));

struct FrameRateRow {
  Rational rate;
  double decimal;
  Rational period_s;
  Rational frames_per_hour;
  Rational frames_per_day;
};
constexpr auto kFrameRates = std::to_array<FrameRateRow>({
#include "tests/data/frame_rates.inc"
});

TEST_CASE("Frame rates are exact fractions") {
  for (const FrameRateRow& row : kFrameRates) {
    CAPTURE(row.decimal);
    CHECK(row.rate.to_double() == doctest::Approx(row.decimal).epsilon(1e-13));
    CHECK(Rational(1) / row.rate == row.period_s);
    CHECK(row.rate * Rational(3600) == row.frames_per_hour);
    CHECK(row.rate * Rational(86400) == row.frames_per_day);
  }
}

TEST_CASE("What does not fit 64 bits is invalid and stays so") {
  const Rational big(INT64_MAX);
  for (const Rational broken :
       {big + big, big * big, Rational(1, INT64_MAX) * Rational(1, INT64_MAX),
        Rational(-INT64_MAX) - big, big / Rational(1, INT64_MAX), Rational(5, 0)}) {
    CHECK_FALSE(broken.ok());
    CHECK_FALSE((broken + Rational(1)).ok());
    CHECK_FALSE((Rational(1) - broken).ok());
    CHECK_FALSE((broken * Rational(0)).ok());
    CHECK_FALSE((Rational(1) / broken).ok());
    CHECK_FALSE((broken / broken).ok());
    CHECK_FALSE(broken == broken);
    CHECK_FALSE(broken < Rational(1));
    CHECK_FALSE(broken > Rational(1));
    CHECK(broken.floor() == 0);
    CHECK(broken.ceil() == 0);
    CHECK(broken.to_double() != broken.to_double());
  }
}

TEST_CASE("Results that fit are found even when the way there does not") {
  const Rational big(INT64_MAX);
  CHECK(big * Rational(2) / Rational(2) != big);  // the middle step is lost
  CHECK(big * Rational(2, 2) == big);
  CHECK(big * Rational(1, INT64_MAX) == Rational(1));
  CHECK(Rational(INT64_MAX, 3) / Rational(INT64_MAX, 7) == Rational(7, 3));
  CHECK(big - big == Rational(0));
  CHECK(Rational(1, INT64_MAX) + Rational(-1, INT64_MAX) == Rational(0));
}

TEST_CASE("Fractions obey the laws of arithmetic and order") {
  const std::uint64_t seed = 20261101;
  CAPTURE(seed);
  testing::Dice dice(seed);
  const auto draw = [&] { return Rational(dice.whole(-5000, 5000), dice.whole(1, 5000)); };
  for (int i = 0; i < 20000; ++i) {
    const Rational a = draw();
    const Rational b = draw();
    const Rational c = draw();
    REQUIRE(a + b == b + a);
    REQUIRE((a + b) + c == a + (b + c));
    REQUIRE(a * (b + c) == a * b + a * c);
    REQUIRE(a - b + b == a);
    if (b != Rational(0)) REQUIRE(a / b * b == a);
    REQUIRE((a < b) == (a.to_double() < b.to_double()));
    REQUIRE((a == b) == (a - b == Rational(0)));
    REQUIRE(Rational(a.floor()) <= a);
    REQUIRE(a < Rational(a.floor() + 1));
    REQUIRE(Rational(a.ceil()) >= a);
    REQUIRE(a > Rational(a.ceil() - 1));
  }
}

TEST_CASE("Scaling down to multiples agrees with exact arithmetic") {
  const std::uint64_t seed = 20261102;
  CAPTURE(seed);
  testing::Dice dice(seed);
  for (int i = 0; i < 20000; ++i) {
    const Rational value(dice.whole(-100000, 100000), dice.whole(1, 1000));
    const std::int64_t mul = dice.whole(1, 65535);
    const std::int64_t div = dice.whole(1, 65535);
    const std::int64_t unit = dice.whole(1, 8);
    const Rational in_units = value * Rational(mul, div) / Rational(unit);
    REQUIRE(floor_scaled(value, mul, div, unit) == in_units.floor() * unit);
    REQUIRE(ceil_scaled(value, mul, div, unit) == in_units.ceil() * unit);
  }
}

TEST_CASE("Scaling does not overflow where the product of the terms would") {
  const Rational value(std::int64_t{1} << 62, 3);
  CHECK(floor_scaled(value, 65535, 65535, 2) == ((std::int64_t{1} << 62) / 3 / 2) * 2);
}

}  // namespace
}  // namespace widegate
