// Exposure, speed, flicker and the rate ceiling: published tables, light added up frame by frame,
// and the nearest safe settings against a search through all of them.
#include "core/run/run.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <set>

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

/// The four angles of the row nearest to `wanted`, rising.
std::vector<double> nearest_of(const FlickerRow& row, double wanted) {
  std::vector<double> angles(row.angles_deg.begin(),
                             row.angles_deg.begin() + static_cast<std::ptrdiff_t>(row.count));
  std::stable_sort(angles.begin(), angles.end(),
                   [&](double a, double b) { return std::abs(a - wanted) < std::abs(b - wanted); });
  if (angles.size() > 4) angles.resize(4);
  std::sort(angles.begin(), angles.end());
  return angles;
}

TEST_CASE("Shutter angles that hold whole pulses of the lights") {
  for (const FlickerRow& row : kFlicker) {
    CAPTURE(print_rational(row.rate));
    CAPTURE(row.mains_hz);
    for (const Rational wanted : {Rational(180), Rational(1), Rational(360), Rational(864, 5)}) {
      const auto found = nearest_safe_angles(row.rate, wanted, row.mains_hz);
      const auto published = nearest_of(row, wanted.to_double());
      REQUIRE(found.size() == published.size());
      for (std::size_t i = 0; i < found.size(); ++i) {
        CHECK(found[i] == doctest::Approx(published[i]).epsilon(1e-8));
      }
    }
    // 7 degrees hold no whole pulse at any of these rates.
    const Running run{.sensor_rate = row.rate, .shutter_angle_deg = 7, .mains_hz = row.mains_hz};
    CHECK(is_flicker_safe(row.rate, exposure_s(run), row.mains_hz) == row.any_angle_safe);
  }
}

TEST_CASE("Well-known safe settings") {
  CHECK(is_flicker_safe(24, Rational(1, 50), 50));        // 172.8 degrees
  CHECK_FALSE(is_flicker_safe(24, Rational(1, 48), 50));  // 180 degrees
  CHECK(is_flicker_safe(24, Rational(1, 48), 60));        // any angle at 24 under 60 Hz
  CHECK_FALSE(is_flicker_safe(Rational(24000, 1001), Rational(1001, 48000), 60));
  CHECK(is_flicker_safe(25, Rational(1, 33), 50));
  CHECK_FALSE(is_flicker_safe(120, Rational(1, 240), 50));
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

TEST_CASE("Every frame collects the same light where it is called safe, and not elsewhere") {
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
    const bool safe = is_flicker_safe(rate, exposure, mains);
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

TEST_CASE("The nearest safe angles are the nearest of all") {
  const std::uint64_t seed = 20261117;
  CAPTURE(seed);
  Dice dice(seed);
  for (int round = 0; round < 2000; ++round) {
    const Rational rate =
        dice.one_in(2) ? dice.pick(kRates) : testing::draw_field(dice, "/run/sensor_rate");
    const Rational mains =
        dice.one_in(2) ? Rational(50) : testing::draw_field(dice, "/run/mains_hz");
    const Rational wanted = testing::draw_field(dice, "/run/shutter_angle_deg");
    const auto found = nearest_safe_angles(rate, wanted, mains);
    const double pulse_deg = 180 * rate.to_double() / mains.to_double();
    std::vector<double> all;
    for (int n = 1; n * pulse_deg <= 360 * (1 + 1e-12) && n < 200'000; ++n)
      all.push_back(n * pulse_deg);
    REQUIRE(found.size() == std::min<std::size_t>(4, all.size()));
    REQUIRE(std::is_sorted(found.begin(), found.end()));
    // The farthest of the four is no farther than the fourth nearest of all.
    std::vector<double> distances;
    for (const double angle : all) distances.push_back(std::abs(angle - wanted.to_double()));
    std::sort(distances.begin(), distances.end());
    for (const double angle : found) {
      REQUIRE(angle <= 360);
      REQUIRE(std::abs(angle - wanted.to_double()) <= distances[found.size() - 1] + 1e-9);
    }
  }
}

/// Every rate from 1 to 1000 that is safe with this shutter, by going through all pulse counts.
std::set<double> all_safe_rates(const Running& run) {
  const Rational pulses = Rational(2) * run.mains_hz;
  std::set<double> rates;
  for (std::int64_t n = 1; n <= 800; ++n) {
    const Rational per_frame = pulses / Rational(n);
    const bool angle = run.shutter_kind == ShutterKind::angle;
    if (angle || run.shutter_time_s * per_frame <= Rational(1)) rates.insert(per_frame.to_double());
    if (angle) rates.insert((run.shutter_angle_deg / Rational(360) * per_frame).to_double());
  }
  rates.erase(run.sensor_rate.to_double());
  return rates;
}

TEST_CASE("The nearest safe rates are safe, and the nearest of all") {
  const std::uint64_t seed = 20261118;
  CAPTURE(seed);
  Dice dice(seed);
  for (int round = 0; round < 2000; ++round) {
    Running run;
    run.sensor_rate = dice.pick(kRates);
    run.mains_hz = dice.one_in(2) ? 50 : 60;
    run.shutter_angle_deg = Rational(dice.whole(100, 3600), 10);
    if (dice.one_in(3)) {
      run.shutter_kind = ShutterKind::time;
      run.shutter_time_s = Rational(1, run.sensor_rate.ceil() + dice.whole(0, 200));
    }
    CAPTURE(print_rational(run.sensor_rate));
    CAPTURE(print_rational(run.shutter_angle_deg));
    const auto found = nearest_safe_rates(run);
    REQUIRE(found.size() == 4);
    const double wanted = run.sensor_rate.to_double();
    std::vector<double> distances;
    for (const double rate : all_safe_rates(run)) distances.push_back(std::abs(rate - wanted));
    std::sort(distances.begin(), distances.end());
    for (std::size_t i = 0; i < found.size(); ++i) {
      if (i > 0) REQUIRE(found[i - 1] < found[i]);
      REQUIRE(found[i] != run.sensor_rate);
      Running there = run;
      there.sensor_rate = found[i];
      REQUIRE(is_flicker_safe(found[i], exposure_s(there), run.mains_hz));
      REQUIRE(exposure_s(there) * found[i] <= Rational(1));
      REQUIRE(std::abs(found[i].to_double() - wanted) <= distances[3] + 1e-9);
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
    REQUIRE((report.exposure_s * Rational(2) * run.mains_hz).ok());
    REQUIRE((Rational(2) * run.mains_hz / run.sensor_rate).ok());
    for (const Rational rate : report.flicker.nearest_safe_rates) REQUIRE(rate.ok());
    for (const double angle : report.flicker.nearest_safe_shutter_deg) {
      REQUIRE(angle > 0);
      REQUIRE(angle <= 360);
    }
  }
}

TEST_CASE("The rate ceiling is the lowest of mode, option and card") {
  SensorMode mode;
  Recording recording;
  Card card;
  card.write_bytes_per_s = 400'000'000;
  const auto ceiling = [&](std::int64_t frame_bytes) {
    return rate_ceiling(mode, recording, card, frame_bytes);
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
}

TEST_CASE("A rate is allowed up to the ceiling and not beyond") {
  const RateCeiling ceiling{.rate = Rational(60000, 1001), .limited_by = RateLimit::mode};
  CHECK(run_report({.sensor_rate = Rational(60000, 1001)}, ceiling).rate_allowed);
  CHECK_FALSE(run_report({.sensor_rate = 60}, ceiling).rate_allowed);
  CHECK(run_report({.sensor_rate = 10000}, {}).rate_allowed);
}

}  // namespace
}  // namespace widegate
