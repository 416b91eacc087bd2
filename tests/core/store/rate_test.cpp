// Data rate, sound and container of Store, against measured and published figures.
#include <array>
#include <cmath>
#include <string_view>

#include "tests/core/store/fixture.h"

namespace widegate {
namespace {

struct RateRow {
  std::int64_t width, height;
  int compression_id;
  std::int64_t bytes;
  Rational rate;
  double megabits_per_s;
};
constexpr auto kRateRows = std::to_array<RateRow>({
#include "tests/data/vc3_rates.inc"
});

TEST_CASE("VC-3 data rates at every project rate") {
  for (const RateRow& row : kRateRows) {
    CAPTURE(row.compression_id);
    CAPTURE(row.width);
    StoreFixture it;
    it.codec.form = TableForm{{{row.width, row.height, {}, row.bytes}}};
    it.width = row.width;
    it.height = row.height;
    it.set_rate(row.rate);
    const StoreReport report = it.report();
    CHECK(std::abs(report.bytes_per_s.least * 8e-6 - row.megabits_per_s) <= 1e-6);
    CHECK(report.bytes_per_minute.least == doctest::Approx(row.megabits_per_s * 7.5e6));
    CHECK(report.bytes_per_frame.least == row.bytes);
  }
}

TEST_CASE("Sound is 144 000 bytes a second for each channel of 48 kHz, 24 bit") {
  // 1.152 Mbit/s; samples in a frame: 2000 at 24, 2002 at 24000/1001, 1920 at 25, 1601.6 at
  // 30000/1001 (48000 over the rate).
  struct Row {
    Rational rate;
    double samples_per_frame;
  };
  for (const auto& [rate, samples] :
       {Row{24, 2000}, Row{Rational(24000, 1001), 2002}, Row{25, 1920},
        Row{Rational(30000, 1001), 1601.6}, Row{Rational(60000, 1001), 800.8}}) {
    StoreFixture it;
    it.set_rate(rate);
    const double silent = it.report().bytes_per_s.least;
    it.plan.run.audio_channels = 8;
    const StoreReport report = it.report();
    CHECK(report.audio_bytes_per_s == 8 * 144'000);
    const double sound_per_frame = (report.bytes_per_s.least - silent) / rate.to_double();
    CHECK(sound_per_frame == doctest::Approx(8 * 3 * samples));
  }
}

TEST_CASE("Off speed there is no sound, nor its container") {
  StoreFixture it;
  it.set_container(1000, 150);
  it.plan.run.audio_channels = 4;
  CHECK(it.report().bytes_per_frame_stored.least == 13'271'040 + 1000 + 4 * 150);
  it.plan.run.sensor_rate = 48;
  const StoreReport report = it.report();
  CHECK(report.audio_bytes_per_s == 0);
  CHECK(report.bytes_per_frame_stored.least == 13'271'040 + 1000);
  CHECK(report.bytes_per_s.least == 48.0 * 13'272'040);
}

struct OverheadRow {
  std::string_view container;
  int frames;
  std::int64_t channels;
  double bytes_per_frame;
};
constexpr auto kOverheadRows = std::to_array<OverheadRow>({
#include "tests/data/container_overhead.inc"
});

TEST_CASE("MXF overhead of longer clips is a share for each frame and each channel") {
  StoreFixture it;
  it.set_container(1050, 148);
  int checked = 0;
  for (const OverheadRow& row : kOverheadRows) {
    if (row.container != "mxf" || row.frames != 240) continue;
    CAPTURE(row.channels);
    it.plan.run.audio_channels = row.channels;
    const StoreReport report = it.report();
    const auto overhead =
        static_cast<double>(report.bytes_per_frame_stored.least - report.bytes_per_frame.least);
    CHECK(overhead == doctest::Approx(row.bytes_per_frame).epsilon(0.005));
    ++checked;
  }
  CHECK(checked == 4);
}

TEST_CASE("A lossless codec gives ranges and their ends belong together") {
  StoreFixture it;
  it.codec.form =
      LosslessForm{.bits_per_pixel = 12, .worst_ratio = 1, .best_ratio = Rational(5, 3)};
  const StoreReport report = it.report();
  CHECK(report.bytes_per_frame == ByteRange{7'962'624, 13'271'040});
  CHECK(report.bytes_per_s == Span{24.0 * 7'962'624, 24.0 * 13'271'040});
  CHECK(report.frames_per_card == ByteRange{38'580, 64'300});
  CHECK(report.write_headroom.least == doctest::Approx(1e9 / (24.0 * 13'271'040)));
  CHECK(report.write_headroom.most == doctest::Approx(1e9 / (24.0 * 7'962'624)));
}

TEST_CASE("Without a frame size, without room for a frame, or beyond counting there is no report") {
  StoreFixture it;
  it.codec.form = TableForm{{{1920, 1080, {}, 1000}}};
  CHECK(it.result().error() == StoreFault::no_frame_size);
  it = {};
  it.card.capacity_bytes = 13'271'039;
  CHECK(it.result().error() == StoreFault::card_too_small);
  ++it.card.capacity_bytes;
  CHECK(it.report().frames_per_card.least == 1);
  it = {};
  it.card.usable_share = Rational(1, 1'000'000'000'000);
  CHECK(it.result().error() == StoreFault::card_too_small);
  it = {};
  it.plan.store.drive_copies = 20;
  it.drive.capacity_bytes = 1;
  it.plan.shooting.recorded_hours_per_day = 24;
  it.plan.shooting.days = 10'000;
  CHECK(it.result().error() == StoreFault::too_large);
}

}  // namespace
}  // namespace widegate
