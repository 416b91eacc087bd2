#include "core/rotation.h"

#include <algorithm>

#include "core/wide.h"

namespace widegate {
namespace {

constexpr std::int64_t kFullDayUs = std::int64_t{24} * 60 * 60 * 1'000'000;

// Follows single cards of the camera that is served last. Cards are numbered from 0 over the day.
class Station {
 public:
  explicit Station(const RotationDay& day)
      : day_(day),
        change_copy_us_(day.cameras * day.copy_us),
        step_us_(std::max(day.change_us, change_copy_us_)) {}

  [[nodiscard]] std::int64_t step_us() const { return step_us_; }

  // When full card `i` is back, counted from the start of its day. Without a backlog each change
  // is copied before the next arrives; with one, the station works without pause from the first.
  [[nodiscard]] std::int64_t full_card_back_us(std::int64_t i) const {
    return day_.change_us + day_.travel_us + change_copy_us_ + i * step_us_ + day_.return_us;
  }

  [[nodiscard]] std::int64_t last_card_back_us() const {
    const std::int64_t arrives = day_.day_us + day_.travel_us;
    const std::int64_t full_cards = day_.cards_per_day - 1;
    const std::int64_t free =
        full_cards == 0 ? arrives : full_card_back_us(full_cards - 1) - day_.return_us;
    return std::max(arrives, free) + day_.cameras * day_.last_copy_us + day_.return_us;
  }

  // Cards that are started before `us`, over all days since the start of the first.
  [[nodiscard]] std::int64_t started_before(std::int64_t us) const {
    const std::int64_t today = us % kFullDayUs;
    const std::int64_t changes = (today + day_.change_us - 1) / day_.change_us;
    return us / kFullDayUs * day_.cards_per_day + std::min(day_.cards_per_day, changes);
  }

 private:
  const RotationDay& day_;
  std::int64_t change_copy_us_;
  std::int64_t step_us_;
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

// The count rises or stays from change to change and falls through a night, when no card is
// started: it is largest for the first card that is back after the last change of a day, or for the
// last card. Their backs span at most 24 hours, so two nights are all there are.
std::int64_t needed_for_full_cards(const RotationDay& day, const Station& station) {
  const std::int64_t last = day.cards_per_day - 2;
  if (last < 0) return 0;
  const std::int64_t first_back = station.full_card_back_us(0);
  const std::int64_t last_change = (day.cards_per_day - 1) * day.change_us;
  const std::int64_t first_night = first_back / kFullDayUs * kFullDayUs + last_change;
  std::int64_t most = 0;
  for (const std::int64_t night : {first_night, first_night + kFullDayUs}) {
    const std::int64_t first_after =
        night < first_back ? 0 : (night - first_back) / station.step_us() + 1;
    most = std::max(most, needed_for(station, std::min(last, first_after)));
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
