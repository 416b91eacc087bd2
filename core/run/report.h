// What the Run question answers, as plain data; filled by run.h.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/rational.h"
#include "core/base/span.h"

namespace widegate {

/// What limits the frame rate.
enum class RateLimit { none, mode, recording, card };

/// Lights on the mains.
struct Flicker {
  double mains_hz = 0;
  bool safe = false;
  std::vector<double>
      nearest_safe_shutter_deg;              ///< Rising; empty when no angle is safe at this rate.
  std::vector<Rational> nearest_safe_rates;  ///< Rising; rates near this one safe at this shutter.
};

/// Rates and exposure.
struct RunReport {
  Rational project_rate;
  Rational sensor_rate;
  Rational exposure_s;
  bool shutter_is_time = false;  ///< The plan states a time; the angle follows from it.
  double shutter_deg = 0;
  double base_angle_deg = 0;
  double speed_factor = 1;
  double exposure_change_stops = 0;
  Flicker flicker;
  std::optional<Rational> rate_ceiling;  ///< Highest whole-system rate; nothing when unlimited.
  RateLimit rate_limited_by = RateLimit::none;
  bool rate_allowed = true;
  Span screen_minutes_per_card;  ///< Playing time of a full card at the project rate.
  /// Length of a full card (least) at the project rate, non-drop and drop-frame; empty when the
  /// rate has no such time code.
  std::string card_timecode, card_timecode_drop;
};

}  // namespace widegate
