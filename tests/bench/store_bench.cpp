#include "tests/bench/store_bench.h"

#include "core/store/store.h"
#include "tests/bench/bench.h"

namespace widegate::bench {
namespace {

constexpr std::int64_t kGigabyte = 1'000'000'000;

struct Rows {
  Codec codec;
  Container container;
  Card card;
  Link link;
  Drive drive;
  Tape tape;
  Checksum checksum;
};

// Two cameras on one station, thirteen cards a day each, copying slower than shooting.
Rows typical_rows(CodecForm form) {
  Rows rows;
  rows.codec.form = std::move(form);
  rows.container.bytes_per_frame = 1050;
  rows.container.audio_bytes_per_frame_and_channel = 148;
  rows.card.capacity_bytes = 512 * kGigabyte;
  rows.card.usable_share = Rational(95, 100);
  rows.card.write_bytes_per_s = 2 * kGigabyte;
  rows.card.read_bytes_per_s = kGigabyte;
  rows.link.payload_bytes_per_s = kGigabyte;
  rows.drive.capacity_bytes = 16'000 * kGigabyte;
  rows.drive.write_bytes_per_s = rows.drive.read_bytes_per_s = kGigabyte;
  rows.tape.capacity_bytes = 12'000 * kGigabyte;
  rows.tape.write_bytes_per_s = 360'000'000;
  rows.checksum.bytes_per_s = 5 * kGigabyte;
  return rows;
}

void report_times(std::int64_t times, const Rows& rows) {
  Plan plan;
  plan.run.sensor_rate = plan.run.project_rate = Rational(24000, 1001);
  plan.shooting.cameras_per_unit = 2;
  for (std::int64_t i = 0; i < times; ++i) {
    keep(store_report(plan,
                      {.codec = rows.codec,
                       .container = rows.container,
                       .card = rows.card,
                       .link = rows.link,
                       .drive = rows.drive,
                       .tape = &rows.tape,
                       .checksum = rows.checksum},
                      4992 + i % 2, 3744));
  }
}

}  // namespace

void store_one_size(std::int64_t times) {
  report_times(times, typical_rows(PackedForm{.block_pixels = 2, .block_bytes = 3}));
}

void store_range(std::int64_t times) {
  report_times(times, typical_rows(LosslessForm{
                          .bits_per_pixel = 12, .worst_ratio = 1, .best_ratio = Rational(5, 3)}));
}

}  // namespace widegate::bench
