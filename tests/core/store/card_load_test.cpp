// Cards of Store: what they hold, whether they keep up, how many a day takes.
#include <array>
#include <cmath>

#include "tests/core/store/fixture.h"

namespace widegate {
namespace {

constexpr std::int64_t kTerabyte = 1'000'000'000'000;
constexpr std::int64_t kTebibyte = std::int64_t{1} << 40;

struct BayerRow {
  std::int64_t width, height, bits, bytes;
  double gigabits_per_s, minutes_per_tb, minutes_per_tib;
};
constexpr auto kBayerRows = std::to_array<BayerRow>({
#include "tests/data/bayer_packed.inc"
});

TEST_CASE("Minutes of packed Bayer raw on 1 TB and on 1 TiB, to the whole frame") {
  // The table divides; a card holds whole frames, at most one fewer. 1 TiB is 1.0995 TB (IEC
  // 80000-13).
  constexpr double kFrameMinutes = 1 / (24.0 * 60);
  for (const BayerRow& row : kBayerRows) {
    CAPTURE(row.width);
    CAPTURE(row.bits);
    StoreFixture it;
    it.codec.form = RatioForm{.bits_per_pixel = row.bits};
    it.width = row.width;
    it.height = row.height;
    it.card.capacity_bytes = kTerabyte;
    const double on_terabyte = row.minutes_per_tb - it.report().minutes_per_card.least;
    CHECK(on_terabyte > -1e-6);
    CHECK(on_terabyte < kFrameMinutes);
    it.card.capacity_bytes = kTebibyte;
    const double on_tebibyte = row.minutes_per_tib - it.report().minutes_per_card.least;
    CHECK(on_tebibyte > -1e-6);
    CHECK(on_tebibyte < kFrameMinutes);
  }
}

TEST_CASE("A worked day: two cameras on one station, in exact fractions by hand") {
  StoreFixture it;
  it.width = 4992;
  it.height = 3744;
  it.set_rate(Rational(24000, 1001));
  it.plan.run.audio_channels = 2;
  it.set_container(1050, 148);
  it.card.usable_share = Rational(95, 100);
  it.card.write_bytes_per_s = 1'600'000'000;
  it.link.payload_bytes_per_s = 700'000'000;
  it.plan.shooting = {.days = 42, .units = 3, .cameras_per_unit = 2, .recorded_hours_per_day = 2.5};
  it.plan.store.travel_minutes = 20;
  it.plan.store.return_minutes = 25;
  const StoreReport report = it.report();
  CHECK(report.bytes_per_frame.least == 28'035'072);
  CHECK(report.bytes_per_frame_stored.least == 28'036'418);
  CHECK(report.bytes_per_s.least == doctest::Approx(673'162'320'000.0 / 1001).epsilon(1e-15));
  CHECK(report.usable_card_bytes == 486'400'000'000);
  CHECK(report.frames_per_card.least == 17'341);
  CHECK(report.minutes_per_card.least == doctest::Approx(12.054403472222).epsilon(1e-12));
  CHECK(report.write_headroom.least == doctest::Approx(2.3792181356794).epsilon(1e-12));
  CHECK(report.cards_per_day.least == 13);
  CHECK(report.card_change_minutes.least == doctest::Approx(48.217613867).epsilon(1e-9));
  CHECK(report.cards_in_rotation.least == 3);
  CHECK(report.rotation_sustainable);
  CHECK(report.recorded_hours_per_day == doctest::Approx(2.5));
  CHECK(report.offload_minutes_per_card.least == doctest::Approx(23.161904761905).epsilon(1e-12));
  CHECK(report.offload_hours_per_day.least == doctest::Approx(9.6069975738547).epsilon(1e-12));
  CHECK(report.shoot_total_bytes.least == doctest::Approx(1'525'206'934'825'174.8).epsilon(1e-15));
  CHECK(report.bytes_per_frame.exact());
  CHECK(report.cards_in_rotation.exact());
}

TEST_CASE("Doubling the rate halves the minutes and the headroom, and doubles the cards") {
  StoreFixture it;
  const StoreReport single = it.report();
  it.set_rate(48);
  const StoreReport twice = it.report();
  CHECK(twice.minutes_per_card.least == single.minutes_per_card.least / 2);
  CHECK(twice.write_headroom.least == single.write_headroom.least / 2);
  CHECK(twice.frames_per_card == single.frames_per_card);
  CHECK(twice.shoot_total_bytes.least == 2 * single.shoot_total_bytes.least);
}

TEST_CASE("A card holds the frames that fit and not one more, at any rate and with sound") {
  std::mt19937_64 random(20261125);
  for (int round = 0; round < 3000; ++round) {
    const StoreFixture it = random_fixture(random);
    const auto report = it.result();
    if (!report) continue;
    const Rational rate = it.plan.run.sensor_rate;
    const auto bytes_of = [&](std::int64_t frames) {
      const auto sound = static_cast<std::int64_t>(report->audio_bytes_per_s);
      return Wide(frames) *
             (Wide(report->bytes_per_frame_stored.least) * rate.num() + Wide(sound) * rate.den());
    };
    const Wide room = Wide(report->usable_card_bytes) * rate.num();
    const std::int64_t frames = report->frames_per_card.least;
    CHECK(floor_div(bytes_of(frames), room + 1).count() == 0);
    CHECK(floor_div(room, bytes_of(frames + 1)).count() == 0);
  }
}

TEST_CASE("The usable share is rounded down to whole bytes") {
  StoreFixture it;
  it.card.capacity_bytes = 512'110'190'593;
  it.card.usable_share = Rational(93, 100);
  CHECK(it.report().usable_card_bytes == 476'262'477'251);
}

TEST_CASE("Rolling exactly at the card's speed leaves a headroom of one") {
  StoreFixture it;
  it.card.write_bytes_per_s = 24 * 13'271'040;
  CHECK(it.report().write_headroom.least == 1);
  it.card.write_bytes_per_s -= 1;
  CHECK(it.report().write_headroom.least < 1);
}

TEST_CASE("A day that fills its cards exactly takes no card more") {
  StoreFixture it;
  it.card.capacity_bytes = std::int64_t{13'271'040} * 24 * 60 * 20;  // 20 minutes
  it.plan.shooting.recorded_hours_per_day = 2;
  CHECK(it.report().cards_per_day.least == 6);
  it.plan.shooting.recorded_hours_per_day = 2.0001;
  CHECK(it.report().cards_per_day.least == 7);
  it.plan.shooting.recorded_hours_per_day = 0;
  const StoreReport idle = it.report();
  CHECK(idle.cards_per_day.least == 0);
  CHECK(idle.cards_in_rotation.least == 0);
  CHECK(idle.shoot_total_bytes.least == 0);
}

TEST_CASE("Cards in rotation follow the closed form, and the work that 24 hours allow") {
  StoreFixture it;
  it.card.capacity_bytes = std::int64_t{13'271'040} * 24 * 60 * 20;
  it.plan.shooting = {.units = 1, .cameras_per_unit = 1, .recorded_hours_per_day = 5};
  // 15 cards in ten hours: one every 40 minutes; 382.2 GB twice at 1 GB/s takes 12.74 minutes.
  const StoreReport report = it.report();
  CHECK(report.cards_per_day.least == 15);
  CHECK(report.card_change_minutes.least == 40);
  CHECK(report.cards_in_rotation.least == 2);
  it.plan.store.travel_minutes = it.plan.store.return_minutes = 40;  // C / T is 2.3
  CHECK(it.report().cards_in_rotation.least == 4);
  it.link.payload_bytes_per_s = 132'710'400;  // 96 minutes a card: 15 take 24 hours
  CHECK(it.report().rotation_sustainable);
  it.link.payload_bytes_per_s -= 1;
  CHECK_FALSE(it.report().rotation_sustainable);
}

TEST_CASE(
    "Running time longer than the shooting day stretches it; more than a day cannot be shot") {
  StoreFixture it;
  it.plan.shooting = {.units = 1, .recorded_hours_per_day = 12, .day_hours = 10};
  it.card.capacity_bytes = std::int64_t{13'271'040} * 24 * 3600;  // one hour
  it.link.payload_bytes_per_s = 2'000'000'000;
  CHECK(it.report().card_change_minutes.least == doctest::Approx(60));
  CHECK(it.report().rotation_sustainable);
  it.plan.shooting = {
      .days = 1, .units = 1, .by = ShootingBy::ratio, .script_minutes = 100, .shooting_ratio = 15};
  const StoreReport report = it.report();
  CHECK(report.recorded_hours_per_day == doctest::Approx(25));
  CHECK_FALSE(report.rotation_sustainable);
  CHECK(report.cards_in_rotation == report.cards_per_day);  // one day: every card once
  it.plan.shooting = {.days = 3, .units = 1, .recorded_hours_per_day = 20};
  it.link.payload_bytes_per_s = 100'000'000;
  CHECK_FALSE(it.report().rotation_sustainable);
  CHECK(it.report().cards_in_rotation.least == 3 * it.report().cards_per_day.least);
}

TEST_CASE("A shoot never needs more cards than it fills") {
  StoreFixture it;
  it.card.capacity_bytes = std::int64_t{13'271'040} * 24 * 60 * 20;
  it.plan.shooting = {.days = 5, .units = 1, .recorded_hours_per_day = 1};
  it.plan.store.travel_minutes = it.plan.store.return_minutes = 7 * 24 * 60;
  CHECK(it.report().cards_per_day.least == 3);
  CHECK(it.report().cards_in_rotation.least == 15);
  it.plan.shooting.days = 100;
  // Fourteen days of three, and the two that are started before the first is back and copied.
  CHECK(it.report().cards_in_rotation.least == 44);
}

TEST_CASE("A shooting ratio counts playing time: slow motion is the same frames in less time") {
  StoreFixture it;
  it.plan.shooting = {
      .days = 10, .units = 1, .by = ShootingBy::ratio, .script_minutes = 100, .shooting_ratio = 12};
  const StoreReport normal = it.report();
  // 1200 minutes at 24 are 1 728 000 frames; two hours a day.
  CHECK(normal.shoot_total_bytes.least == 1'728'000.0 * 13'271'040);
  CHECK(normal.recorded_hours_per_day == 2);
  it.plan.run.sensor_rate = 120;
  const StoreReport slow = it.report();
  CHECK(slow.shoot_total_bytes.least == normal.shoot_total_bytes.least);
  CHECK(slow.recorded_hours_per_day == doctest::Approx(0.4));
  CHECK(slow.cards_per_day == normal.cards_per_day);
}

TEST_CASE("Recorded hours count running time: slow motion takes more frames") {
  StoreFixture it;
  const StoreReport normal = it.report();
  it.plan.run.sensor_rate = 120;
  const StoreReport slow = it.report();
  CHECK(slow.shoot_total_bytes.least == 5 * normal.shoot_total_bytes.least);
  CHECK(slow.recorded_hours_per_day == normal.recorded_hours_per_day);
}

TEST_CASE("A standard's class makes a guarantee, an empty one does not") {
  StoreFixture it;
  CHECK_FALSE(it.report().card_guaranteed);
  it.card.guarantee = "VPG400";
  CHECK(it.report().card_guaranteed);
}

}  // namespace
}  // namespace widegate
