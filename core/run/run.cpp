#include "core/run/run.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace widegate {
namespace {

constexpr std::int64_t kFullTurnDeg = 360;
constexpr std::ptrdiff_t kNearestCount = 4;
/// Under this nobody has ever seen it; above the other anybody may. common practice, no source
constexpr double kUnseenPercent = 1;
constexpr double kSeenPercent = 10;
/// Marks of shutter dials. common practice, no source
constexpr auto kUsualAnglesDeg =
    std::to_array<Rational>({45, 72, 75, 90, 108, 120, 144, 150, Rational(864, 5), 180, 216, 225,
                             270, 288, 300, Rational(1728, 5), 360});

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

Rational fraction_of(Rational value) { return value - Rational(value.floor()); }

/// Exposures of whole pulses at one rate.
class SafeShutters {
 public:
  SafeShutters(const Running& run, Rational pulses_hz)
      : by_time_(run.shutter_kind == ShutterKind::time),
        rate_(run.sensor_rate),
        pulses_hz_(pulses_hz),
        most_((pulses_hz / run.sensor_rate).floor()) {}

  /// The shutter of n pulses.
  [[nodiscard]] SafeShutter of(std::int64_t n) const {
    const Rational time = Rational(n) / pulses_hz_;
    const Rational exact = Rational(kFullTurnDeg) * rate_ * time;
    if (by_time_ || (exact * Rational(10)).whole())
      return {.angle_deg = exact, .exact_deg = exact, .time_s = time};
    const Rational angle = to_dial(exact);
    return {.angle_deg = angle, .exact_deg = exact, .time_s = time_of(angle)};
  }
  [[nodiscard]] bool fits(std::int64_t n) const { return n >= 1 && n <= most_; }

 private:
  [[nodiscard]] Rational time_of(Rational angle) const {
    return angle / (Rational(kFullTurnDeg) * rate_);
  }
  [[nodiscard]] bool unseen(Rational angle) const {
    return 100 * ripple_depth(pulses_hz_, time_of(angle)) < kUnseenPercent;
  }
  [[nodiscard]] Rational to_dial(Rational exact) const {
    const Rational half(1, 2);
    for (const Rational usual : kUsualAnglesDeg) {
      if (usual - exact <= half && exact - usual <= half && unseen(usual)) return usual;
    }
    const Rational tenths((exact * Rational(10) + half).floor(), 10);
    const bool dialled = tenths > Rational(0) && tenths <= Rational(kFullTurnDeg);
    return dialled && unseen(tenths) ? tenths : exact;
  }

  bool by_time_;
  Rational rate_;
  Rational pulses_hz_;
  std::int64_t most_;  // pulses in a full turn
};

Severity graded(const Flicker& flicker) {
  if (!flicker.pulses_hz || flicker.depth_percent < kUnseenPercent) return Severity::ok;
  const bool beats = flicker.beat_s.has_value();
  if (!beats && !flicker.bands) return Severity::ok;
  const bool strong = flicker.depth_percent > kSeenPercent && beats;
  return strong && flicker.lights != Lights::not_said ? Severity::fail : Severity::caution;
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

std::optional<Rational> light_pulses_hz(const Running& run) {
  switch (run.lights) {
    case Lights::steady:
      return std::nullopt;
    case Lights::frequency:
      return run.pulses_hz;
    case Lights::not_said:
    case Lights::mains:
      break;
  }
  return Rational(2) * run.mains_hz;
}

double ripple_depth(Rational pulses_hz, Rational exposure) {
  const Rational pulses = pulses_hz * exposure;
  const Rational part = fraction_of(pulses);
  if (part == Rational(0)) return 0;
  return std::sin(std::numbers::pi * part.to_double()) / (std::numbers::pi * pulses.to_double());
}

Rational beat_hz(Rational pulses_hz, Rational rate) {
  const std::int64_t nearest = (pulses_hz / rate + Rational(1, 2)).floor();
  const Rational apart = pulses_hz - Rational(nearest) * rate;
  return apart < Rational(0) ? Rational(0) - apart : apart;
}

std::vector<SafeShutter> nearest_safe_shutters(const Running& run, Rational pulses_hz) {
  const SafeShutters shutters(run, pulses_hz);
  const std::int64_t shorter = (exposure_s(run) * pulses_hz).floor();
  std::vector<SafeShutter> found;
  found.reserve(kNearestCount);
  for (std::int64_t step = 0; step < 2; ++step) {
    for (const std::int64_t n : {shorter - step, shorter + 1 + step}) {
      if (!shutters.fits(n)) continue;
      const SafeShutter shutter = shutters.of(n);
      if (std::find(found.begin(), found.end(), shutter) == found.end()) found.push_back(shutter);
    }
  }
  return found;
}

std::vector<Rational> nearest_safe_rates(const Running& run, Rational pulses_hz) {
  Nearest<Rational> rates(run.sensor_rate.to_double());
  // A shutter that keeps its angle holds whole pulses at some rates; one that keeps its time holds
  // the same pulses at every rate, which only the start of the frames can set right.
  const bool by_angle = run.shutter_kind == ShutterKind::angle;
  const Rational in_turn =
      by_angle ? run.shutter_angle_deg / Rational(kFullTurnDeg) * pulses_hz : pulses_hz;
  const std::int64_t middle = (in_turn / run.sensor_rate).floor();
  for (std::int64_t n = std::max<std::int64_t>(1, middle - 3); n <= middle + 4; ++n) {
    const Rational rate = in_turn / Rational(n);
    const bool too_fast = !by_angle && run.shutter_time_s * rate > Rational(1);
    if (rate.ok() && rate != run.sensor_rate && !too_fast) rates.add(rate, rate.to_double());
  }
  return rates.rising();
}

Flicker flicker_of(const Running& run, std::optional<double> read_out_s) {
  Flicker flicker;
  flicker.lights = run.lights;
  flicker.mains_hz = run.mains_hz.to_double();
  flicker.pulses_hz = light_pulses_hz(run);
  flicker.read_out_s = read_out_s;
  if (!flicker.pulses_hz) return flicker;
  const Rational pulses = *flicker.pulses_hz;
  const Rational exposure = exposure_s(run);
  const Rational beat = beat_hz(pulses, run.sensor_rate);
  flicker.pulses_per_exposure = (exposure * pulses).to_double();
  flicker.pulses_per_frame = (pulses / run.sensor_rate).to_double();
  flicker.depth_percent = 100 * ripple_depth(pulses, exposure);
  flicker.beat_hz = beat.to_double();
  if (beat > Rational(0)) flicker.beat_s = 1 / flicker.beat_hz;
  const bool rolling = !read_out_s || *read_out_s > 0;
  flicker.bands = rolling && !flicker.beat_s && flicker.depth_percent >= kUnseenPercent;
  if (read_out_s) flicker.band_count = *read_out_s * pulses.to_double();
  flicker.nearest_safe_shutters = nearest_safe_shutters(run, pulses);
  flicker.nearest_safe_rates = nearest_safe_rates(run, pulses);
  flicker.grade = graded(flicker);
  return flicker;
}

std::int64_t card_bound_bytes(const Codec& codec, std::int64_t stored_bytes_per_frame) {
  return std::holds_alternative<BitRateForm>(codec.form) ? 0 : stored_bytes_per_frame;
}

RateCeiling rate_ceiling(const Camera& camera, const SensorMode& mode, const Recording& recording,
                         const Card& card, std::int64_t stored_bytes_per_frame) {
  RateCeiling ceiling;
  lower(ceiling, mode.max_rate, RateLimit::mode);
  lower(ceiling, recording.max_rate, RateLimit::recording);
  if (stored_bytes_per_frame > 0) {
    lower(ceiling, Rational(card.write_bytes_per_s, stored_bytes_per_frame), RateLimit::card);
  }
  lower(ceiling, camera.max_rate, RateLimit::camera);
  return ceiling;
}

RunReport run_report(const Running& run, const RateCeiling& ceiling,
                     std::optional<double> read_out_s) {
  RunReport report;
  report.project_rate = run.project_rate;
  report.sensor_rate = run.sensor_rate;
  report.exposure_s = exposure_s(run);
  const Rational angle = shutter_angle_deg(run);
  report.shutter_is_time = run.shutter_kind == ShutterKind::time;
  report.shutter_deg = angle.to_double();
  report.base_angle_deg = run.base_angle_deg.to_double();
  report.flicker = flicker_of(run, read_out_s);
  report.speed_factor = (run.sensor_rate / run.project_rate).to_double();
  const Rational base = run.base_angle_deg / (Rational(kFullTurnDeg) * run.project_rate);
  report.exposure_change_stops = std::log2(report.exposure_s.to_double() / base.to_double());
  report.rate_ceiling = ceiling.rate;
  report.rate_limited_by = ceiling.limited_by;
  report.rate_allowed = !ceiling.rate || run.sensor_rate <= *ceiling.rate;
  return report;
}

}  // namespace widegate
