// Exact fractions for rates, aspect ratios, squeeze and protection. Only integer arithmetic lives
// here; text conversion is in number_text.h.
#pragma once

#include <compare>
#include <cstdint>

namespace widegate {

__extension__ using Int128 = __int128;

/// Largest whole number not above top / bottom; bottom is positive.
template <class Whole>
[[nodiscard]] constexpr Whole floor_quotient(Whole top, Whole bottom) {
  const Whole quotient = top / bottom;
  return quotient - ((top % bottom != 0 && top < 0) ? 1 : 0);
}

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
    return ok() ? floor_quotient(num_, den_) : 0;
  }
  [[nodiscard]] constexpr std::int64_t ceil() const { return -Rational(-num_, den_).floor(); }

  friend constexpr Rational operator+(Rational a, Rational b) {
    if (all_short(a, b)) {
      return reduce_small(a.num_ * b.den_ + b.num_ * a.den_, a.den_ * b.den_);
    }
    return reduce(Int128{a.num_} * b.den_ + Int128{b.num_} * a.den_, Int128{a.den_} * b.den_);
  }
  friend constexpr Rational operator-(Rational a, Rational b) {
    if (all_short(a, b)) {
      return reduce_small(a.num_ * b.den_ - b.num_ * a.den_, a.den_ * b.den_);
    }
    return reduce(Int128{a.num_} * b.den_ - Int128{b.num_} * a.den_, Int128{a.den_} * b.den_);
  }
  friend constexpr Rational operator*(Rational a, Rational b) {
    if (all_short(a, b)) return reduce_small(a.num_ * b.num_, a.den_ * b.den_);
    return reduce(Int128{a.num_} * b.num_, Int128{a.den_} * b.den_);
  }
  friend constexpr Rational operator/(Rational a, Rational b) {
    if (!a.ok() || !b.ok()) return in_terms(0, 0);
    if (all_short(a, b)) {
      const bool up = b.num_ >= 0;
      const std::int64_t top = a.num_ * b.den_;
      const std::int64_t bottom = a.den_ * b.num_;
      return up ? reduce_small(top, bottom) : reduce_small(-top, -bottom);
    }
    return reduce(Int128{a.num_} * b.den_, Int128{a.den_} * b.num_);
  }
  friend constexpr bool operator==(Rational a, Rational b) {
    return a.ok() && b.ok() && a.num_ == b.num_ && a.den_ == b.den_;
  }
  friend constexpr std::partial_ordering operator<=>(Rational a, Rational b) {
    if (!a.ok() || !b.ok()) return std::partial_ordering::unordered;
    if (a.den_ == b.den_) return a.num_ <=> b.num_;
    if (all_short(a, b)) return a.num_ * b.den_ <=> b.num_ * a.den_;
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
    if (!fits(num) || !fits(den)) {
      const Int128 divisor = common_divisor(num < 0 ? -num : num, den);
      num /= divisor;
      den /= divisor;
      if (!fits(num) || !fits(den)) return result;
      return in_terms(static_cast<std::int64_t>(num), static_cast<std::int64_t>(den));
    }
    return reduce_small(static_cast<std::int64_t>(num), static_cast<std::int64_t>(den));
  }
  // Products of short terms fit 64 bits; those of 128 are slow library calls where the processor
  // has no such multiplication.
  static constexpr bool all_short(Rational a, Rational b) {
    return is_short(a.num_) && is_short(a.den_) && is_short(b.num_) && is_short(b.den_);
  }
  static constexpr bool is_short(std::int64_t term) {
    return term == static_cast<std::int32_t>(term);
  }
  // Nearly every fraction; the denominator is not negative.
  static constexpr Rational reduce_small(std::int64_t num, std::int64_t den) {
    if (den <= 1) return in_terms(den == 1 ? num : 0, den);
    const auto size = static_cast<std::uint64_t>(num < 0 ? -num : num);
    const auto divisor =
        static_cast<std::int64_t>(short_divisor(size, static_cast<std::uint64_t>(den)));
    return divisor == 1 ? in_terms(num, den) : in_terms(num / divisor, den / divisor);
  }
  static constexpr Rational in_terms(std::int64_t num, std::int64_t den) {
    Rational result;
    result.num_ = num;
    result.den_ = den;
    return result;
  }
  static constexpr bool fits(Int128 value) { return value <= INT64_MAX && value >= -INT64_MAX; }
  // Works in 64 bits as soon as both terms fit.
  static constexpr Int128 common_divisor(Int128 a, Int128 b) {
    while (a > INT64_MAX || b > INT64_MAX) {
      if (b == 0) return a;
      const Int128 rest = a % b;
      a = b;
      b = rest;
    }
    return short_divisor(static_cast<std::uint64_t>(a), static_cast<std::uint64_t>(b));
  }
  static constexpr std::uint64_t short_divisor(std::uint64_t x, std::uint64_t y) {
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
    return x << shift;
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
  const bool small = top <= INT64_MAX && top >= -INT64_MAX && bottom <= INT64_MAX;
  const Int128 quotient =
      small ? floor_quotient(static_cast<std::int64_t>(top), static_cast<std::int64_t>(bottom))
            : floor_quotient(top, bottom);
  return static_cast<std::int64_t>(quotient) * unit;
}

/// As floor_scaled, upwards.
[[nodiscard]] constexpr std::int64_t ceil_scaled(Rational value, std::int64_t mul, std::int64_t div,
                                                 std::int64_t unit) {
  return -floor_scaled(Rational(-value.num(), value.den()), mul, div, unit);
}

}  // namespace widegate
