// Sizes, speeds and lengths of time as people type them from a published sheet or a file browser,
// with or without their unit. Reading only; limits are for whoever asks.
#pragma once

#include <optional>
#include <string_view>

#include "core/base/rational.h"

namespace widegate {

/// What a number without a unit is meant in.
enum class AmountUnit {
  bytes,            ///< B
  gigabytes,        ///< GB, 10^9 bytes
  megabytes_per_s,  ///< MB/s
  megabits_per_s,   ///< Mb/s
  minutes,          ///< min
};

/// Reads "512", "512 GB", "1,5 TB", "476 GiB", "1400 MB/s", "8 Gb/s", "30 s", "1:30". A decimal
/// comma is a point.
/// @param unit  what the field holds; only units of the same quantity are understood.
/// @return exact bytes, bytes a second (also for Mb/s: bits over 8) or seconds, never negative;
///         nothing for any other text or a number that does not fit.
/// @source IEC 80000-13: k, M, G, T are powers of 1000; Ki, Mi, Gi, Ti powers of 1024; B is the
///         byte, b or bit the bit.
[[nodiscard]] std::optional<Rational> parse_amount(std::string_view text, AmountUnit unit);

/// Bytes, bytes a second or seconds that one of the unit is: 10^9 for gigabytes.
[[nodiscard]] Rational amount_scale(AmountUnit unit);

/// A whole number in which thousands may be set apart: "4992", "4 992", "4,992", "4.992", "4'992".
/// Groups after the first have three digits; anything else is not understood.
[[nodiscard]] std::optional<std::int64_t> parse_grouped(std::string_view text);

}  // namespace widegate
