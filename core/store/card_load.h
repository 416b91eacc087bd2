// One card against frames of one size: how much it holds, whether it keeps up, how many a day takes
// and how many are in rotation.
#pragma once

#include <cstdint>
#include <optional>

#include "core/store/card_rotation.h"
#include "core/store/copying.h"
#include "core/store/footage.h"

namespace widegate {

/// A card where it is used; the same for frames of every size. Times in whole microseconds.
struct CardUse {
  std::int64_t usable_bytes = 0;  ///< Above 0.
  CopySpeed copy = {};
  Rational sensor_rate = Rational();
  Quotient frames_per_day = {};  ///< Of one camera.
  std::int64_t running_us = 0;   ///< Sensor running time of a camera and day.
  std::int64_t day_us = 0;       ///< From first to last shot, above 0, at most 24 hours.
  std::int64_t days = 1;
  std::int64_t cameras_per_unit = 1;  ///< Served by one copying station.
  std::int64_t travel_us = 0;
  std::int64_t return_us = 0;  ///< Station back to camera, held until the archive confirms.
  std::int64_t spare_cards = 0;
};

/// What frames of one size come to.
struct CardLoad {
  std::int64_t frames_per_card = 0;  ///< 1 or more.
  Quotient bytes_per_day;            ///< Of one camera.
};

/// Figures for frames of one size.
struct CardFigures {
  std::int64_t cards_per_day = 0;  ///< Each camera.
  std::int64_t change_us = 0;      ///< From one card change to the next, by the clock.
  Rotation rotation = {};          ///< Each camera.
};

/// Capacity that takes footage: capacity * usable share, rounded down; nothing when not countable.
[[nodiscard]] std::optional<std::int64_t> usable_bytes(const Card& card);

/// Whole frames on a card: floor(usable * rate / bytes per second); nothing when not countable.
[[nodiscard]] std::optional<std::int64_t> frames_per_card(const Stream& stream,
                                                          std::int64_t usable_bytes);

/// Sensor running time of this many frames.
[[nodiscard]] double minutes_of(std::int64_t frames, Rational rate);

/// The card's speed over the data rate; under 1 it cannot keep up.
[[nodiscard]] double write_headroom(const Stream& stream, std::int64_t write_bytes_per_s);

/// Running time is spread evenly over the shooting day; a day shorter than the running time is
/// taken as long as that, and more than 24 hours of it cannot be shot: then the rotation is not
/// sustainable. No more cards are in rotation than the whole shoot fills; that many when the
/// rotation is not sustainable, for then every card is used once. Spares come on top, and where
/// anything is shot a camera never has fewer than two cards.
/// @return nothing when a figure cannot be counted exactly.
[[nodiscard]] std::optional<CardFigures> card_figures(const CardLoad& load, const CardUse& use);

}  // namespace widegate
