// The figures of a show as people read them: label, rounded text, unit, working. One table for the
// screen, the sheet, the tables and the command line; JSON has the exact values.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/show/report.h"

namespace widegate {

/// One figure.
struct ShowFigure {
  std::string_view key;         ///< As in the report's JSON: "totals.drives", "total_bytes".
  std::string_view label;       ///< Plain words, no unit.
  std::string text;             ///< "12.3", "1 204–1 310", rounded for reading.
  std::string unit;             ///< "TB", "h", "cards"; of `text`.
  Span value;                   ///< Exact, in `value_unit`.
  std::string_view value_unit;  ///< "bytes", "h"; empty for counts.
  std::string working;  ///< How it came about, the numbers put in; empty where it was chosen.
};

/// "12.3 TB".
[[nodiscard]] std::string with_unit(const ShowFigure& figure);

/// The figures of the show as a whole, in reading order.
[[nodiscard]] std::vector<ShowFigure> show_figures(const ShowReport& report);

/// The figures of one part: the same rows for every part, so that they make the columns of a table.
[[nodiscard]] std::vector<ShowFigure> part_figures(const PartReport& part);

/// What the figures rest on, a row for each, none of it computed: days, units, cameras, copies.
struct Assumption {
  std::string label;
  std::string text;
};
[[nodiscard]] std::vector<Assumption> show_assumptions(const Show& show, const ShowReport& report);

/// A sum of money with its thousands set apart, and its currency: "30 839 EUR"; a range has a dash.
[[nodiscard]] std::string money_text(Span cost, std::string_view currency);

/// How many of a line: "12 cards", "3.5–4.1 TB".
[[nodiscard]] std::string short_quantity(const MoneyLine& line);

/// A price with what is known of it: "1 350 EUR, 2026-11-20, quote of the rental house, invented".
[[nodiscard]] std::string price_text(const Price& price);

/// Full days of a set in words: "day 12, 24 and 36"; "not before the last day" without any.
[[nodiscard]] std::string full_days_text(const ShowReport& report, const MediaSet& set);

}  // namespace widegate
