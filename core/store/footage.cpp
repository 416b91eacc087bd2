#include "core/store/footage.h"

#include <cmath>

namespace widegate {
namespace {

constexpr std::int64_t kSecondUs = 1'000'000;
constexpr double kMinuteUs = 60e6;
constexpr double kHourUs = 3600e6;
constexpr std::int64_t kSampleRate = 48'000;
constexpr std::int64_t kBytesPerSample = 3;

}  // namespace

std::int64_t microseconds_of_hours(double hours) { return std::llround(hours * kHourUs); }
std::int64_t microseconds_of_minutes(double minutes) { return std::llround(minutes * kMinuteUs); }

Quotient Stream::bytes_per_s() const {
  return {Wide(frame_bytes) * rate.num() + Wide(audio_bytes_per_s) * rate.den(), rate.den()};
}

std::int64_t audio_bytes_per_s(const Running& run) {
  const bool at_speed = run.sensor_rate == run.project_rate;
  return at_speed ? run.audio_channels * kSampleRate * kBytesPerSample : 0;
}

std::optional<Stream> stream_of(std::int64_t frame_bytes, const Running& run,
                                const Container& container) {
  const std::int64_t audio = audio_bytes_per_s(run);
  const std::int64_t channels = audio > 0 ? run.audio_channels : 0;
  const auto stored = (Wide(frame_bytes) + container.bytes_per_frame +
                       Wide(container.audio_bytes_per_frame_and_channel) * channels)
                          .count();
  if (!stored) return std::nullopt;
  return Stream{.frame_bytes = *stored, .audio_bytes_per_s = audio, .rate = run.sensor_rate};
}

Footage footage_of(const Plan& plan) {
  const Shooting& shooting = plan.shooting;
  Footage footage{.sensor_rate = plan.run.sensor_rate,
                  .camera_days = shooting.days * shooting.units * shooting.cameras_per_unit};
  switch (shooting.by) {
    case ShootingBy::recorded_hours:
      footage.microseconds = microseconds_of_hours(shooting.recorded_hours_per_day);
      footage.rate = plan.run.sensor_rate;
      break;
    case ShootingBy::ratio:
      footage.microseconds =
          microseconds_of_minutes(shooting.script_minutes * shooting.shooting_ratio);
      footage.whole_shoot = true;
      footage.rate = plan.run.project_rate;
      break;
  }
  return footage;
}

Quotient Footage::frames_per_day() const {
  const std::int64_t shared = whole_shoot ? camera_days : 1;
  return {Wide(microseconds) * rate.num(), Wide(kSecondUs) * rate.den() * shared};
}

Quotient Footage::microseconds_per_day() const {
  if (!whole_shoot) return {microseconds, 1};
  const Quotient frames = frames_per_day();
  return {frames.num * kSecondUs * sensor_rate.den(), frames.den * sensor_rate.num()};
}

double Footage::playing_seconds(Rational project_rate) const {
  return frames_per_day().to_double() * static_cast<double>(camera_days) / project_rate.to_double();
}

FootageBytes Footage::bytes(Stream stream) const {
  stream.rate = rate;
  const Quotient bytes_per_s = stream.bytes_per_s();
  const Quotient stated{bytes_per_s.num * microseconds, bytes_per_s.den * kSecondUs};
  if (whole_shoot) return {.per_day = {stated.num, stated.den * camera_days}, .total = stated};
  return {.per_day = stated, .total = {stated.num * camera_days, stated.den}};
}

}  // namespace widegate
