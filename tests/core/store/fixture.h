// A storing set-up of plain figures for the tests of Store; each test changes what it is about.
#pragma once

#include <doctest/doctest.h>

#include <array>
#include <cmath>

#include <cstdint>
#include <random>

#include "core/base/wide.h"
#include "core/store/store.h"

namespace widegate {

/// 12-bit packed raw, no container, no sound, a 512 GB card, 1000 MB/s for everything that copies.
struct StoreFixture {
  Plan plan;
  Codec codec;
  Container container;
  Card card;
  Link link;
  Drive drive;
  Tape tape;
  Checksum checksum;
  std::int64_t width = 4096;
  std::int64_t height = 2160;

  StoreFixture() {
    constexpr std::int64_t kGigabyte = 1'000'000'000;
    codec.form = PackedForm{.block_pixels = 2, .block_bytes = 3};
    card.capacity_bytes = 512 * kGigabyte;
    card.write_bytes_per_s = card.read_bytes_per_s = kGigabyte;
    link.payload_bytes_per_s = kGigabyte;
    drive.capacity_bytes = 16'000 * kGigabyte;
    drive.write_bytes_per_s = drive.read_bytes_per_s = kGigabyte;
    tape.capacity_bytes = 12'000 * kGigabyte;
    tape.write_bytes_per_s = 360'000'000;
    checksum.bytes_per_s = 5 * kGigabyte;
    plan.run.audio_channels = 0;
    plan.store.travel_minutes = 0;
    plan.store.return_minutes = 0;
  }

  void set_container(std::int64_t bytes_per_frame, std::int64_t bytes_per_frame_and_channel) {
    container.bytes_per_frame = bytes_per_frame;
    container.audio_bytes_per_frame_and_channel = bytes_per_frame_and_channel;
  }
  void set_rate(Rational rate) { plan.run.project_rate = plan.run.sensor_rate = rate; }

  [[nodiscard]] tl::expected<StoreReport, StoreFault> result() const {
    return store_report(plan,
                        {.codec = codec,
                         .container = container,
                         .card = card,
                         .link = link,
                         .drive = drive,
                         .tape = &tape,
                         .checksum = checksum},
                        width, height);
  }

  [[nodiscard]] StoreReport report() const {
    const auto report = result();
    REQUIRE(report.has_value());
    return *report;
  }
};

/// Even spread over the digits: tiny and huge figures are equally likely.
inline double log_uniform(std::mt19937_64& random, double low, double high) {
  return std::exp(std::uniform_real_distribution(std::log(low), std::log(high))(random));
}
inline std::int64_t log_uniform_count(std::mt19937_64& random, double low, double high) {
  return static_cast<std::int64_t>(log_uniform(random, low, high));
}

/// A set-up anywhere within what a plan and a catalogue may say.
inline StoreFixture random_fixture(std::mt19937_64& random) {
  constexpr auto kRates = std::to_array<Rational>(
      {Rational(24000, 1001), 24, 25, Rational(30000, 1001), 48, 50, 60, 120, Rational(1, 100),
       10'000, Rational(9'999'999, 1000), Rational(12'345, 997)});
  const auto pick = [&](std::int64_t most) {
    return std::uniform_int_distribution<std::int64_t>(0, most)(random);
  };
  StoreFixture it;
  it.width = log_uniform_count(random, 16, 65'536);
  it.height = log_uniform_count(random, 16, 65'536);
  it.plan.run.sensor_rate = kRates[static_cast<std::size_t>(pick(kRates.size() - 1))];
  it.plan.run.project_rate =
      pick(1) == 0 ? it.plan.run.sensor_rate : kRates[static_cast<std::size_t>(pick(6))];
  it.plan.run.audio_channels = pick(64);
  Shooting& shooting = it.plan.shooting;
  shooting.days = log_uniform_count(random, 1, 10'000);
  shooting.units = log_uniform_count(random, 1, 100);
  shooting.cameras_per_unit = log_uniform_count(random, 1, 100);
  shooting.by = pick(1) == 0 ? ShootingBy::recorded_hours : ShootingBy::ratio;
  shooting.recorded_hours_per_day = log_uniform(random, 1e-3, 24);
  shooting.script_minutes = log_uniform(random, 1, 100'000);
  shooting.shooting_ratio = log_uniform(random, 1, 1000);
  shooting.day_hours = log_uniform(random, 0.1, 24);
  Storing& store = it.plan.store;
  store.verification = static_cast<Verification>(pick(2));
  store.drive_copies = pick(20);
  store.tape_copies = pick(20);
  store.travel_minutes = static_cast<double>(pick(10'080));
  store.return_minutes = static_cast<double>(pick(10'080));
  store.upload_share = static_cast<double>(pick(100)) / 100;
  it.container.bytes_per_frame = log_uniform_count(random, 1, 1e6);
  it.container.audio_bytes_per_frame_and_channel = log_uniform_count(random, 1, 1e4);
  it.card.capacity_bytes = log_uniform_count(random, 1e9, 1e14);
  it.card.usable_share = Rational(1 + pick(99), 100);
  for (std::int64_t* speed :
       {&it.card.write_bytes_per_s, &it.card.read_bytes_per_s, &it.link.payload_bytes_per_s,
        &it.drive.write_bytes_per_s, &it.drive.read_bytes_per_s, &it.tape.write_bytes_per_s,
        &it.checksum.bytes_per_s}) {
    *speed = log_uniform_count(random, 1e6, 1e11);
  }
  it.drive.capacity_bytes = log_uniform_count(random, 1e10, 1e16);
  it.tape.capacity_bytes = log_uniform_count(random, 1e10, 1e15);
  return it;
}

}  // namespace widegate
