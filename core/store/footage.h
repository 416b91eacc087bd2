// How much is shot, and how fast it comes: running time, frames and bytes as exact fractions.
// What it is stored on is card_load.h's and archive.h's.
#pragma once

#include <cstdint>
#include <optional>

#include "core/base/rational.h"
#include "core/base/wide.h"
#include "core/catalogue/catalogue.h"
#include "core/plan/plan.h"

namespace widegate {

/// Two counts whose quotient is meant; kept apart so that it can be rounded either way at the end.
struct Quotient {
  Wide num;
  Wide den = 1;

  [[nodiscard]] constexpr bool ok() const { return num.ok() && den.ok(); }
  [[nodiscard]] constexpr double to_double() const { return num.to_double() / den.to_double(); }
};

/// Frames of one size at one rate with sound beside them.
struct Stream {
  std::int64_t frame_bytes = 0;  ///< Stored: coded frame and container, without sound.
  std::int64_t audio_bytes_per_s = 0;
  Rational rate = Rational();  ///< Frames per second, above 0.

  /// Frames and sound together.
  [[nodiscard]] Quotient bytes_per_s() const;
};

/// Bytes per second of 48 kHz, 24-bit sound; 0 off speed, when no camera records sound that fits
/// (common practice, no source).
/// @param run  audio_channels 0 or more; rates above 0.
[[nodiscard]] std::int64_t audio_bytes_per_s(const Running& run);

/// One coded frame as it is stored: with the container's share and, at speed, that of the sound.
/// @return nothing when it is 2^53 bytes or more.
[[nodiscard]] std::optional<Stream> stream_of(std::int64_t frame_bytes, const Running& run,
                                              const Container& container);

/// Bytes of the same footage.
struct FootageBytes {
  Quotient per_day;  ///< Of one camera and day.
  Quotient total;    ///< Of all cameras and days.
};

/// Running time, taken to the nearest microsecond where a plan states hours or minutes.
///
/// Recorded hours are sensor running time: frames = time * sensor rate. Script minutes times
/// shooting ratio are playing time of the whole shoot, however fast the camera ran: frames = time *
/// project rate. The same minute of slow motion is then the same number of frames, recorded in
/// less time.
struct Footage {
  std::int64_t microseconds = 0;  ///< Of one camera and day, or of the whole shoot.
  bool whole_shoot = false;       ///< Which of the two.
  Rational rate = Rational();     ///< Rate the time is counted at: sensor rate or project rate.
  Rational sensor_rate = Rational();
  std::int64_t camera_days = 1;  ///< Units * cameras * days.

  /// Frames of one camera and day.
  [[nodiscard]] Quotient frames_per_day() const;
  /// Sensor running time of one camera and day.
  [[nodiscard]] Quotient microseconds_per_day() const;
  /// How long everything that was shot plays at the project rate.
  [[nodiscard]] double playing_seconds(Rational project_rate) const;
  [[nodiscard]] FootageBytes bytes(Stream stream) const;
};

/// @param plan  checked.
[[nodiscard]] Footage footage_of(const Plan& plan);

/// Nearest whole microsecond; hours and minutes are 0 or more, at most 2^53 us.
[[nodiscard]] std::int64_t microseconds_of_hours(double hours);
[[nodiscard]] std::int64_t microseconds_of_minutes(double minutes);

}  // namespace widegate
