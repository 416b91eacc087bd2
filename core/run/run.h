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

/// Whether every frame collects the same light from lamps that pulse at twice the mains frequency:
/// the exposure holds a whole number of pulses, or every frame starts at the same point of a pulse
/// (a whole number of pulses each frame period). Exact.
[[nodiscard]] bool is_flicker_safe(Rational rate, Rational exposure, Rational mains_hz);

/// The (up to four) safe shutter angles nearest to `angle_deg` at this rate, rising: those whose
/// exposure holds n = 1, 2, ... pulses within 360 degrees.
[[nodiscard]] std::vector<double> nearest_safe_angles(Rational rate, Rational angle_deg,
                                                      Rational mains_hz);

/// The (up to four) rates nearest to this one that are safe with this shutter, rising, without the
/// rate itself. An angle keeps its angle, a time keeps its time, at the other rate.
[[nodiscard]] std::vector<Rational> nearest_safe_rates(const Running& run);

/// The highest rate a format and card manage, and what sets it.
struct RateCeiling {
  std::optional<Rational> rate;
  RateLimit limited_by = RateLimit::none;
};

/// Bytes a frame for which the card sets the rate: the largest stored frame, but 0 for a constant
/// bit rate, whose frames shrink as the rate rises.
[[nodiscard]] std::int64_t card_bound_bytes(const Codec& codec,
                                            std::int64_t stored_bytes_per_frame);

/// Lowest of the mode's, the recording option's and the card's ceiling; on a tie the earlier of
/// these is named. The card's is its write speed over the largest stored frame without audio (off
/// speed there is none); `stored_bytes_per_frame` of 0 leaves the card out (a constant bit rate).
[[nodiscard]] RateCeiling rate_ceiling(const SensorMode& mode, const Recording& recording,
                                       const Card& card, std::int64_t stored_bytes_per_frame);

/// Everything of the Run question but the card's running time, which evaluate() adds from Store.
[[nodiscard]] RunReport run_report(const Running& run, const RateCeiling& ceiling);

}  // namespace widegate
