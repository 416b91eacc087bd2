#include "core/run/timecode.h"

namespace widegate {
namespace {

constexpr std::int64_t kLargestBase = 999;
constexpr std::int64_t kMinute = 60;
constexpr std::int64_t kHour = 60 * kMinute;

// Numbers left out before the number of this frame: `per_minute` for every minute begun, except
// each tenth.
std::int64_t numbers_dropped(std::int64_t frames, std::int64_t base) {
  const std::int64_t per_minute = base / 15;
  const std::int64_t whole_minute = kMinute * base;
  const std::int64_t short_minute = whole_minute - per_minute;
  const std::int64_t ten_minutes = whole_minute + 9 * short_minute;
  const std::int64_t tens = frames / ten_minutes;
  const std::int64_t rest = frames % ten_minutes;
  const std::int64_t begun = rest < whole_minute ? 0 : 1 + (rest - whole_minute) / short_minute;
  return per_minute * (9 * tens + begun);
}

std::string padded(std::int64_t value, std::size_t width) {
  std::string digits = std::to_string(value);
  if (digits.size() < width) digits.insert(0, width - digits.size(), '0');
  return digits;
}

}  // namespace

std::optional<std::int64_t> timecode_base(Rational rate) {
  const std::int64_t base = rate.ceil();
  if (!rate.ok() || base < 1 || base > kLargestBase) return std::nullopt;
  if (Rational(base) - rate > Rational(base, 1000)) return std::nullopt;
  return base;
}

bool has_drop_frame(Rational rate) {
  const std::optional<std::int64_t> base = timecode_base(rate);
  return base && *base % 30 == 0 && !rate.whole();
}

Timecode timecode_of(std::int64_t frames, std::int64_t base, TimecodeCount count) {
  const bool drop = count == TimecodeCount::drop;
  const std::int64_t number = frames + (drop ? numbers_dropped(frames, base) : 0);
  const std::int64_t seconds = number / base;
  return {.hours = seconds / kHour,
          .minutes = seconds % kHour / kMinute,
          .seconds = seconds % kMinute,
          .frames = number % base};
}

std::string timecode_text(std::int64_t frames, Rational rate, TimecodeCount count) {
  const bool drop = count == TimecodeCount::drop;
  const std::optional<std::int64_t> base = timecode_base(rate);
  if (!base || frames < 0 || (drop && !has_drop_frame(rate))) return {};
  const Timecode code = timecode_of(frames, *base, count);
  return padded(code.hours, 2) + ':' + padded(code.minutes, 2) + ':' + padded(code.seconds, 2) +
         (drop ? ';' : ':') + padded(code.frames, *base > 100 ? 3 : 2);
}

}  // namespace widegate
