// What follows from a show, as plain data with the unit in each name; filled by evaluate_show.h,
// listed once with JSON keys in show_report_fields.h, told in show_figures.h.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/problem.h"
#include "core/base/severity.h"
#include "core/base/span.h"
#include "core/catalogue/codec.h"
#include "core/show/show.h"

namespace widegate {

/// One part. Every figure of its plan alone is evaluate()'s, value for value.
struct PartReport {
  std::string name;
  std::string format;  ///< Camera, mode, recording option and codec by their names.
  std::int64_t first_day = 1, last_day = 1;       ///< Shooting days of the show.
  std::int64_t days = 0, units = 0, cameras = 0;  ///< Cameras of all units.
  double recorded_hours_per_day = 0;              ///< Each camera.
  bool no_cards = false;                          ///< Film.
  std::string card;                               ///< Name of the model; empty on film.
  Span bytes_per_day;                             ///< All cameras.
  Span total_bytes;
  std::int64_t copies = 0;
  Span copies_total_bytes;
  ByteRange cards_per_day;      ///< Each camera.
  ByteRange cards_in_rotation;  ///< Each camera, held ones and spares with them.
  std::int64_t spare_cards = 0;
  double hold_hours = 0;
  ByteRange cards_to_have;  ///< All cameras.
  bool rotation_sustainable = true;
  Span copy_hours_per_day;            ///< Each unit.
  Span copy_hours_per_day_all_units;  ///< On a day of the part.
  ByteRange drives;                   ///< Kept on its own.
  ByteRange tapes;
  Span tape_hours;
  Span upload_total_bytes;
  Span upload_hours_per_day;  ///< On the part's own line, spread over its days.
  double film_feet = 0;       ///< 0 without film.
  bool accepted = true;       ///< Its plan meets its commission.
};

/// Drives or tapes that hold the same cards: those of one part, or of all that share a model.
struct MediaSet {
  bool tape = false;
  std::string id, name;  ///< Of the model.
  std::string parts;     ///< Names, separated by commas.
  ByteRange media;       ///< Of all copies, cards in one piece.
  ByteRange fewest;      ///< No way of packing takes fewer.
  /// Shooting days after which the media of one copy are full and new ones are begun, with the
  /// codecs' largest frames.
  std::vector<std::int64_t> full_days;
};

/// One model of card.
struct CardKind {
  std::string id, name;
  ByteRange to_have;                      ///< As every part asks for its own.
  ByteRange at_once;                      ///< Most of them on one day.
  std::optional<std::int64_t> at_hand;    ///< Nothing: not said.
  std::optional<std::int64_t> short_day;  ///< First shooting day that asks for more than that.
};

/// One shooting day.
struct ShowDay {
  std::string date;  ///< ISO 8601; empty without a calendar.
  Span bytes;
  Span bytes_so_far;
  Span copies_so_far_bytes;
  Span copy_hours;
  Span upload_hours;
  ByteRange drives_so_far, tapes_so_far;
  std::vector<Span> part_bytes;    ///< As the parts.
  std::vector<Span> money_so_far;  ///< As the sums of the money.
};

/// One thing that costs money.
struct MoneyLine {
  std::string name;
  std::string part;  ///< Name of a part; empty: the whole show.
  Span quantity;
  std::string_view unit;  ///< "cards", "days", "ft".
  Price price;            ///< Of one.
  Span cost;              ///< 0 without an amount.
};

/// All lines in one currency.
struct MoneySum {
  std::string currency;
  Span cost;
  bool invented = false;  ///< Holds a price that is.
};

struct MoneyReport {
  std::vector<MoneyLine> lines;
  std::vector<MoneySum> sums;  ///< In the order currencies are met; never added to one another.
  std::vector<std::string> missing;  ///< Lines without an amount, which no sum holds.
};

/// The show as a whole.
struct ShowTotals {
  std::int64_t shooting_days = 0;
  Span total_bytes;
  Span copies_total_bytes;
  Span average_day_bytes;
  Span least_day_bytes;
  Span largest_day_bytes;
  std::int64_t largest_day = 1;  ///< The first such, with the codecs' largest frames.
  ByteRange cards_to_have;
  ByteRange drives, fewest_drives;
  ByteRange tapes, fewest_tapes;
  Span copy_hours_per_day;  ///< Of the day with most.
  ByteRange stations;       ///< That work so long a day.
  double station_hours_per_day = 0;
  Span tape_hours;
  Span upload_total_bytes;
  Span upload_hours_per_day;  ///< Of the day with most.
  double film_feet = 0;
};

/// What to look out for.
struct ShowNote {
  Severity severity = Severity::caution;
  std::string text;
};

struct ShowReport {
  Problems problems;  ///< Why nothing else here holds; empty for a valid show.
  std::string title;
  std::vector<PartReport> parts;
  ShowTotals totals;
  std::vector<CardKind> cards;
  std::vector<MediaSet> media;
  MoneyReport money;
  std::vector<ShowDay> days;
  std::vector<ShowNote> notes;
};

}  // namespace widegate
