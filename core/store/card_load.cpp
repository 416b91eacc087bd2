#include "core/store/card_load.h"

#include <algorithm>

namespace widegate {
namespace {

constexpr std::int64_t kSecondUs = 1'000'000;
constexpr std::int64_t kFullDayUs = std::int64_t{24} * 60 * 60 * kSecondUs;
constexpr double kSecondsPerMinute = 60;
/// One in the camera, one ready. common practice, no source
constexpr std::int64_t kFewestCards = 2;

// Saturated: longer than any day, and the rotation says so.
std::int64_t copying_us(Wide bytes, const CopySpeed& copy) {
  return ceil_div(bytes * (copy.passes * kSecondUs), copy.bytes_per_s)
      .count()
      .value_or(kLargestExact);
}

std::int64_t last_copying_us(std::int64_t all_us, std::int64_t full_cards, std::int64_t copy_us) {
  const auto full_us = (Wide(full_cards) * copy_us).count();
  if (!full_us || *full_us > all_us) return 0;
  return std::min(all_us - *full_us, copy_us);
}

// Clock time between changes: the day shared out as the running time is, rounded down, so that a
// card is never needed later than it would be.
std::int64_t change_us(std::int64_t cards_per_day, std::int64_t frames_per_card, const CardUse& use,
                       std::int64_t day_us) {
  if (cards_per_day <= 1) return day_us;
  const Rational rate = use.sensor_rate;
  const Wide fill_us = floor_div(Wide(frames_per_card) * kSecondUs * rate.den(), rate.num());
  const std::int64_t running_us = std::max<std::int64_t>(1, use.running_us);
  const auto change = floor_div(fill_us * day_us, running_us).count().value_or(day_us);
  return std::max<std::int64_t>(1, std::min(change, day_us / (cards_per_day - 1)));
}

Rotation rotation_of(const CardFigures& figures, const CardLoad& load, const CardUse& use,
                     std::int64_t day_us) {
  if (day_us > kFullDayUs) return {.sustainable = false};
  RotationDay day{.cards_per_day = figures.cards_per_day,
                  .cameras = use.cameras_per_unit,
                  .day_us = day_us,
                  .change_us = figures.change_us,
                  .copy_us = copying_us(use.usable_bytes, use.copy),
                  .travel_us = use.travel_us,
                  .return_us = use.return_us};
  const Wide bytes_per_day = ceil_div(load.bytes_per_day.num, load.bytes_per_day.den);
  day.last_copy_us =
      last_copying_us(copying_us(bytes_per_day, use.copy), day.cards_per_day - 1, day.copy_us);
  return cards_in_rotation(day);
}

}  // namespace

std::optional<std::int64_t> usable_bytes(const Card& card) {
  return floor_div(Wide(card.capacity_bytes) * card.usable_share.num(), card.usable_share.den())
      .count();
}

std::optional<std::int64_t> frames_per_card(const Stream& stream, std::int64_t usable_bytes) {
  const Quotient speed = stream.bytes_per_s();
  return floor_div(Wide(usable_bytes) * stream.rate.num(), speed.num).count();
}

double minutes_of(std::int64_t frames, Rational rate) {
  return static_cast<double>(frames) / rate.to_double() / kSecondsPerMinute;
}

double write_headroom(const Stream& stream, std::int64_t write_bytes_per_s) {
  return static_cast<double>(write_bytes_per_s) / stream.bytes_per_s().to_double();
}

std::optional<CardFigures> card_figures(const CardLoad& load, const CardUse& use) {
  const Quotient& shot = use.frames_per_day;
  const Wide cards = ceil_div(shot.num, shot.den * load.frames_per_card);
  const auto all_cards = (cards * use.days).count();
  if (!all_cards || !load.bytes_per_day.ok()) return std::nullopt;

  CardFigures figures{.cards_per_day = *all_cards / use.days};
  const std::int64_t day_us = std::max(use.day_us, use.running_us);
  figures.change_us = change_us(figures.cards_per_day, load.frames_per_card, use, day_us);
  figures.rotation = rotation_of(figures, load, use, day_us);
  if (!figures.rotation.sustainable || figures.rotation.cards > *all_cards) {
    figures.rotation.cards = *all_cards;
  }
  if (*all_cards > 0) {
    figures.rotation.cards = std::max(kFewestCards, figures.rotation.cards + use.spare_cards);
  }
  return figures;
}

}  // namespace widegate
