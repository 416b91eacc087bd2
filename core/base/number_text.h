// The only place where numbers become text and text becomes numbers. Locale-free; the same bytes
// natively and in WebAssembly.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "core/base/rational.h"

namespace widegate {

/// Shortest decimal with at most 12 significant digits ("23.976023976", "1e-07"). Trigonometry may
/// differ by one unit in the last place between C libraries; 12 digits hide it.
/// NaN and infinities print as "null".
[[nodiscard]] std::string print_number(double value);

/// value rounded to 12 significant digits, as print_number shows it.
[[nodiscard]] double round_12(double value);

/// Fixed number of decimals (0 to 9), "-0.00" printed as "0.00".
[[nodiscard]] std::string print_fixed(double value, int decimals);

/// Whole number with thin grouping of thousands: 8294400 -> "8 294 400" (a plain space).
[[nodiscard]] std::string print_grouped(std::int64_t value);

/// "24", "24000/1001", "239/100".
[[nodiscard]] std::string print_rational(Rational value);

/// Reads "24", "-3", "2.39", "24000/1001". Nothing else: no spaces, exponents, signs in the
/// denominator, nor more digits than fit 64 bits; a zero denominator is refused.
[[nodiscard]] std::optional<Rational> parse_rational(std::string_view text);

/// The exact fraction of the shortest decimal that reads back as `value` (2.39 -> 239/100), or
/// nothing when that decimal needs more than 15 digits, an exponent, or is not finite.
[[nodiscard]] std::optional<Rational> rational_from_decimal(double value);

/// Reads a decimal number with '.' and an optional exponent over the whole text; NaN, infinity, hex
/// and surrounding blanks are refused.
[[nodiscard]] std::optional<double> parse_decimal(std::string_view text);

}  // namespace widegate
