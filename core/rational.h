// Exact fractions for rates, aspect ratios, squeeze and protection. Only integer arithmetic lives
// here; text conversion is in text.h.
#pragma once

#include <compare>
#include <cstdint>

namespace widegate {

__extension__ using Int128 = __int128;

/// A fraction in lowest terms with a positive denominator, terms up to 2^63 - 1 either way.
/// A result that does not fit 64-bit terms, or a division by zero, is the invalid fraction 0/0;
/// it spreads through arithmetic and compares unequal to everything, so ask ok() at the end.
class Rational {
 public:
  constexpr Rational() = default;
  constexpr Rational(std::int64_t whole)  // NOLINT: counts are fractions
      : num_(whole == INT64_MIN ? 0 : whole), den_(whole == INT64_MIN ? 0 : 1) {}
  constexpr Rational(std::int64_t num, std::int64_t den) : Rational(reduce(num, den)) {}

  [[nodiscard]] constexpr std::int64_t num() const { return num_; }
  [[nodiscard]] constexpr std::int64_t den() const { return den_; }
  [[nodiscard]] constexpr bool ok() const { return den_ != 0; }
  [[nodiscard]] constexpr bool whole() const { return den_ == 1; }
  /// Nearest double; NaN when invalid.
  [[nodiscard]] constexpr double to_double() const {
    return static_cast<double>(num_) / static_cast<double>(den_);
  }
  /// Largest integer not above, smallest not below; 0 when invalid.
  [[nodiscard]] constexpr std::int64_t floor() const {
    if (!ok()) return 0;
    const std::int64_t quotient = num_ / den_;
    return quotient - ((num_ % den_ != 0 && num_ < 0) ? 1 : 0);
  }
  [[nodiscard]] constexpr std::int64_t ceil() const { return -Rational(-num_, den_).floor(); }

  friend constexpr Rational operator+(Rational a, Rational b) {
    return reduce(Int128{a.num_} * b.den_ + Int128{b.num_} * a.den_, Int128{a.den_} * b.den_);
  }
  friend constexpr Rational operator-(Rational a, Rational b) {
    return reduce(Int128{a.num_} * b.den_ - Int128{b.num_} * a.den_, Int128{a.den_} * b.den_);
  }
  friend constexpr Rational operator*(Rational a, Rational b) {
    return reduce(Int128{a.num_} * b.num_, Int128{a.den_} * b.den_);
  }
  friend constexpr Rational operator/(Rational a, Rational b) {
    if (!a.ok() || !b.ok()) return reduce(0, 0);
    return reduce(Int128{a.num_} * b.den_, Int128{a.den_} * b.num_);
  }
  friend constexpr bool operator==(Rational a, Rational b) {
    return a.ok() && b.ok() && a.num_ == b.num_ && a.den_ == b.den_;
  }
  friend constexpr std::partial_ordering operator<=>(Rational a, Rational b) {
    if (!a.ok() || !b.ok()) return std::partial_ordering::unordered;
    const Int128 left = Int128{a.num_} * b.den_;
    const Int128 right = Int128{b.num_} * a.den_;
    if (left < right) return std::partial_ordering::less;
    return left > right ? std::partial_ordering::greater : std::partial_ordering::equivalent;
  }

 private:
  static constexpr Rational reduce(Int128 num, Int128 den) {
    Rational result;
    result.den_ = 0;
    if (den == 0) return result;
    if (den < 0) {
      num = -num;
      den = -den;
    }
    const Int128 divisor = common_divisor(num < 0 ? -num : num, den);
    num /= divisor;
    den /= divisor;
    if (num > INT64_MAX || num < -INT64_MAX || den > INT64_MAX) return result;
    result.num_ = static_cast<std::int64_t>(num);
    result.den_ = static_cast<std::int64_t>(den);
    return result;
  }
  // Works in 64 bits as soon as both terms fit: 128-bit division is several times slower.
  static constexpr Int128 common_divisor(Int128 a, Int128 b) {
    while (a > INT64_MAX || b > INT64_MAX) {
      if (b == 0) return a;
      const Int128 rest = a % b;
      a = b;
      b = rest;
    }
    auto x = static_cast<std::uint64_t>(a);
    auto y = static_cast<std::uint64_t>(b);
    if (x == 0 || y == 0) return x | y;
    const int shift = __builtin_ctzll(x | y);
    x >>= __builtin_ctzll(x);
    while (y != 0) {
      y >>= __builtin_ctzll(y);
      if (x > y) {
        const std::uint64_t swap = x;
        x = y;
        y = swap;
      }
      y -= x;
    }
    return Int128{x} << shift;
  }

  std::int64_t num_ = 0;
  std::int64_t den_ = 1;
};

/// floor(value * mul / div) without an intermediate overflow, then down to a multiple of `unit`.
/// All of mul, div, unit are positive counts; value is any valid fraction.
[[nodiscard]] constexpr std::int64_t floor_scaled(Rational value, std::int64_t mul,
                                                  std::int64_t div, std::int64_t unit) {
  const Int128 top = Int128{value.num()} * mul;
  const Int128 bottom = Int128{value.den()} * div * unit;
  if (bottom == 0) return 0;
  Int128 quotient = top / bottom;
  if (top % bottom != 0 && top < 0) --quotient;
  return static_cast<std::int64_t>(quotient) * unit;
}

/// As floor_scaled, upwards.
[[nodiscard]] constexpr std::int64_t ceil_scaled(Rational value, std::int64_t mul, std::int64_t div,
                                                 std::int64_t unit) {
  return -floor_scaled(Rational(-value.num(), value.den()), mul, div, unit);
}

}  // namespace widegate
