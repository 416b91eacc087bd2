// A show: the plans of several units that shoot together, and what they have in common, as plain
// data. Limits are in show_fields.h and show_check.h, JSON in show_json.h, what follows in
// evaluate_show.h.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/base/calendar_day.h"
#include "core/plan/plan.h"

namespace widegate {

/// What somebody asked for something. Nothing is ever computed from one currency to another.
struct Price {
  std::optional<double> amount = {};  ///< Nothing: not entered yet, which is not the same as 0.
  std::string currency = {};          ///< ISO 4217 code or any short word; empty without an amount.
  std::string date = {};              ///< ISO 8601 day it was given, or empty.
  std::string source = {};            ///< Who gave it, or empty.
  bool invented = false;              ///< Marked wherever a sum holds it.
  friend bool operator==(const Price&, const Price&) = default;
};

/// One unit, or one kind of day, with its own plan: cameras, days and footage are the plan's.
struct ShowPart {
  std::string name = {};
  std::int64_t first_day = 1;  ///< Shooting day of the show on which it begins, from 1.
  Plan plan = {};
  friend bool operator==(const ShowPart&, const ShowPart&) = default;
};

/// Whether parts that use the same model of drive or tape fill them together.
enum class Keeping { separate, shared };

/// What becomes of the footage of all parts.
struct ShowArchive {
  Keeping drives = Keeping::separate;
  Keeping tapes = Keeping::separate;
  double station_hours_per_day = 12;  ///< One copying station works so long.
  std::optional<double> upload_megabits_per_s =
      {};  ///< One line for all; nothing: each part's own.
  friend bool operator==(const ShowArchive&, const ShowArchive&) = default;
};

/// Cards that the production has already.
struct CardsAtHand {
  std::string card = {};
  std::int64_t count = 0;
  friend bool operator==(const CardsAtHand&, const CardsAtHand&) = default;
};

/// What a price in the list is for.
enum class Priced {
  card,
  drive,
  tape,
  stock_foot,
  processing_foot,
  scanning_foot,
  copying_hour,
  upload_terabyte,
};

/// The price of one of them.
struct PriceRow {
  Priced what = Priced::card;
  std::string id = {};  ///< Model of a card, drive or tape; empty for the rest.
  Price price = {};
  friend bool operator==(const PriceRow&, const PriceRow&) = default;
};

/// People, by the day or by the hour.
struct Person {
  std::string name = {};                     ///< What they do.
  std::string part = {};                     ///< Name of a part; empty: the whole show.
  std::int64_t count = 1;                    ///< How many.
  std::optional<std::int64_t> days = {};     ///< Nothing: every shooting day.
  std::optional<double> hours_per_day = {};  ///< With it the price is for an hour, else for a day.
  Price price = {};
  friend bool operator==(const Person&, const Person&) = default;
};

/// What is rented by the week, or bought.
struct Rental {
  std::string name = {};
  std::string part = {};  ///< Name of a part; empty: the whole show.
  std::int64_t count = 1;
  bool bought = false;
  std::optional<std::int64_t> weeks = {};  ///< Nothing: from first to last shooting day.
  Price price = {};
  friend bool operator==(const Rental&, const Rental&) = default;
};

/// When the show shoots.
struct ShowCalendar {
  std::string start = {};                          ///< ISO 8601 day of shooting day 1, or empty.
  std::optional<std::int64_t> shooting_days = {};  ///< Nothing: as many as the parts take.
  std::vector<Weekday> weekdays_off;               ///< Rising, each once, not all seven.
  std::vector<std::string> days_off;               ///< ISO 8601 days, rising, each once.
  friend bool operator==(const ShowCalendar&, const ShowCalendar&) = default;
};

/// One show.
struct Show {
  std::string title = "Untitled show";
  std::vector<ShowPart> parts;  ///< At least one.
  ShowArchive archive;
  std::vector<CardsAtHand> cards;
  std::vector<PriceRow> prices;
  std::vector<Person> people;
  std::vector<Rental> rent;
  ShowCalendar calendar;
  friend bool operator==(const Show&, const Show&) = default;
};

}  // namespace widegate
