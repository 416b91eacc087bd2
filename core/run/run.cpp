#include "core/run/run.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace widegate {
namespace {

constexpr std::int64_t kFullTurnDeg = 360;
constexpr std::ptrdiff_t kNearestCount = 4;

Rational pulses_per_s(Rational mains_hz) { return Rational(2) * mains_hz; }

/// The few distinct values nearest to another; of equally near ones those added first.
template <class Value>
class Nearest {
 public:
  explicit Nearest(double to) : to_(to) {}

  void add(Value value, double place) {
    const double distance = std::abs(place - to_);
    const auto end = kept_.begin() + count_;
    if (std::any_of(kept_.begin(), end, [&](const Kept& k) { return k.value == value; })) return;
    auto at =
        std::find_if(kept_.begin(), end, [&](const Kept& k) { return distance < k.distance; });
    if (at == kept_.end()) return;
    if (count_ < kNearestCount) ++count_;
    std::move_backward(at, kept_.begin() + count_ - 1, kept_.begin() + count_);
    *at = {.value = value, .distance = distance};
  }

  /// Rising.
  [[nodiscard]] std::vector<Value> rising() const {
    std::vector<Value> values;
    values.reserve(kNearestCount);
    std::for_each(kept_.begin(), kept_.begin() + count_,
                  [&](const Kept& kept) { values.push_back(kept.value); });
    std::sort(values.begin(), values.end());
    return values;
  }

 private:
  struct Kept {
    Value value;
    double distance;
  };
  double to_;
  std::array<Kept, kNearestCount> kept_ = {};
  std::ptrdiff_t count_ = 0;
};

Rational shutter_angle_deg(const Running& run) {
  return exposure_s(run) * Rational(kFullTurnDeg) * run.sensor_rate;
}

/// The safe candidates among rate(n) for whole n of 1 and up around the present rate's place.
template <class RateOf>
void add_safe_rates(Nearest<Rational>& rates, const Running& run, Rational place, RateOf rate_of) {
  const std::int64_t middle = place.floor();
  for (std::int64_t n = std::max<std::int64_t>(1, middle - 3); n <= middle + 4; ++n) {
    const Rational rate = rate_of(Rational(n));
    const bool too_fast =
        run.shutter_kind == ShutterKind::time && run.shutter_time_s * rate > Rational(1);
    if (rate.ok() && rate != run.sensor_rate && !too_fast) rates.add(rate, rate.to_double());
  }
}

void lower(RateCeiling& ceiling, const std::optional<Rational>& rate, RateLimit by) {
  if (!rate || (ceiling.rate && *ceiling.rate <= *rate)) return;
  ceiling = {.rate = rate, .limited_by = by};
}

}  // namespace

Rational exposure_s(const Running& run) {
  if (run.shutter_kind == ShutterKind::time) return run.shutter_time_s;
  return run.shutter_angle_deg / (Rational(kFullTurnDeg) * run.sensor_rate);
}

bool is_flicker_safe(Rational rate, Rational exposure, Rational mains_hz) {
  const Rational pulses = pulses_per_s(mains_hz);
  return (exposure * pulses).whole() || (pulses / rate).whole();
}

std::vector<double> nearest_safe_angles(Rational rate, Rational angle_deg, Rational mains_hz) {
  const Rational one_pulse_deg = Rational(kFullTurnDeg) * rate / pulses_per_s(mains_hz);
  const Rational place = angle_deg / one_pulse_deg;
  const std::int64_t most = (Rational(kFullTurnDeg) / one_pulse_deg).floor();
  const std::int64_t first = std::min(std::max<std::int64_t>(1, place.floor() - 3), most - 3);
  Nearest<double> angles(angle_deg.to_double());
  for (std::int64_t n = std::max<std::int64_t>(1, first); n <= std::min(most, first + 7); ++n) {
    const double angle = (Rational(n) * one_pulse_deg).to_double();
    angles.add(angle, angle);
  }
  return angles.rising();
}

std::vector<Rational> nearest_safe_rates(const Running& run) {
  const Rational pulses = pulses_per_s(run.mains_hz);
  Nearest<Rational> rates(run.sensor_rate.to_double());
  add_safe_rates(rates, run, pulses / run.sensor_rate, [&](Rational n) { return pulses / n; });
  if (run.shutter_kind == ShutterKind::angle) {
    const Rational turn_pulses = run.shutter_angle_deg / Rational(kFullTurnDeg) * pulses;
    add_safe_rates(rates, run, turn_pulses / run.sensor_rate,
                   [&](Rational n) { return turn_pulses / n; });
  }
  return rates.rising();
}

std::int64_t card_bound_bytes(const Codec& codec, std::int64_t stored_bytes_per_frame) {
  return std::holds_alternative<BitRateForm>(codec.form) ? 0 : stored_bytes_per_frame;
}

RateCeiling rate_ceiling(const SensorMode& mode, const Recording& recording, const Card& card,
                         std::int64_t stored_bytes_per_frame) {
  RateCeiling ceiling;
  lower(ceiling, mode.max_rate, RateLimit::mode);
  lower(ceiling, recording.max_rate, RateLimit::recording);
  if (stored_bytes_per_frame > 0) {
    lower(ceiling, Rational(card.write_bytes_per_s, stored_bytes_per_frame), RateLimit::card);
  }
  return ceiling;
}

RunReport run_report(const Running& run, const RateCeiling& ceiling) {
  RunReport report;
  report.project_rate = run.project_rate;
  report.sensor_rate = run.sensor_rate;
  report.exposure_s = exposure_s(run);
  const Rational angle = shutter_angle_deg(run);
  report.shutter_is_time = run.shutter_kind == ShutterKind::time;
  report.shutter_deg = angle.to_double();
  report.base_angle_deg = run.base_angle_deg.to_double();
  report.flicker.mains_hz = run.mains_hz.to_double();
  report.speed_factor = (run.sensor_rate / run.project_rate).to_double();
  const Rational base = run.base_angle_deg / (Rational(kFullTurnDeg) * run.project_rate);
  report.exposure_change_stops = std::log2(report.exposure_s.to_double() / base.to_double());
  report.flicker.safe = is_flicker_safe(run.sensor_rate, report.exposure_s, run.mains_hz);
  report.flicker.nearest_safe_shutter_deg =
      nearest_safe_angles(run.sensor_rate, angle, run.mains_hz);
  report.flicker.nearest_safe_rates = nearest_safe_rates(run);
  report.rate_ceiling = ceiling.rate;
  report.rate_limited_by = ceiling.limited_by;
  report.rate_allowed = !ceiling.rate || run.sensor_rate <= *ceiling.rate;
  return report;
}

}  // namespace widegate
