// Answers of rate, shutter and lights: what holds whole pulses, and what the format runs to.
#include "core/answer/finder.h"
#include "core/base/number_text.h"
#include "core/report/figure_text.h"

namespace widegate {
namespace {

constexpr std::string_view kAngle = "/run/shutter_angle_deg";
constexpr std::string_view kTime = "/run/shutter_time_s";
constexpr std::string_view kRate = "/run/sensor_rate";
constexpr std::string_view kLights = "/run/lights";

TypedField field(std::string_view pointer, std::string text) {
  return {std::string(pointer), std::move(text)};
}

std::string rate_text(Rational rate) { return short_number(rate.to_double(), 3) + " frames/s"; }

/// As the plan states its shutter; the other way of stating it is the outcome.
void add_shutter(Finder& finder, const Note& note, const SafeShutter& shutter) {
  const std::string angle = short_number(shutter.angle_deg.to_double(), 2) + "°";
  const std::string time = print_rational(shutter.time_s) + " s";
  const std::string safe = ", no flicker";
  if (finder.plan().run.shutter_kind == ShutterKind::time) {
    finder.add_if_mended(note, "Shutter " + time, angle + safe,
                         {field(kTime, print_rational(shutter.time_s))});
  } else {
    finder.add_if_mended(note, "Shutter " + angle, time + safe,
                         {field(kAngle, print_rational(shutter.angle_deg))});
  }
}

void add_daylight(Finder& finder, const Note& note) {
  if (finder.plan().run.lights != Lights::not_said) return;
  finder.add_if_mended(note, "It is daylight", "nothing pulses", {field(kLights, "steady")});
}

}  // namespace

void find_shutters(Finder& finder, const Note& note) {
  constexpr std::size_t kShutters = 2;
  const auto& safe = finder.report().run.flicker.nearest_safe_shutters;
  for (std::size_t i = 0; i < safe.size() && i < kShutters; ++i) {
    add_shutter(finder, note, safe[i]);
  }
  add_daylight(finder, note);
}

void find_lights(Finder& finder, const Note& note) {
  add_daylight(finder, note);
  for (const Rational rate : finder.report().run.flicker.nearest_safe_rates) {
    finder.add_if_mended(note, "Run at " + rate_text(rate), "no flicker at this shutter",
                         {field(kRate, print_rational(rate))});
  }
}

void find_rates(Finder& finder, const Note& note) {
  const RunReport& run = finder.report().run;
  if (run.rate_limited_by == RateLimit::card) find_cards(finder, note);
  find_formats(finder, note);
  if (!run.rate_ceiling) return;
  finder.add_if_mended(note, "Run at " + rate_text(*run.rate_ceiling),
                       "as fast as this format runs",
                       {field(kRate, print_rational(*run.rate_ceiling))});
}

}  // namespace widegate
