#include "core/base/number_text.h"

#include <cmath>
#include <cstdio>
#include <cstdlib>

namespace widegate {
namespace {

constexpr int kMaxDecimals = 9;

std::string formatted(const char* format, int precision, double value) {
  char buffer[400];  // "%.9f" of the largest double needs 319 bytes
  const int length = std::snprintf(buffer, sizeof buffer, format, precision, value);
  return std::string(buffer, static_cast<std::size_t>(length));
}

bool is_digit(char c) { return c >= '0' && c <= '9'; }

/// Appends the digits of `text` to `value`; false when it is not all digits or does not fit.
bool append_digits(std::string_view text, std::int64_t& value) {
  for (const char c : text) {
    if (!is_digit(c)) return false;
    if (__builtin_mul_overflow(value, std::int64_t{10}, &value)) return false;
    if (__builtin_add_overflow(value, std::int64_t{c - '0'}, &value)) return false;
  }
  return true;
}

std::optional<Rational> parse_fraction(std::string_view top, std::string_view bottom) {
  std::int64_t num = 0;
  std::int64_t den = 0;
  if (top.empty() || bottom.empty()) return std::nullopt;
  if (!append_digits(top, num) || !append_digits(bottom, den) || den == 0) return std::nullopt;
  return Rational(num, den);
}

std::optional<Rational> parse_point(std::string_view whole, std::string_view decimals) {
  std::int64_t num = 0;
  std::int64_t den = 1;
  if (whole.empty() || decimals.empty()) return std::nullopt;
  if (!append_digits(whole, num) || !append_digits(decimals, num)) return std::nullopt;
  for (std::size_t i = 0; i < decimals.size(); ++i) {
    if (__builtin_mul_overflow(den, std::int64_t{10}, &den)) return std::nullopt;
  }
  return Rational(num, den);
}

}  // namespace

std::string print_number(double value) {
  if (!std::isfinite(value)) return "null";
  if (value == 0) return "0";
  return formatted("%.*g", 12, value);
}

double round_12(double value) {
  if (value == 0) return 0;
  if (!std::isfinite(value)) return value;
  return parse_decimal(print_number(value)).value_or(value);
}

std::string print_fixed(double value, int decimals) {
  if (!std::isfinite(value)) return "null";
  const int places = decimals < 0 ? 0 : (decimals > kMaxDecimals ? kMaxDecimals : decimals);
  std::string text = formatted("%.*f", places, value);
  const bool all_zero = text.find_first_of("123456789") == std::string::npos;
  return all_zero && text.front() == '-' ? text.substr(1) : text;
}

std::string print_grouped(std::int64_t value) {
  std::string digits = std::to_string(value);
  const std::size_t first = value < 0 ? 1 : 0;
  for (std::size_t at = digits.size(); at > first + 3;) {
    at -= 3;
    digits.insert(at, 1, ' ');
  }
  return digits;
}

std::string print_rational(Rational value) {
  if (!value.ok()) return "null";
  const std::string top = std::to_string(value.num());
  return value.whole() ? top : top + "/" + std::to_string(value.den());
}

std::optional<Rational> parse_rational(std::string_view text) {
  const bool negative = !text.empty() && text.front() == '-';
  if (negative) text.remove_prefix(1);
  std::optional<Rational> result;
  if (const auto slash = text.find('/'); slash != std::string_view::npos) {
    result = parse_fraction(text.substr(0, slash), text.substr(slash + 1));
  } else if (const auto point = text.find('.'); point != std::string_view::npos) {
    result = parse_point(text.substr(0, point), text.substr(point + 1));
  } else {
    result = parse_fraction(text, "1");
  }
  if (result && negative) result = Rational(-result->num(), result->den());
  return result;
}

std::optional<Rational> rational_from_decimal(double value) {
  if (!std::isfinite(value)) return std::nullopt;
  for (int digits = 1; digits <= 15; ++digits) {
    const std::string text = formatted("%.*g", digits, value);
    if (parse_decimal(text) != value) continue;
    // "2e+02" has too few digits to be written out; with more of them it becomes "200".
    if (const auto fraction = parse_rational(text)) return fraction;
  }
  return std::nullopt;
}

std::optional<double> parse_decimal(std::string_view text) {
  const std::string_view unsigned_text =
      !text.empty() && text.front() == '-' ? text.substr(1) : text;
  if (unsigned_text.empty() || !is_digit(unsigned_text.front())) return std::nullopt;
  // The C library also reads hexadecimal digits.
  if (text.find_first_of("xX") != std::string_view::npos) return std::nullopt;
  const std::string ended(text);
  char* end = nullptr;
  const double value = std::strtod(ended.c_str(), &end);
  if (end != ended.c_str() + ended.size() || !std::isfinite(value)) return std::nullopt;
  return value;
}

}  // namespace widegate
