// What the Run question answers, as plain data; filled by run.h.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/rational.h"
#include "core/base/severity.h"
#include "core/base/span.h"
#include "core/plan/plan.h"

namespace widegate {

/// What limits the frame rate.
enum class RateLimit { none, mode, recording, card, camera };

/// A shutter that holds whole pulses, or so nearly that nobody sees the rest.
struct SafeShutter {
  Rational angle_deg;  ///< As it can be dialled.
  Rational exact_deg;  ///< That of whole pulses.
  Rational time_s;     ///< Exposure at angle_deg.
  friend bool operator==(const SafeShutter&, const SafeShutter&) = default;
};

/// Lights that pulse. Only `lights`, `mains_hz` and `grade` hold when they do not.
struct Flicker {
  Lights lights = Lights::not_said;
  double mains_hz = 0;
  std::optional<Rational> pulses_hz;  ///< Nothing for lights that do not pulse.
  Severity grade = Severity::ok;
  double pulses_per_exposure = 0;
  double pulses_per_frame = 0;
  double depth_percent = 0;  ///< Half of most less least, over the mean, for light 1 + cos.
  double beat_hz = 0;
  std::optional<double> beat_s;  ///< Nothing when every frame starts at the same point of a pulse.
  /// The ripple does not beat but stands as bands across the picture of a rolling shutter.
  bool bands = false;
  std::optional<double> read_out_s;  ///< Of the rolling shutter; nothing when not known.
  std::optional<double> band_count;  ///< Pulses while the sensor is read out.
  std::vector<SafeShutter> nearest_safe_shutters;  ///< Best first; empty when none is safe.
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
