// Whole numbers of 128 bits that remember an overflow, for products of bytes, frames and time that
// pass 64 bits on the way to a result that does not. Fractions in lowest terms are rational.h's.
#pragma once

#include <cstdint>
#include <optional>

#include "core/rational.h"

namespace widegate {

/// Largest count the project calls exact: every whole number up to it is also a double.
inline constexpr std::int64_t kLargestExact = (std::int64_t{1} << 53) - 1;

/// A whole number from zero to below 2^126. A larger one is invalid; invalid spreads through
/// arithmetic as 0/0 does in Rational, so only the last result needs asking.
class Wide {
 public:
  constexpr Wide() = default;
  /// A negative value is invalid: nothing that is counted here can be below zero.
  constexpr Wide(std::int64_t value)
      : value_(value < 0 ? 0 : value), ok_(value >= 0) {}  // NOLINT: counts convert

  [[nodiscard]] constexpr bool ok() const { return ok_; }
  /// Nearest double; 0 when invalid.
  [[nodiscard]] constexpr double to_double() const { return static_cast<double>(value_); }
  /// The count, or nothing when it is invalid or above kLargestExact.
  [[nodiscard]] constexpr std::optional<std::int64_t> count() const {
    if (!ok_ || value_ > kLargestExact) return std::nullopt;
    return static_cast<std::int64_t>(value_);
  }

  friend constexpr Wide operator+(Wide a, Wide b) { return bounded(a, b, a.value_ + b.value_); }
  // Two halves by hand: the compiler's own check of a 128-bit product divides on some targets.
  friend constexpr Wide operator*(Wide a, Wide b) {
    if (a.value_ < b.value_) return b * a;
    if (b.value_ > INT64_MAX) return Wide(-1);
    const Int128 high = (a.value_ >> 63) * b.value_;
    if (high > INT64_MAX) return Wide(-1);
    return bounded(a, b, (high << 63) + (a.value_ & INT64_MAX) * b.value_);
  }
  /// Largest whole number not above a / b; invalid when b is 0.
  [[nodiscard]] friend constexpr Wide floor_div(Wide a, Wide b) {
    if (b.value_ == 0) return Wide(-1);
    return bounded(a, b, divide(a.value_, b.value_));
  }
  /// Smallest whole number not below a / b; invalid when b is 0.
  [[nodiscard]] friend constexpr Wide ceil_div(Wide a, Wide b) {
    Wide quotient = floor_div(a, b);
    if (quotient.ok_ && quotient.value_ * b.value_ != a.value_) ++quotient.value_;
    return quotient;
  }

 private:
  // The result of an operation on a and b.
  static constexpr Wide bounded(Wide a, Wide b, Int128 value) {
    Wide result;
    result.ok_ = a.ok_ && b.ok_ && value < kLimit;
    result.value_ = result.ok_ ? value : 0;
    return result;
  }
  // 128-bit division is a library call; most values fit 64 bits.
  static constexpr Int128 divide(Int128 a, Int128 b) {
    if (a <= INT64_MAX && b <= INT64_MAX) {
      return static_cast<std::int64_t>(a) / static_cast<std::int64_t>(b);
    }
    return a / b;
  }

  static constexpr Int128 kLimit = Int128{1} << 126;
  Int128 value_ = 0;  // 0 when invalid
  bool ok_ = true;
};

// Found for plain integers too, not only where an argument is Wide already.
constexpr Wide floor_div(Wide a, Wide b);
constexpr Wide ceil_div(Wide a, Wide b);

}  // namespace widegate
