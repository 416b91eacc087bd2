// Numbers to text and back.
#include "core/base/number_text.h"

#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <limits>

#include "tests/core/support/draws.h"

namespace widegate {
namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();
const double kNan = std::nan("");

TEST_CASE("Numbers print with at most 12 significant digits") {
  struct Row {
    double value;
    std::string_view text;
  };
  for (const Row& row : std::to_array<Row>({{0, "0"},
                                            {-0.0, "0"},
                                            {1, "1"},
                                            {-2.5, "-2.5"},
                                            {24000.0 / 1001, "23.976023976"},
                                            {1e-7, "1e-07"},
                                            {123456789012345, "1.23456789012e+14"},
                                            {0.1 + 0.2, "0.3"},
                                            {kNan, "null"},
                                            {kInfinity, "null"},
                                            {-kInfinity, "null"}})) {
    CAPTURE(row.text);
    CHECK(print_number(row.value) == row.text);
  }
}

TEST_CASE("Rounding to 12 digits hides the last bits and nothing else") {
  CHECK(round_12(0.1 + 0.2) == 0.3);
  CHECK(round_12(-0.0) == 0);
  CHECK_FALSE(std::signbit(round_12(-0.0)));
  CHECK(round_12(123456789012) == 123456789012);
  CHECK(round_12(kInfinity) == kInfinity);
  CHECK(std::isnan(round_12(kNan)));
  CHECK(std::isfinite(round_12(std::numeric_limits<double>::max())));
  CHECK(round_12(5e-324) == 5e-324);
}

TEST_CASE("Fixed decimals") {
  struct Row {
    double value;
    int decimals;
    std::string_view text;
  };
  for (const Row& row : std::to_array<Row>({{2.345, 1, "2.3"},
                                            {0.05, 0, "0"},
                                            {-0.001, 2, "0.00"},
                                            {-0.006, 2, "-0.01"},
                                            {12, 3, "12.000"},
                                            {1.5, -4, "2"},
                                            {0.123456789123, 20, "0.123456789"},
                                            {kInfinity, 2, "null"},
                                            {kNan, 2, "null"}})) {
    CAPTURE(row.text);
    CHECK(print_fixed(row.value, row.decimals) == row.text);
  }
  CHECK(print_fixed(-std::numeric_limits<double>::max(), 9).size() == 320);
}

TEST_CASE("Thousands are grouped by spaces") {
  CHECK(print_grouped(0) == "0");
  CHECK(print_grouped(999) == "999");
  CHECK(print_grouped(-999) == "-999");
  CHECK(print_grouped(1000) == "1 000");
  CHECK(print_grouped(8294400) == "8 294 400");
  CHECK(print_grouped(-1234567) == "-1 234 567");
  CHECK(print_grouped(INT64_MIN) == "-9 223 372 036 854 775 808");
}

TEST_CASE("Fractions are read from whole numbers, decimals and quotients") {
  struct Row {
    std::string_view text;
    Rational value;
  };
  for (const Row& row :
       std::to_array<Row>({{"24", 24},
                           {"-3", -3},
                           {"007", 7},
                           {"2.39", Rational(239, 100)},
                           {"-0.5", Rational(-1, 2)},
                           {"1.50", Rational(3, 2)},
                           {"24000/1001", Rational(24000, 1001)},
                           {"-6/4", Rational(-3, 2)},
                           {"9223372036854775807", INT64_MAX},
                           {"0.000000000000000001", Rational(1, 1000000000000000000)}})) {
    CAPTURE(row.text);
    CHECK(parse_rational(row.text) == row.value);
  }
  for (const std::string_view text : {"",
                                      "-",
                                      "+3",
                                      " 3",
                                      "3 ",
                                      "--3",
                                      "3/-4",
                                      "3/0",
                                      "0/0",
                                      "/3",
                                      "3/",
                                      "1/2/3",
                                      "1.5/2",
                                      ".5",
                                      "5.",
                                      "1e3",
                                      "0x10",
                                      "NaN",
                                      "inf",
                                      "9223372036854775808",
                                      "0.0000000000000000001",
                                      "1,5",
                                      "12a"}) {
    CAPTURE(text);
    CHECK_FALSE(parse_rational(text).has_value());
  }
}

TEST_CASE("What prints as a fraction reads back as itself") {
  const std::uint64_t seed = 20261103;
  CAPTURE(seed);
  testing::Dice dice(seed);
  for (int i = 0; i < 5000; ++i) {
    const Rational value(dice.whole(-1'000'000'000, 1'000'000'000), dice.whole(1, 100'000));
    REQUIRE(parse_rational(print_rational(value)) == value);
  }
  CHECK(print_rational(Rational(1, 0)) == "null");
}

TEST_CASE("A decimal's fraction is the one a person wrote") {
  struct Row {
    double value;
    Rational fraction;
  };
  for (const Row& row : std::to_array<Row>({{2.39, Rational(239, 100)},
                                            {0.025, Rational(1, 40)},
                                            {1, 1},
                                            {-1.5, Rational(-3, 2)},
                                            {24, 24},
                                            {30, 30},
                                            {100, 100},
                                            {180, 180},
                                            {172.8, Rational(864, 5)},
                                            {120000, 120000},
                                            {123456789, 123456789},
                                            {23.976, Rational(2997, 125)}})) {
    CAPTURE(row.value);
    CHECK(rational_from_decimal(row.value) == row.fraction);
  }
  for (const double value : {1.0 / 3, 1e-5, 1e15, 1e300, 5e-324, kInfinity, kNan}) {
    CAPTURE(value);
    CHECK_FALSE(rational_from_decimal(value).has_value());
  }
}

TEST_CASE("Every hundredth up to a thousand has its fraction") {
  for (std::int64_t hundredths = -1000; hundredths <= 100'000; ++hundredths) {
    const double value = static_cast<double>(hundredths) / 100;
    REQUIRE(rational_from_decimal(value) == Rational(hundredths, 100));
  }
}

TEST_CASE("Decimal numbers") {
  CHECK(parse_decimal("35") == 35.0);
  CHECK(parse_decimal("-2.5e-3") == -0.0025);
  CHECK(parse_decimal("0.1") == 0.1);
  CHECK(parse_decimal("1e-400") == 0.0);
  for (const std::string_view text : {"", "-", "nan", "NaN", "inf", "-inf", "infinity", "+1", " 1",
                                      "1 ", "0x10", "1,5", "1e400", "1e", ".5", "-.5", "1_0"}) {
    CAPTURE(text);
    CHECK_FALSE(parse_decimal(text).has_value());
  }
}

TEST_CASE("A number printed at 12 digits reads back within half a unit of the twelfth") {
  const std::uint64_t seed = 20261104;
  CAPTURE(seed);
  testing::Dice dice(seed);
  for (int i = 0; i < 5000; ++i) {
    const double value = std::ldexp(static_cast<double>(dice.whole(-(1LL << 52), 1LL << 52)),
                                    static_cast<int>(dice.whole(-100, 40)));
    const auto back = parse_decimal(print_number(value));
    REQUIRE(back.has_value());
    REQUIRE(std::abs(*back - value) <= 5.0001e-12 * std::abs(value));
    REQUIRE(round_12(value) == *back);
  }
}

}  // namespace
}  // namespace widegate
