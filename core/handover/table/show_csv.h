// A show as tables for spreadsheets (RFC 4180): what a data wrangler and an office work on with.
#pragma once

#include <string>

#include "core/show/report.h"
#include "core/show/show.h"

namespace widegate {

/// Blocks under one another, with the same columns throughout: what, of, least, most, unit, note.
/// What it is first (title, parts with their formats, what it rests on), then totals with their
/// workings, the figures of each part, cards, drives and tapes by model, money line by line with
/// price, currency, day and source, and what to look out for. Names stand beside ids.
/// @param report  a valid report of `show`.
[[nodiscard]] std::string show_to_csv(const Show& show, const ShowReport& report);

/// One row for each shooting day: number, date, bytes in all and of each part, sums so far, hours,
/// drives and tapes so far, money so far in each currency. Units stand in the headings.
[[nodiscard]] std::string show_days_to_csv(const ShowReport& report);

}  // namespace widegate
