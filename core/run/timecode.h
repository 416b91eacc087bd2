// Time code: a count of frames as hours, minutes, seconds and frames. How many frames there are is
// store.h's.
#pragma once

#include <cstdint>
#include <optional>
#include <string>

#include "core/base/rational.h"

namespace widegate {

/// Whether frame numbers are skipped so that time code keeps pace with the clock.
enum class TimecodeCount {
  non_drop,  ///< Every number is used; at 30000/1001 an hour of time code lasts 3.6 s longer.
  drop,      ///< The first numbers of every minute but each tenth are left out; frames never are.
};

/// A length as time code. Hours run on past 24: this is how long something is, not a time of day.
struct Timecode {
  std::int64_t hours = 0;
  std::int64_t minutes = 0;
  std::int64_t seconds = 0;
  std::int64_t frames = 0;
  friend bool operator==(const Timecode&, const Timecode&) = default;
};

/// How many frame numbers one second of time code holds: the rate itself when it is whole, and the
/// whole number above it when the rate is at most 0.1 % lower (24000/1001, 23.976 and 23.98 count
/// 24). Nothing for any other rate, or above 999.
/// @source SMPTE ST 12-1 for 24, 25, 30, 50 and 60; other whole rates are counted the same way.
[[nodiscard]] std::optional<std::int64_t> timecode_base(Rational rate);

/// Whether the rate has drop-frame time code: bases of whole thirties at a rate just below them
/// (30000/1001, 60000/1001).
/// @source SMPTE ST 12-1.
[[nodiscard]] bool has_drop_frame(Rational rate);

/// `frames` (0 or more) at a time code base of 1 or more. Exact. Dropping leaves out base / 15
/// numbers a minute and needs a base that is a multiple of 30.
/// @source SMPTE ST 12-1: 2 numbers a minute of 1800, except minutes 0, 10, 20, 30, 40 and 50.
[[nodiscard]] Timecode timecode_of(std::int64_t frames, std::int64_t base, TimecodeCount count);

/// "01:02:03:04", or "01:02:03;04" for drop frame; empty when the rate has no such time code or
/// `frames` is negative.
[[nodiscard]] std::string timecode_text(std::int64_t frames, Rational rate, TimecodeCount count);

}  // namespace widegate
