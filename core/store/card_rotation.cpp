#include "core/store/card_rotation.h"

#include <algorithm>

#include "core/base/wide.h"

namespace widegate {
namespace {

constexpr std::int64_t kFullDayUs = std::int64_t{24} * 60 * 60 * 1'000'000;

// Follows single cards of the camera that is served last. Cards are numbered from 0 over the day;
// times count from the start of their day.
class Station {
 public:
  explicit Station(const RotationDay& day)
      : day_(day),
        change_copy_us_(day.cameras * day.copy_us),
        step_us_(std::max(day.change_us, change_copy_us_)),
        first_arrival_us_((day.cards_per_day == 1 ? day.day_us : day.change_us) + day.travel_us) {
    // A station that keeps up works off what is left of one day before the next is over, so what
    // an empty first day leaves is what every day leaves.
    const std::int64_t next_arrival_us = kFullDayUs + first_arrival_us_;
    left_over_us_ = std::max<std::int64_t>(0, last_card_copied_us() - next_arrival_us);
  }

  [[nodiscard]] std::int64_t full_card_back_us(std::int64_t i) const {
    return full_card_copied_us(i) + day_.return_us;
  }
  [[nodiscard]] std::int64_t last_card_back_us() const {
    return last_card_copied_us() + day_.return_us;
  }

  // The first full card that is back after `us`.
  [[nodiscard]] std::int64_t first_back_after(std::int64_t us) const {
    const std::int64_t copying_us = us - day_.return_us - first_arrival_us_ - change_copy_us_;
    if (copying_us < left_over_us_) return 0;
    return std::min(copying_us / step_us_, (copying_us - left_over_us_) / change_copy_us_) + 1;
  }

  // Cards that are started before `us`, over all days since the start of the first.
  [[nodiscard]] std::int64_t started_before(std::int64_t us) const {
    const std::int64_t today = us % kFullDayUs;
    const std::int64_t changes = (today + day_.change_us - 1) / day_.change_us;
    return us / kFullDayUs * day_.cards_per_day + std::min(day_.cards_per_day, changes);
  }

 private:
  // Either the station has worked without pause since the first arrival, or each change is copied
  // at the pace of the slower of shooting and copying.
  [[nodiscard]] std::int64_t full_card_copied_us(std::int64_t i) const {
    return first_arrival_us_ + change_copy_us_ +
           std::max(left_over_us_ + i * change_copy_us_, i * step_us_);
  }

  [[nodiscard]] std::int64_t last_card_copied_us() const {
    const std::int64_t full_cards = day_.cards_per_day - 1;
    const std::int64_t arrives = day_.day_us + day_.travel_us;
    const std::int64_t free = full_cards == 0 ? arrives : full_card_copied_us(full_cards - 1);
    return std::max(arrives, free) + day_.cameras * day_.last_copy_us;
  }

  const RotationDay& day_;
  std::int64_t change_copy_us_;    // copying the cards of one change
  std::int64_t step_us_;           // from one change copied to the next
  std::int64_t first_arrival_us_;  // of the first change at the station
  std::int64_t left_over_us_ = 0;  // work of the day before, at the first arrival
};

bool keeps_up(const RotationDay& day) {
  const Wide each = Wide(day.cards_per_day - 1) * day.copy_us + day.last_copy_us;
  const auto total_us = (each * day.cameras).count();
  return total_us && *total_us <= kFullDayUs;
}

// Cards in use from the start of full card `i` until it is back.
std::int64_t needed_for(const Station& station, std::int64_t i) {
  return station.started_before(station.full_card_back_us(i)) - i;
}

// Along a day the count changes one way only, but for the nights, when no card is started: it is
// largest for the first card of the day, or the first that is back after the last change of a day,
// or the last card. The backs of a day span at most 24 hours, so there are two nights at most.
std::int64_t needed_for_full_cards(const RotationDay& day, const Station& station) {
  const std::int64_t last = day.cards_per_day - 2;
  if (last < 0) return 0;
  const std::int64_t first_back = station.full_card_back_us(0);
  const std::int64_t last_change = (day.cards_per_day - 1) * day.change_us;
  const std::int64_t first_night = first_back / kFullDayUs * kFullDayUs + last_change;
  std::int64_t most = needed_for(station, 0);
  for (const std::int64_t night : {first_night, first_night + kFullDayUs}) {
    most = std::max(most, needed_for(station, std::min(last, station.first_back_after(night))));
  }
  return most;
}

}  // namespace

Rotation cards_in_rotation(const RotationDay& day) {
  if (day.cards_per_day == 0) return {};
  if (!keeps_up(day)) return {.sustainable = false};
  const Station station(day);
  const std::int64_t last_card = day.cards_per_day - 1;
  const std::int64_t for_last = station.started_before(station.last_card_back_us()) - last_card;
  return {.cards = std::max({std::int64_t{1}, for_last, needed_for_full_cards(day, station)}),
          .sustainable = true};
}

}  // namespace widegate
