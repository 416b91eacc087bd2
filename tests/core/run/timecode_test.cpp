// Time code against published frame counts and a day counted frame by frame.
#include "core/run/timecode.h"

#include <doctest/doctest.h>

#include <array>
#include <string>
#include <string_view>

namespace widegate {
namespace {

constexpr Rational kNtscFilm(24000, 1001);
constexpr Rational kNtsc(30000, 1001);
constexpr Rational kNtscDouble(60000, 1001);

struct DropFrameRow {
  Rational rate;
  std::int64_t frames;
  std::string_view timecode;
};
constexpr auto kDropFrameRows = std::to_array<DropFrameRow>({
#include "tests/data/drop_frame.inc"
});

TEST_CASE("Drop-frame time code at its turning points") {
  for (const DropFrameRow& row : kDropFrameRows) {
    CAPTURE(row.frames);
    std::string text = timecode_text(row.frames, row.rate, TimecodeCount::drop);
    // The table is a time of day and starts again at midnight; a length runs on.
    if (text.starts_with("24:")) text.replace(0, 2, "00");
    CHECK(text == row.timecode);
  }
}

// Time code counted up one frame at a time, by the wording of the rule alone.
class Odometer {
 public:
  Odometer(std::int64_t base, bool drop) : base_(base), drop_(drop) {}
  [[nodiscard]] const Timecode& now() const { return now_; }
  void step() {
    if (++now_.frames < base_) return;
    now_.frames = 0;
    if (++now_.seconds < 60) return;
    now_.seconds = 0;
    if (++now_.minutes == 60) {
      now_.minutes = 0;
      ++now_.hours;
    }
    if (drop_ && now_.minutes % 10 != 0) now_.frames = base_ / 15;
  }

 private:
  std::int64_t base_;
  bool drop_;
  Timecode now_;
};

// Frames until the odometer shows 24 hours; -1 if time code differs anywhere on the way.
std::int64_t sweep_day(std::int64_t base, TimecodeCount count) {
  Odometer odometer(base, count == TimecodeCount::drop);
  std::int64_t frame = 0;
  for (; odometer.now().hours < 24; ++frame) {
    if (timecode_of(frame, base, count) != odometer.now()) return -1;
    odometer.step();
  }
  return frame;
}

TEST_CASE("Time code agrees with an odometer over a whole day") {
  CHECK(sweep_day(30, TimecodeCount::drop) == 2'589'408);
  CHECK(sweep_day(60, TimecodeCount::drop) == 5'178'816);
  for (const std::int64_t base : {24, 25, 30, 48, 50, 60}) {
    CAPTURE(base);
    CHECK(sweep_day(base, TimecodeCount::non_drop) == base * 86'400);
  }
}

TEST_CASE("Rates just below a whole number count that number") {
  CHECK(timecode_base(kNtscFilm) == 24);
  CHECK(timecode_base(Rational(23976, 1000)) == 24);
  CHECK(timecode_base(Rational(2398, 100)) == 24);
  CHECK(timecode_base(kNtsc) == 30);
  CHECK(timecode_base(Rational(48000, 1001)) == 48);
  CHECK(timecode_base(kNtscDouble) == 60);
  CHECK(timecode_base(120) == 120);
  for (const std::int64_t whole : {24, 25, 30, 48, 50, 60}) CHECK(timecode_base(whole) == whole);
}

TEST_CASE("Other rates have no time code") {
  for (const Rational rate : {Rational(25, 2), Rational(2390, 100), Rational(1001, 1000),
                              Rational(0), Rational(-24), Rational(1000), Rational(0, 0)}) {
    CAPTURE(rate.to_double());
    CHECK_FALSE(timecode_base(rate));
    CHECK(timecode_text(100, rate, TimecodeCount::non_drop).empty());
  }
}

TEST_CASE("Only 30000/1001 and its multiples have drop frame") {
  CHECK(has_drop_frame(kNtsc));
  CHECK(has_drop_frame(kNtscDouble));
  for (const Rational rate :
       {Rational(24), kNtscFilm, Rational(25), Rational(30), Rational(48000, 1001), Rational(60)}) {
    CAPTURE(rate.to_double());
    CHECK_FALSE(has_drop_frame(rate));
    CHECK(timecode_text(100, rate, TimecodeCount::drop).empty());
  }
}

TEST_CASE("Lengths print with their separators and run past a day") {
  CHECK(timecode_text(0, 24, TimecodeCount::non_drop) == "00:00:00:00");
  CHECK(timecode_text(86'313, kNtscFilm, TimecodeCount::non_drop) == "00:59:56:09");
  CHECK(timecode_text(1800, kNtsc, TimecodeCount::non_drop) == "00:01:00:00");
  CHECK(timecode_text(1800, kNtsc, TimecodeCount::drop) == "00:01:00;02");
  CHECK(timecode_text(25 * 90'000 + 24, 25, TimecodeCount::non_drop) == "25:00:00:24");
  CHECK(timecode_text(119, 120, TimecodeCount::non_drop) == "00:00:00:119");
  CHECK(timecode_text(-1, 24, TimecodeCount::non_drop).empty());
}

TEST_CASE(
    "Drop frame stays within a tenth of a second of the clock over a day, non-drop does not") {
  constexpr std::int64_t kDropDay = 2'589'408;
  const double clock_s = (Rational(kDropDay) / kNtsc).to_double();
  CHECK(86'400 - clock_s == doctest::Approx(0.0864));
  const double non_drop_hour_s = (Rational(108'000) / kNtsc).to_double();
  CHECK(non_drop_hour_s - 3600 == doctest::Approx(3.6));
}

}  // namespace
}  // namespace widegate
