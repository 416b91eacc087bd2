// 128-bit counts: rounding, and that an overflow is remembered.
#include "core/base/wide.h"

#include <doctest/doctest.h>

#include <random>

namespace widegate {
namespace {

static_assert(Wide(7).count() == 7);
static_assert(ceil_div(7, 2).count() == 4 && floor_div(7, 2).count() == 3);
static_assert(ceil_div(8, 2).count() == 4 && ceil_div(0, 3).count() == 0);
static_assert(!floor_div(1, 0).ok() && !ceil_div(1, 0).ok());
static_assert(!Wide(-1).ok());

TEST_CASE("Products pass 64 bits on the way to a count that does not") {
  const Wide product = Wide(INT64_MAX) * INT64_MAX;
  CHECK(product.ok());
  CHECK_FALSE(product.count());
  CHECK(floor_div(product, Wide(INT64_MAX) * 4096).count() == INT64_MAX / 4096);
  CHECK(ceil_div(product, Wide(INT64_MAX) * 4096).count() == INT64_MAX / 4096 + 1);
}

TEST_CASE("An overflow stays: nothing done to it makes it a number again") {
  const Wide product = Wide(INT64_MAX) * INT64_MAX * 4;
  CHECK_FALSE(product.ok());
  CHECK_FALSE((product + 1).ok());
  CHECK_FALSE(floor_div(1, product).ok());
  CHECK_FALSE(ceil_div(product, 1).count());
  CHECK(product.to_double() == 0);
}

TEST_CASE("Numbers end below 2^126, in sums and in products") {
  const Wide half = Wide(std::int64_t{1} << 62) * (std::int64_t{1} << 62) * 2;
  CHECK(half.ok());
  CHECK_FALSE((half + half).ok());
  CHECK_FALSE((half * 2).ok());
  CHECK_FALSE((Wide(2) * half).ok());
  const Wide largest = Wide(INT64_MAX) * INT64_MAX + INT64_MAX + INT64_MAX;
  CHECK(largest.ok());
  CHECK_FALSE((largest + 1).ok());
  CHECK_FALSE((half * half).ok());
  CHECK((half * 0).count() == 0);
}

// 2 to this power, 0 to 123.
Wide power_of_two(int exponent) {
  if (exponent < 62) return std::int64_t{1} << exponent;
  return Wide(std::int64_t{1} << 61) * (std::int64_t{1} << (exponent - 61));
}

TEST_CASE("Products agree with division, whichever half the digits are in") {
  for (int a = 0; a <= 123; ++a) {
    for (int b = 0; b <= 123 && a + b <= 125; ++b) {
      const Wide left = power_of_two(a) + 1;
      const Wide product = left * power_of_two(b);
      REQUIRE(product.ok());
      REQUIRE(floor_div(product, left).to_double() == power_of_two(b).to_double());
      REQUIRE(ceil_div(product, power_of_two(b)).to_double() == left.to_double());
    }
  }
}

TEST_CASE("Quotients are exact where doubles are not") {
  std::mt19937_64 random(1);
  const auto count = [&](int bits) {
    return static_cast<std::int64_t>(random() >> (64 - bits)) | 1;
  };
  for (int round = 0; round < 20'000; ++round) {
    const Wide divisor = Wide(count(1 + round % 63)) * count(1 + round % 10);
    const std::int64_t quotient = count(1 + round % 53);
    const Wide product = divisor * quotient;
    if (!(product + divisor).ok()) continue;
    CAPTURE(round);
    CHECK(floor_div(product, divisor).count() == quotient);
    CHECK(ceil_div(product, divisor).count() == quotient);
    if (quotient == kLargestExact) continue;
    CHECK(ceil_div(product + 1, divisor).count() == quotient + 1);
    if (divisor.count() != 1) CHECK(floor_div(product + 1, divisor).count() == quotient);
  }
}

TEST_CASE("The largest exact count is the last whole number before doubles skip one") {
  CHECK(Wide(kLargestExact).count() == kLargestExact);
  CHECK_FALSE((Wide(kLargestExact) + 1).count());
  CHECK(Wide(kLargestExact).to_double() + 1 == 9007199254740992.0);
}

}  // namespace
}  // namespace widegate
