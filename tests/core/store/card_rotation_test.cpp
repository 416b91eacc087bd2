// Cards in rotation against a simulation that follows every card of every camera for many days,
// and against the closed form of the case without queue or night.
#include "core/store/card_rotation.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <queue>
#include <random>
#include <vector>

namespace widegate {
namespace {

constexpr std::int64_t kMinute = 60'000'000;
constexpr std::int64_t kDay = 24 * 60 * kMinute;

// When each card of the last-served camera was started and was back, over `days` days.
struct CardLife {
  std::int64_t started;
  std::int64_t back;
};

std::vector<CardLife> live_days(const RotationDay& day, int days) {
  std::vector<CardLife> lives;
  std::int64_t station_free = 0;
  for (int d = 0; d < days; ++d) {
    for (std::int64_t i = 0; i < day.cards_per_day; ++i) {
      const bool last = i == day.cards_per_day - 1;
      const std::int64_t started = d * kDay + i * day.change_us;
      const std::int64_t ended = d * kDay + (last ? day.day_us : (i + 1) * day.change_us);
      for (std::int64_t camera = 0; camera < day.cameras; ++camera) {
        station_free =
            std::max(station_free, ended + day.travel_us) + (last ? day.last_copy_us : day.copy_us);
      }
      lives.push_back({started, station_free + day.return_us});
    }
  }
  return lives;
}

// Whether n cards are enough: each start takes the card that has been back longest.
bool enough(const std::vector<CardLife>& lives, std::int64_t n) {
  std::queue<std::int64_t> ready;
  for (std::int64_t i = 0; i < n; ++i) ready.push(0);
  for (const CardLife& life : lives) {
    if (ready.front() > life.started) return false;
    ready.pop();
    ready.push(life.back);
  }
  return true;
}

std::int64_t simulated_cards(const std::vector<CardLife>& lives) {
  std::int64_t n = 1;
  while (!enough(lives, n)) ++n;
  return n;
}

std::int64_t between(std::mt19937_64& random, std::int64_t low, std::int64_t high) {
  return std::uniform_int_distribution<std::int64_t>(low, high)(random);
}

// A day whose cards hang together; `grain` makes coincidences of times likely when it is large.
RotationDay random_day(std::mt19937_64& random, std::int64_t grain) {
  RotationDay day;
  day.cards_per_day = between(random, 1, 40);
  day.cameras = between(random, 1, 4);
  const std::int64_t shortest = between(random, 0, 2) == 0 ? kDay - kDay / 20 : grain;
  day.day_us = between(random, shortest / grain, kDay / grain) * grain;
  day.change_us = std::max<std::int64_t>(1, day.day_us / day.cards_per_day);
  if (day.cards_per_day > 1) {
    const std::int64_t longest = (day.day_us - 1) / (day.cards_per_day - 1);
    day.change_us = std::max<std::int64_t>(
        1, between(random, day.change_us, std::max(day.change_us, longest)) / grain * grain);
  }
  const std::int64_t most = kDay / (day.cards_per_day * day.cameras);
  const std::int64_t quickest = between(random, 0, 1) == 0 ? most - most / 8 : 1;
  day.copy_us = std::max<std::int64_t>(1, between(random, quickest, most) / grain * grain);
  day.last_copy_us = between(random, 0, day.copy_us) / grain * grain;
  day.travel_us = between(random, 0, 3) == 0 ? 0 : between(random, 0, 2 * kDay) / grain * grain;
  day.return_us = between(random, 0, kDay / 8) / grain * grain;
  return day;
}

TEST_CASE("Cards in rotation are what following every card gives") {
  std::mt19937_64 random(20261125);
  for (int round = 0; round < 20'000; ++round) {
    const std::int64_t grain = round % 2 == 0 ? 1 : 10 * kMinute;
    const RotationDay day = random_day(random, grain);
    if ((day.cards_per_day - 1) * day.change_us > day.day_us) continue;
    CAPTURE(round);
    CAPTURE(day.cards_per_day);
    CAPTURE(day.cameras);
    CAPTURE(day.day_us);
    CAPTURE(day.change_us);
    CAPTURE(day.copy_us);
    CAPTURE(day.travel_us);
    CAPTURE(day.return_us);
    const Rotation rotation = cards_in_rotation(day);
    REQUIRE(rotation.sustainable);
    const auto lives = live_days(day, 8);
    REQUIRE(rotation.cards == simulated_cards(lives));
    // More cards never hurt.
    CHECK(enough(lives, rotation.cards + 1));
    CHECK(enough(lives, 2 * rotation.cards));
  }
}

TEST_CASE("Without queue or night it is ceil(C / T) + 1") {
  for (std::int64_t change = 5; change <= 60; change += 5) {
    for (std::int64_t copy = 1; copy <= change; copy += 3) {
      for (std::int64_t way = 0; way <= 100; way += 10) {
        const std::int64_t cards = 600 / change;
        const RotationDay day{.cards_per_day = cards,
                              .day_us = 600 * kMinute,
                              .change_us = change * kMinute,
                              .copy_us = copy * kMinute,
                              .last_copy_us = copy * kMinute,
                              .travel_us = way * kMinute,
                              .return_us = way / 2 * kMinute};
        const std::int64_t cycle = way + copy + way / 2;
        const std::int64_t closed_form = (cycle + change - 1) / change + 1;
        CAPTURE(change);
        CAPTURE(cycle);
        CHECK(cards_in_rotation(day).cards == std::min(cards, closed_form));
      }
    }
  }
}

TEST_CASE("What is left over at night holds up the next day") {
  // The last cards come at 1425 and 1438 and are copied at 1515 and 1605; the next day's first
  // comes at 1535 and waits 70. A card every 95 that takes 90 works off 5 of it each time: the
  // fourteenth still waits 5 and is back at 1445 instead of 1440, after one more card has been
  // started.
  RotationDay day{.cards_per_day = 16,
                  .day_us = 1438 * kMinute,
                  .change_us = 95 * kMinute,
                  .copy_us = 90 * kMinute,
                  .last_copy_us = 90 * kMinute,
                  .return_us = 20 * kMinute};
  CHECK(cards_in_rotation(day).cards == 4);
  day.last_copy_us = 20 * kMinute;
  CHECK(cards_in_rotation(day).cards == 3);
}

TEST_CASE("A worked day: 20-minute cards, 45 minutes away, four in rotation") {
  // Handed over at 20, at the station 35, copied 50, back at 65: the cards of 20, 40 and 60 have
  // been started meanwhile, so the one needed at 80 is the first that can be this one.
  const RotationDay day{.cards_per_day = 30,
                        .day_us = 600 * kMinute,
                        .change_us = 20 * kMinute,
                        .copy_us = 15 * kMinute,
                        .last_copy_us = 15 * kMinute,
                        .travel_us = 15 * kMinute,
                        .return_us = 15 * kMinute};
  CHECK(cards_in_rotation(day).cards == 4);
}

TEST_CASE("One card is enough when it is back by the next morning, two when it is not") {
  RotationDay day{.cards_per_day = 1,
                  .day_us = 600 * kMinute,
                  .change_us = 600 * kMinute,
                  .copy_us = 60 * kMinute,
                  .last_copy_us = 30 * kMinute,
                  .travel_us = 405 * kMinute,
                  .return_us = 405 * kMinute};
  CHECK(cards_in_rotation(day).cards == 1);
  day.return_us += 1;
  CHECK(cards_in_rotation(day).cards == 2);
}

TEST_CASE("Copying that takes more than a day for a day's cards never keeps up") {
  RotationDay day{.cards_per_day = 10,
                  .cameras = 2,
                  .day_us = 600 * kMinute,
                  .change_us = 60 * kMinute,
                  .copy_us = 72 * kMinute,
                  .last_copy_us = 72 * kMinute};
  CHECK(cards_in_rotation(day).sustainable);
  day.last_copy_us += 1;
  day.copy_us += 1;
  CHECK_FALSE(cards_in_rotation(day).sustainable);
  day.copy_us = (std::int64_t{1} << 53) - 1;
  day.cards_per_day = std::int64_t{1} << 52;
  CHECK_FALSE(cards_in_rotation(day).sustainable);
}

TEST_CASE("A day on which nothing is shot needs no cards") {
  CHECK(cards_in_rotation({.day_us = kDay, .change_us = kDay, .copy_us = 1}).cards == 0);
}

TEST_CASE("Slower copying, longer ways or more cameras never need fewer cards") {
  std::mt19937_64 random(7);
  for (int round = 0; round < 5'000; ++round) {
    const RotationDay day = random_day(random, 1);
    const std::int64_t cards = cards_in_rotation(day).cards;
    RotationDay slower = day;
    slower.copy_us += slower.copy_us / 5 + 1;
    RotationDay farther = day;
    farther.travel_us += between(random, 1, kDay / 4);
    farther.return_us += between(random, 1, kDay / 4);
    RotationDay busier = day;
    ++busier.cameras;
    for (const RotationDay& harder : {slower, farther, busier}) {
      const Rotation rotation = cards_in_rotation(harder);
      if (rotation.sustainable) CHECK(rotation.cards >= cards);
    }
  }
}

}  // namespace
}  // namespace widegate
