#include "core/run.h"

#include <algorithm>
#include <cmath>

namespace widegate {
namespace {

constexpr std::int64_t kFullTurnDeg = 360;
constexpr std::size_t kNearestCount = 4;

Rational pulses_per_s(Rational mains_hz) { return Rational(2) * mains_hz; }

/// Keeps the `kNearestCount` values nearest to `to`, rising, without repeats.
template <class Value, class Distance>
void keep_nearest(std::vector<Value>& values, Distance distance) {
  std::stable_sort(values.begin(), values.end(),
                   [&](const Value& a, const Value& b) { return distance(a) < distance(b); });
  if (values.size() > kNearestCount) values.resize(kNearestCount);
  std::sort(values.begin(), values.end());
  values.erase(std::unique(values.begin(), values.end()), values.end());
}

/// Whole numbers of 1 and up around a position in the sequence 1, 2, 3, ...
std::vector<std::int64_t> neighbours(Rational position) {
  std::vector<std::int64_t> around;
  const std::int64_t middle = position.floor();
  for (std::int64_t n = middle - 3; n <= middle + 4; ++n) {
    if (n >= 1) around.push_back(n);
  }
  return around;
}

Rational shutter_angle_deg(const Running& run) {
  return exposure_s(run) * Rational(kFullTurnDeg) * run.sensor_rate;
}

/// The safe candidates among rate(n) for whole n around the present rate's place.
template <class RateOf>
void add_safe_rates(std::vector<Rational>& rates, const Running& run, Rational place,
                    RateOf rate_of) {
  for (const std::int64_t n : neighbours(place)) {
    const Rational rate = rate_of(Rational(n));
    if (rate.ok() && rate != run.sensor_rate) rates.push_back(rate);
  }
}

std::vector<Rational> only_possible_at_time(std::vector<Rational> rates, Rational exposure) {
  std::erase_if(rates, [&](Rational rate) { return exposure * rate > Rational(1); });
  return rates;
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
  std::vector<double> angles;
  for (std::int64_t n = std::max<std::int64_t>(1, first); n <= std::min(most, first + 7); ++n) {
    angles.push_back((Rational(n) * one_pulse_deg).to_double());
  }
  const double wanted = angle_deg.to_double();
  keep_nearest(angles, [&](double angle) { return std::abs(angle - wanted); });
  return angles;
}

std::vector<Rational> nearest_safe_rates(const Running& run) {
  const Rational pulses = pulses_per_s(run.mains_hz);
  std::vector<Rational> rates;
  add_safe_rates(rates, run, pulses / run.sensor_rate, [&](Rational n) { return pulses / n; });
  if (run.shutter_kind == ShutterKind::angle) {
    const Rational turn = run.shutter_angle_deg / Rational(kFullTurnDeg);
    add_safe_rates(rates, run, exposure_s(run) * pulses,
                   [&](Rational n) { return turn * pulses / n; });
  } else {
    rates = only_possible_at_time(std::move(rates), run.shutter_time_s);
  }
  const double wanted = run.sensor_rate.to_double();
  std::sort(rates.begin(), rates.end());
  rates.erase(std::unique(rates.begin(), rates.end()), rates.end());
  keep_nearest(rates, [&](Rational rate) { return std::abs(rate.to_double() - wanted); });
  return rates;
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
