#include "core/report/light_drawing.h"

#include <cmath>
#include <numbers>

namespace widegate {

LightDrawing light_drawing(const RunReport& run) {
  constexpr int kFrames = 4;
  constexpr int kSteps = 240;
  const double rate = run.sensor_rate.to_double();
  const double exposure = run.exposure_s.to_double();
  LightDrawing drawing{.seconds = kFrames / rate, .light = {}, .frames = {}};
  const auto& pulses = run.flicker.pulses_hz;
  const double turns = pulses ? 2 * std::numbers::pi * pulses->to_double() : 0;
  // Half the wave and half the mean: from dark to the most there is.
  const bool too_fine = drawing.seconds * turns / (2 * std::numbers::pi) > kSteps / 6.0;
  const auto light = [&](double at) {
    if (!pulses) return 1.0;
    return too_fine ? 0.5 : (1 + std::cos(turns * at)) / 2;
  };
  drawing.light.reserve(kSteps + 1);
  for (int i = 0; i <= kSteps; ++i) {
    drawing.light.push_back(static_cast<float>(light(drawing.seconds * i / kSteps)));
  }
  for (int frame = 0; frame < kFrames; ++frame) {
    const double from = frame / rate;
    const double ripple = std::sin(turns * (from + exposure)) - std::sin(turns * from);
    const double mean = pulses ? (1 + ripple / (turns * exposure)) / 2 : 1.0;
    drawing.frames.push_back({.from = static_cast<float>(from / drawing.seconds),
                              .to = static_cast<float>((from + exposure) / drawing.seconds),
                              .collected = static_cast<float>(mean)});
  }
  return drawing;
}

}  // namespace widegate
