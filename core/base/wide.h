// Whole numbers of 128 bits that remember an overflow, for products of bytes, frames and time that
// pass 64 bits on the way to a result that does not. Fractions in lowest terms are rational.h's.
#pragma once

#include <cstdint>
#include <optional>

#include "core/base/rational.h"

namespace widegate {

/// Largest count the project calls exact: every whole number up to it is also a double.
inline constexpr std::int64_t kLargestExact = (std::int64_t{1} << 53) - 1;

/// A whole number from zero to below 2^126. A larger one is invalid; invalid spreads through
/// arithmetic as 0/0 does in Rational, so only the last result needs asking.
class Wide {
 public:
  constexpr Wide() = default;
  /// A negative value is invalid: nothing that is counted here can be below zero.
  constexpr Wide(std::int64_t value)  // NOLINT: counts convert
      : value_(value < 0 ? kInvalid : Int128{value}) {}

  [[nodiscard]] constexpr bool ok() const { return value_ >= 0; }
  /// The nearest double up to 2^63, one of the two nearest neighbours above; 0 when invalid.
  [[nodiscard]] constexpr double to_double() const { return ok() ? nearly(value_) : 0; }
  /// The count, or nothing when it is invalid or above kLargestExact.
  [[nodiscard]] constexpr std::optional<std::int64_t> count() const {
    if (!ok() || value_ > kLargestExact) return std::nullopt;
    return static_cast<std::int64_t>(value_);
  }

  friend constexpr Wide operator+(Wide a, Wide b) {
    return a.ok() && b.ok() ? bounded(a.value_ + b.value_) : Wide(-1);
  }
  /// Invalid where it would be below zero.
  friend constexpr Wide operator-(Wide a, Wide b) {
    return a.ok() && b.ok() && a.value_ >= b.value_ ? bounded(a.value_ - b.value_) : Wide(-1);
  }
  // Two halves by hand: the compiler's own check of a 128-bit product divides on some targets.
  friend constexpr Wide operator*(Wide a, Wide b) {
    if (is_small(a.value_) && is_small(b.value_)) return bounded(a.value_ * b.value_);
    if (!a.ok() || !b.ok()) return Wide(-1);
    if (a.value_ < b.value_) return b * a;
    if (!is_small(b.value_)) return Wide(-1);
    const Int128 high = (a.value_ >> 63) * b.value_;
    if (!is_small(high)) return Wide(-1);
    return bounded((high << 63) + (a.value_ & INT64_MAX) * b.value_);
  }
  /// Largest whole number not above a / b; invalid when b is 0.
  [[nodiscard]] friend constexpr Wide floor_div(Wide a, Wide b) {
    if (!a.ok() || b.value_ <= 0) return Wide(-1);
    return bounded(divide(a.value_, b.value_));
  }
  /// Smallest whole number not below a / b; invalid when b is 0.
  [[nodiscard]] friend constexpr Wide ceil_div(Wide a, Wide b) {
    const Wide quotient = floor_div(a, b);
    if (!quotient.ok() || quotient.value_ * b.value_ == a.value_) return quotient;
    return bounded(quotient.value_ + 1);
  }

 private:
  static constexpr Int128 kLimit = Int128{1} << 126;
  static constexpr Int128 kInvalid = -1;

  // From 0 to INT64_MAX.
  static constexpr bool is_small(Int128 value) { return value >> 63 == 0; }

  // Converting all 128 bits at once is a slow library call.
  static constexpr double nearly(Int128 value) {
    constexpr double kTwoTo63 = 9223372036854775808.0;
    const auto low = static_cast<double>(static_cast<std::int64_t>(value & INT64_MAX));
    if (is_small(value)) return low;
    return static_cast<double>(static_cast<std::int64_t>(value >> 63)) * kTwoTo63 + low;
  }

  static constexpr Wide bounded(Int128 value) {
    Wide result;
    result.value_ = value < kLimit ? value : kInvalid;
    return result;
  }

  // 128-bit division is a slow library call. The quotient of doubles is wrong by less than one
  // while it stays well below 2^53, and one step puts it right.
  static constexpr Int128 divide(Int128 a, Int128 b) {
    if (is_small(a) && is_small(b)) {
      return static_cast<std::int64_t>(a) / static_cast<std::int64_t>(b);
    }
    constexpr double kSafelyEstimated = 1e15;
    const double estimate = nearly(a) / nearly(b);
    if (estimate > kSafelyEstimated) return a / b;
    const auto quotient = static_cast<std::int64_t>(estimate);
    const Int128 rest = a - quotient * b;
    if (rest < 0) return quotient - 1;
    return rest >= b ? quotient + 1 : quotient;
  }

  Int128 value_ = 0;
};

// Found for plain integers too, not only where an argument is Wide already.
constexpr Wide floor_div(Wide a, Wide b);
constexpr Wide ceil_div(Wide a, Wide b);

}  // namespace widegate
