// Cards in rotation: a shooting day in which every card is filled, taken to the copying station,
// copied and verified there in its turn, and brought back. How long each step takes is store.h's.
#pragma once

#include <cstdint>

namespace widegate {

/// One unit's day, in whole microseconds. Every day is alike and starts 24 hours after the last.
///
/// All cameras roll alike and start a new card every `change_us`, so the cards of one change reach
/// the station together. The station copies one card at a time, first come, first served, around
/// the clock; of the cards of one change it serves the same camera last every time, and the result
/// is for that camera. At the end of the day every camera hands in its last, part-filled card.
struct RotationDay {
  std::int64_t cards_per_day = 0;  ///< Each camera; 0 or more, the last may be part-filled.
  std::int64_t cameras = 1;        ///< Served by one station; 1 or more.
  std::int64_t day_us = 0;         ///< From first to last shot; above 0, at most 24 hours.
  std::int64_t change_us = 0;      ///< From one card change to the next; above 0.
  std::int64_t copy_us = 0;        ///< Copying and verifying a full card; above 0, below 2^53.
  std::int64_t last_copy_us = 0;   ///< Likewise for the day's last card; 0 to copy_us.
  std::int64_t travel_us = 0;      ///< Camera to station; 0 or more, at most 1000 hours.
  std::int64_t return_us = 0;      ///< Station back to camera, wiped and ready; likewise.
};

/// What a day needs.
struct Rotation {
  std::int64_t cards = 0;   ///< Each camera; 0 when nothing is shot or not sustainable.
  bool sustainable = true;  ///< False when a day's cards take the station more than 24 hours.
};

/// The smallest number of cards with which a card is always back no later than it is needed, on a
/// shoot without end. When copying can never keep up no number is enough, and it is 0.
///
/// The work is constant however many cards a day has: between two nights the wait for a card
/// changes steadily from one card to the next, so only the first card after each night and those at
/// the ends of the day are followed through. Exact; without queue and night it is ceil(C / T) + 1
/// for a change every T and C from hand-over to return.
/// @source own derivation, docs/formulas/store.md, "Cards in rotation".
[[nodiscard]] Rotation cards_in_rotation(const RotationDay& day);

}  // namespace widegate
