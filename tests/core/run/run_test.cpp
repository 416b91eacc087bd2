// Exposure, speed, flicker and the rate ceiling: published tables, light added up frame by frame,
// and the nearest safe settings against a search through all of them.
#include "core/run/run.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include "core/base/number_text.h"
#include "tests/core/support/draws.h"

namespace widegate {
namespace {

using testing::Dice;

struct ShutterRow {
  Rational rate, angle_deg, exposure_s;
  double stops;
};
constexpr auto kShutters = std::to_array<ShutterRow>({
#include "tests/data/shutter.inc"
});

TEST_CASE("Exposure of a shutter angle, and stops against 1/48 s") {
  for (const ShutterRow& row : kShutters) {
    CAPTURE(print_rational(row.rate));
    CAPTURE(print_rational(row.angle_deg));
    Running run{.sensor_rate = row.rate, .shutter_angle_deg = row.angle_deg};
    CHECK(exposure_s(run) == row.exposure_s);
    const RunReport report = run_report(run, {});
    CHECK(report.exposure_change_stops == doctest::Approx(row.stops).epsilon(1e-7).scale(1e-2));
    CHECK(report.shutter_deg == doctest::Approx(row.angle_deg.to_double()).epsilon(1e-15));
    // The same exposure stated as a time gives the same angle.
    run.shutter_kind = ShutterKind::time;
    run.shutter_time_s = row.exposure_s;
    CHECK(run_report(run, {}).shutter_deg == report.shutter_deg);
    CHECK(run_report(run, {}).exposure_change_stops == report.exposure_change_stops);
  }
}

TEST_CASE("Speed and exposure at the base are exactly 1 and 0") {
  const RunReport usual =
      run_report({.project_rate = Rational(24000, 1001), .sensor_rate = Rational(24000, 1001)}, {});
  CHECK(usual.speed_factor == 1);
  CHECK(usual.exposure_change_stops == 0);
  const RunReport slow_motion = run_report({.project_rate = 24, .sensor_rate = 96}, {});
  CHECK(slow_motion.speed_factor == 4);
  CHECK(slow_motion.exposure_change_stops == -2);
}

struct FlickerRow {
  Rational rate;
  std::int64_t mains_hz;
  bool any_angle_safe;
  std::size_t count;
  std::array<double, 5> angles_deg;
};
constexpr auto kFlicker = std::to_array<FlickerRow>({
#include "tests/data/flicker_angles.inc"
});

Running lit(Rational rate, Rational angle, Rational mains) {
  return {
      .sensor_rate = rate, .shutter_angle_deg = angle, .lights = Lights::mains, .mains_hz = mains};
}

TEST_CASE("Shutter angles that hold whole pulses of the lights") {
  for (const FlickerRow& row : kFlicker) {
    CAPTURE(print_rational(row.rate));
    CAPTURE(row.mains_hz);
    const std::vector<double> published(
        row.angles_deg.begin(), row.angles_deg.begin() + static_cast<std::ptrdiff_t>(row.count));
    for (const Rational wanted : {Rational(180), Rational(1), Rational(360), Rational(864, 5)}) {
      const auto found =
          nearest_safe_shutters(lit(row.rate, wanted, row.mains_hz), 2 * row.mains_hz);
      REQUIRE(found.size() <= std::min<std::size_t>(4, row.count));
      if (row.count == 0) continue;
      REQUIRE_FALSE(found.empty());
      // The first is the nearest that is not longer, where there is one.
      const double first = found.front().exact_deg.to_double();
      const double wanted_deg = wanted.to_double() + 1e-6;
      const auto longer = std::upper_bound(published.begin(), published.end(), wanted_deg);
      const double nearest = longer == published.begin() ? published.front() : *(longer - 1);
      CHECK(first == doctest::Approx(nearest).epsilon(1e-8));
      for (const SafeShutter& safe : found) {
        CHECK(std::any_of(published.begin(), published.end(), [&](double angle) {
          return std::abs(safe.exact_deg.to_double() - angle) < 1e-5;
        }));
        CHECK(100 * ripple_depth(2 * row.mains_hz, safe.time_s) < 1);
      }
    }
  }
}

TEST_CASE("A safe angle is offered as one that can be dialled") {
  struct Row {
    Rational rate, angle;
    std::int64_t mains_hz;
    Rational first;
  };
  for (const Row& row : std::to_array<Row>({
           {24, 180, 50, Rational(864, 5)},                     // exactly 172.8
           {Rational(24000, 1001), 180, 50, Rational(864, 5)},  // 172.63
           {Rational(24000, 1001), 180, 60, 144},               // 143.86
           {Rational(30000, 1001), 180, 60, 180},               // 179.82
           {25, 11, 50, 90},                                    // none is shorter
       })) {
    CAPTURE(print_rational(row.rate));
    const auto found =
        nearest_safe_shutters(lit(row.rate, row.angle, row.mains_hz), 2 * row.mains_hz);
    REQUIRE_FALSE(found.empty());
    CHECK(found.front().angle_deg == row.first);
  }
  const Running timed{
      .sensor_rate = 24, .shutter_kind = ShutterKind::time, .shutter_time_s = Rational(1, 48)};
  CHECK(nearest_safe_shutters(timed, 100).front().time_s == Rational(1, 50));
}

TEST_CASE("Depth, beat and grade of well-known settings") {
  struct Row {
    Rational rate, angle;
    std::int64_t mains_hz;
    double depth_percent;
    std::optional<double> beat_s;
    Severity grade;
    bool bands;
  };
  // Depths worked out apart from this project: |sin(pi x) / (pi x)|, x pulses in an exposure.
  for (const Row& row : std::to_array<Row>({
           {24, 180, 50, 3.95, 0.25, Severity::caution, false},
           {Rational(30000, 1001), 180, 60, 0.10, 1001.0 / 120, Severity::ok, false},
           {Rational(24000, 1001), Rational(864, 5), 50, 0.10, 1001.0 / 4100, Severity::ok, false},
           {25, Rational(45, 4), 50, 97.45, std::nullopt, Severity::caution, true},
           {24, 180, 60, 12.73, std::nullopt, Severity::caution, true},
           {120, 180, 50, 73.8, 1.0 / 20, Severity::fail, false},
           {250, 360, 50, 75.68, 1.0 / 100, Severity::fail, false},  // nought is a multiple too
           {24, Rational(864, 5), 50, 0, 0.25, Severity::ok, false},
       })) {
    CAPTURE(print_rational(row.rate));
    CAPTURE(print_rational(row.angle));
    CAPTURE(row.mains_hz);
    const Flicker flicker = flicker_of(lit(row.rate, row.angle, row.mains_hz), std::nullopt);
    CHECK(std::abs(flicker.depth_percent - row.depth_percent) < 0.006 * (1 + row.depth_percent));
    REQUIRE(flicker.beat_s.has_value() == row.beat_s.has_value());
    if (row.beat_s) CHECK(*flicker.beat_s == doctest::Approx(*row.beat_s).epsilon(1e-9));
    CHECK(flicker.grade == row.grade);
    CHECK(flicker.bands == row.bands);
  }
}

TEST_CASE("What is known of the lights and the sensor decides how bad a ripple is") {
  Running run = lit(120, 180, 50);
  run.lights = Lights::not_said;
  CHECK(flicker_of(run, std::nullopt).grade == Severity::caution);
  run.lights = Lights::steady;
  CHECK(flicker_of(run, std::nullopt).grade == Severity::ok);
  CHECK_FALSE(flicker_of(run, std::nullopt).pulses_hz.has_value());
  run.lights = Lights::frequency;
  run.pulses_hz = 240;  // a whole pulse in each exposure
  CHECK(flicker_of(run, std::nullopt).grade == Severity::ok);
  // A ripple that does not beat: bands with a rolling shutter, nothing at all without one.
  const Running still = lit(25, Rational(45, 4), 50);
  CHECK(flicker_of(still, 0.008).bands);
  CHECK(flicker_of(still, 0.008).band_count.value() == doctest::Approx(0.8));
  CHECK_FALSE(flicker_of(still, 0.0).bands);
  CHECK(flicker_of(still, 0.0).grade == Severity::ok);
}

/// Light collected from t0 on by a lamp whose brightness pulses `pulses` times a second with a
/// skewed wave (two harmonics, never dark).
double light(double t0, double exposure, double pulses) {
  const double w = 2 * std::numbers::pi * pulses;
  const auto integral = [w](double t) {
    return t + 0.5 * std::sin(w * t + 0.3) / w + 0.25 * std::sin(2 * w * t + 1.1) / (2 * w);
  };
  return integral(t0 + exposure) - integral(t0);
}

/// Largest difference between frames, as a share of the mean.
double spread_over_frames(Rational rate, Rational exposure, Rational mains_hz) {
  const double pulses = 2 * mains_hz.to_double();
  double least = 1e300;
  double most = 0;
  // Frames start at phases n pulses/rate; the denominator is how many there are.
  const std::int64_t phases = (Rational(2) * mains_hz / rate).den();
  for (std::int64_t n = 0; n < std::min<std::int64_t>(phases, 4000); ++n) {
    const Rational start = Rational(n) / rate;
    const Rational phase = start * Rational(2) * mains_hz;
    const double t0 = (phase - Rational(phase.floor())).to_double() / pulses;
    const double collected = light(t0, exposure.to_double(), pulses);
    least = std::min(least, collected);
    most = std::max(most, collected);
  }
  return (most - least) / exposure.to_double();
}

constexpr auto kRates = std::to_array<Rational>(
    {Rational(24000, 1001), 24, 25, Rational(30000, 1001), 30, 48, 50, Rational(60000, 1001), 60,
     96, 100, 120, 12, 18, 22, 33, Rational(100, 3), Rational(25, 2)});

TEST_CASE("Every frame collects the same light where nothing ripples or beats, and not elsewhere") {
  const std::uint64_t seed = 20261116;
  CAPTURE(seed);
  Dice dice(seed);
  int safe_count = 0;
  int unsafe_count = 0;
  for (int round = 0; round < 3000; ++round) {
    const Rational rate = dice.pick(kRates);
    const Rational mains = dice.pick(std::to_array<Rational>({50, 60, Rational(4997, 100)}));
    // Half the time a whole number of pulses, otherwise any tenth of a degree.
    Rational angle(dice.whole(1, 3600), 10);
    const Rational pulse_deg = Rational(360) * rate / (Rational(2) * mains);
    const std::int64_t most = (Rational(360) / pulse_deg).floor();
    if (dice.one_in(2) && most > 0) angle = pulse_deg * Rational(dice.whole(1, most));
    const Rational exposure = angle / (Rational(360) * rate);
    const Rational pulses = Rational(2) * mains;
    const bool safe = ripple_depth(pulses, exposure) == 0 || beat_hz(pulses, rate) == Rational(0);
    CAPTURE(print_rational(rate));
    CAPTURE(print_rational(angle));
    CAPTURE(print_rational(mains));
    const double spread = spread_over_frames(rate, exposure, mains);
    if (safe) {
      REQUIRE(spread < 1e-11);
    } else {
      REQUIRE(spread > 1e-7);
    }
    ++(safe ? safe_count : unsafe_count);
  }
  CHECK(safe_count > 500);
  CHECK(unsafe_count > 500);
}

TEST_CASE("The nearest safe angles are the nearest on either side") {
  const std::uint64_t seed = 20261117;
  CAPTURE(seed);
  Dice dice(seed);
  for (int round = 0; round < 2000; ++round) {
    const Rational rate =
        dice.one_in(2) ? dice.pick(kRates) : testing::draw_field(dice, "/run/sensor_rate");
    const Rational mains =
        dice.one_in(2) ? Rational(50) : testing::draw_field(dice, "/run/mains_hz");
    const Rational wanted = testing::draw_field(dice, "/run/shutter_angle_deg");
    const auto found = nearest_safe_shutters(lit(rate, wanted, mains), Rational(2) * mains);
    const double pulse_deg = 180 * rate.to_double() / mains.to_double();
    const double all = std::floor(360 / pulse_deg + 1e-12);
    REQUIRE(found.size() <= 4);
    REQUIRE(found.empty() == (all < 1));
    for (const SafeShutter& safe : found) {
      REQUIRE(safe.angle_deg.ok());
      REQUIRE(safe.time_s.ok());
      REQUIRE(safe.angle_deg <= Rational(360));
      const double apart = std::abs(safe.exact_deg.to_double() - wanted.to_double());
      REQUIRE(apart <= 2 * pulse_deg + std::max(0.0, wanted.to_double() - 360 + pulse_deg) + 1e-9);
    }
    if (all >= 1 && wanted.to_double() >= pulse_deg && wanted.to_double() < 360 - pulse_deg) {
      REQUIRE(found.front().exact_deg <= wanted);
    }
  }
}

TEST_CASE("At the nearest safe rates an angle holds whole pulses, a time starts level") {
  const std::uint64_t seed = 20261118;
  CAPTURE(seed);
  Dice dice(seed);
  for (int round = 0; round < 2000; ++round) {
    Running run =
        lit(dice.pick(kRates), Rational(dice.whole(100, 3600), 10), dice.one_in(2) ? 50 : 60);
    const Rational pulses = Rational(2) * run.mains_hz;
    if (dice.one_in(3)) {
      run.shutter_kind = ShutterKind::time;
      run.shutter_time_s = Rational(1, run.sensor_rate.ceil() + dice.whole(0, 200));
    }
    CAPTURE(print_rational(run.sensor_rate));
    CAPTURE(print_rational(run.shutter_angle_deg));
    const auto found = nearest_safe_rates(run, pulses);
    REQUIRE_FALSE(found.empty());
    for (std::size_t i = 0; i < found.size(); ++i) {
      if (i > 0) REQUIRE(found[i - 1] < found[i]);
      REQUIRE(found[i] != run.sensor_rate);
      Running there = run;
      there.sensor_rate = found[i];
      const bool whole = ripple_depth(pulses, exposure_s(there)) == 0;
      const bool level = beat_hz(pulses, found[i]) == Rational(0);
      REQUIRE((run.shutter_kind == ShutterKind::angle ? whole : level));
      REQUIRE(exposure_s(there) * found[i] <= Rational(1));
    }
  }
}

TEST_CASE("No rate, shutter or mains a plan may hold overflows") {
  const std::uint64_t seed = 20261119;
  CAPTURE(seed);
  Dice dice(seed);
  for (int round = 0; round < 20000; ++round) {
    Running run;
    run.project_rate = testing::draw_field(dice, "/run/project_rate");
    run.sensor_rate = testing::draw_field(dice, "/run/sensor_rate");
    run.shutter_angle_deg = testing::draw_field(dice, "/run/shutter_angle_deg");
    run.base_angle_deg = testing::draw_field(dice, "/run/base_angle_deg");
    run.mains_hz = testing::draw_field(dice, "/run/mains_hz");
    run.pulses_hz = testing::draw_field(dice, "/run/pulses_hz");
    run.lights = dice.one_in(2) ? Lights::mains : Lights::frequency;
    const Rational time = testing::draw_field(dice, "/run/shutter_time_s");
    if (time * run.sensor_rate <= Rational(1)) {
      run.shutter_kind = ShutterKind::time;
      run.shutter_time_s = time;
    }
    const RunReport report = run_report(run, {});
    REQUIRE(report.exposure_s.ok());
    REQUIRE(report.exposure_s > Rational(0));
    REQUIRE(report.shutter_deg > 0);
    REQUIRE(report.shutter_deg <= 360);
    REQUIRE(std::isfinite(report.speed_factor));
    REQUIRE(std::isfinite(report.exposure_change_stops));
    REQUIRE(report.flicker.depth_percent >= 0);
    REQUIRE(report.flicker.depth_percent <= 100);
    REQUIRE(report.flicker.beat_hz >= 0);
    REQUIRE(report.flicker.beat_hz <= run.sensor_rate.to_double() / 2 * (1 + 1e-12));
    for (const Rational rate : report.flicker.nearest_safe_rates) REQUIRE(rate.ok());
    for (const SafeShutter& safe : report.flicker.nearest_safe_shutters) {
      REQUIRE(safe.angle_deg > Rational(0));
      REQUIRE(safe.angle_deg <= Rational(360));
      REQUIRE(safe.time_s > Rational(0));
    }
  }
}

TEST_CASE("The rate ceiling is the lowest of mode, option, card and camera") {
  Camera camera;
  SensorMode mode;
  Recording recording;
  Card card;
  card.write_bytes_per_s = 400'000'000;
  const auto ceiling = [&](std::int64_t frame_bytes) {
    return rate_ceiling(camera, mode, recording, card, frame_bytes);
  };
  CHECK_FALSE(ceiling(0).rate.has_value());
  CHECK(ceiling(0).limited_by == RateLimit::none);
  CHECK(ceiling(10'000'000).rate.value() == Rational(40));
  CHECK(ceiling(10'000'000).limited_by == RateLimit::card);
  mode.max_rate = 60;
  CHECK(ceiling(0).limited_by == RateLimit::mode);
  CHECK(ceiling(1'000'000).rate.value() == Rational(60));
  recording.max_rate = 120;  // may exceed the mode's figure, never its effect
  CHECK(ceiling(0).rate.value() == Rational(60));
  CHECK(ceiling(0).limited_by == RateLimit::mode);
  recording.max_rate = 50;
  CHECK(ceiling(0).limited_by == RateLimit::recording);
  CHECK(ceiling(8'000'000).limited_by == RateLimit::recording);  // a tie names the earlier
  CHECK(ceiling(8'000'001).limited_by == RateLimit::card);
  camera.max_rate = 24;
  CHECK(ceiling(0).limited_by == RateLimit::camera);
}

TEST_CASE("A rate is allowed up to the ceiling and not beyond") {
  const RateCeiling ceiling{.rate = Rational(60000, 1001), .limited_by = RateLimit::mode};
  CHECK(run_report({.sensor_rate = Rational(60000, 1001)}, ceiling).rate_allowed);
  CHECK_FALSE(run_report({.sensor_rate = 60}, ceiling).rate_allowed);
  CHECK(run_report({.sensor_rate = 10000}, {}).rate_allowed);
}

}  // namespace
}  // namespace widegate
