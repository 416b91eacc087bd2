// What the Store question answers, as plain data; filled by store.h.
#pragma once

#include <cstdint>
#include <string>

#include "core/base/span.h"
#include "core/base/wide.h"
#include "core/catalogue/codec.h"

namespace widegate {

/// The cards that one camera fills on a day: so many full ones, then one that is part-filled. On
/// film there are none: its scan is loose.
struct DayCards {
  std::int64_t full_bytes = 0;
  std::int64_t full = 0;
  std::int64_t last_bytes = 0;
  Wide loose_bytes = 0;
};

/// Cards, copies, archive, money. Spans are ranges only for codecs that are ranges.
struct StoreReport {
  ByteRange bytes_per_frame;         ///< Coded frame.
  ByteRange bytes_per_frame_stored;  ///< With the container's share.
  double audio_bytes_per_s = 0;
  Span bytes_per_s;
  Span bytes_per_minute;
  bool no_cards = false;         ///< Film: what a card takes means nothing.
  bool card_guaranteed = false;  ///< A standard's class or the camera's maker does.
  std::int64_t usable_card_bytes = 0;
  ByteRange frames_per_card;  ///< Whole frames; a count, not bytes.
  Span minutes_per_card;
  Span write_headroom;               ///< Card speed over data rate.
  ByteRange cards_per_day;           ///< Each camera.
  Span card_change_minutes;          ///< By the clock, from one card change to the next.
  ByteRange cards_in_rotation;       ///< Each camera.
  ByteRange cards_in_all;            ///< What the rotations of all cameras take together.
  bool rotation_sustainable = true;  ///< False when copying can never keep up, whatever the cards.
  Span offload_minutes_per_card;     ///< All passes over a full card.
  std::int64_t offload_bytes_per_s = 0;  ///< Of the slowest part.
  std::int64_t offload_passes = 0;       ///< Copy, and what the verification reads again.
  std::string offload_limited_by;        ///< "card reader", "link", "drive", "checksum".
  Span offload_hours_per_day;            ///< Each unit.
  double recorded_hours_per_day = 0;     ///< Sensor running time of each camera.
  double playing_hours = 0;              ///< Of all footage, at the project rate.
  Span shoot_total_bytes;
  std::int64_t copies = 0;  ///< Of everything, on drives and tapes.
  Span copies_total_bytes;
  DayCards lightest_day;    ///< What a camera brings, with the codec's smallest frames.
  DayCards heaviest_day;    ///< With its largest.
  ByteRange drives;         ///< Over all copies, cards in one piece.
  ByteRange fewest_drives;  ///< No way of packing takes fewer.
  double drive_gib = 0;     ///< Capacity of one, in the binary unit some computers report.
  ByteRange tapes;          ///< Over all tape copies, cards in one piece.
  ByteRange fewest_tapes;
  Span tape_hours;  ///< Writing, and reading back where copies are verified.
  Span upload_total_bytes;
  Span upload_hours;
  Span card_cost, drive_cost, tape_cost, wrangler_cost, upload_cost;
  Span cost;
};

}  // namespace widegate
