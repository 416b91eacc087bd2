// Run: frame rates, shutter and exposure, lights that flicker, and which part limits the rate.
#pragma once

#include <optional>
#include <vector>

#include "core/catalogue/catalogue.h"
#include "core/plan/plan.h"
#include "core/run/report.h"

namespace widegate {

/// Exposure time of one frame in seconds: angle / (360 rate), or the shutter time itself.
/// @source definition of the shutter angle.
[[nodiscard]] Rational exposure_s(const Running& run);

/// How often the plan's lights pulse in a second: twice the mains frequency, a frequency of their
/// own, or nothing for lights that do not pulse.
[[nodiscard]] std::optional<Rational> light_pulses_hz(const Running& run);

/// Half of the most less the least light that an exposure can collect, over the mean, for light
/// 1 + cos(2 pi pulses_hz t): |sin(pi x) / (pi x)| with x pulses in an exposure; exactly 0 for a
/// whole number of them. Lamps that never go dark ripple less.
/// @source the mean of a cosine over an interval; docs/formulas/run.md.
[[nodiscard]] double ripple_depth(Rational pulses_hz, Rational exposure);

/// How often in a second the ripple comes and goes from frame to frame: the distance of pulses_hz
/// from the nearest whole multiple of the rate, nought included. 0: every frame starts at the same
/// point of a pulse.
[[nodiscard]] Rational beat_hz(Rational pulses_hz, Rational rate);

/// The (up to four) angles nearest to the plan's whose exposure holds n = 1, 2, ... whole pulses
/// within 360 degrees: the nearest one not longer, the nearest longer one, then the next of each.
/// An angle that is no whole number of tenths is offered as one that can be dialled (a usual one
/// within half a degree, or in tenths) where the ripple there is under 1 %. With a shutter time,
/// as exact times.
[[nodiscard]] std::vector<SafeShutter> nearest_safe_shutters(const Running& run,
                                                             Rational pulses_hz);

/// The (up to four) rates nearest to this one, rising, without the rate itself: for an angle those
/// at which it holds whole pulses, for a time those at which every frame starts at the same point
/// of a pulse. An angle keeps its angle, a time keeps its time.
[[nodiscard]] std::vector<Rational> nearest_safe_rates(const Running& run, Rational pulses_hz);

/// Depth, beat and bands of the plan's lights, their grade, and what would be better.
/// @param read_out_s  of the camera's rolling shutter; nothing when not known, 0 for none.
[[nodiscard]] Flicker flicker_of(const Running& run, std::optional<double> read_out_s);

/// The highest rate a format and card manage, and what sets it.
struct RateCeiling {
  std::optional<Rational> rate;
  RateLimit limited_by = RateLimit::none;
};

/// Bytes a frame for which the card sets the rate: the largest stored frame, but 0 for a constant
/// bit rate, whose frames shrink as the rate rises.
[[nodiscard]] std::int64_t card_bound_bytes(const Codec& codec,
                                            std::int64_t stored_bytes_per_frame);

/// Lowest of the mode's, the recording option's, the card's and the camera's own ceiling; on a tie
/// the earlier of these is named. The card's is its write speed over the largest stored frame
/// without audio (off speed there is none); `stored_bytes_per_frame` of 0 leaves the card out (a
/// constant bit rate, film).
[[nodiscard]] RateCeiling rate_ceiling(const Camera& camera, const SensorMode& mode,
                                       const Recording& recording, const Card& card,
                                       std::int64_t stored_bytes_per_frame);

/// Everything of the Run question but the card's running time, which evaluate() adds from Store.
/// @param read_out_s  as for flicker_of().
[[nodiscard]] RunReport run_report(const Running& run, const RateCeiling& ceiling,
                                   std::optional<double> read_out_s = std::nullopt);

}  // namespace widegate
