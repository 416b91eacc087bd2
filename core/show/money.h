// The money of a show: only what was entered, line by line. A price belongs to its currency; sums
// of different currencies are never added, and what has no price is named and left out.
#pragma once

#include <vector>

#include "core/base/calendar_day.h"
#include "core/show/evaluated_part.h"
#include "core/show/media_sets.h"
#include "core/show/report.h"

namespace widegate {

/// What the lines of the money come from.
struct Costed {
  const Show& show;
  const std::vector<EvaluatedPart>& parts;
  const std::vector<CardKind>& cards;
  const std::vector<FilledMedia>& media;
  const std::vector<CalendarDay>& dates;  ///< Of the shooting days; empty without a calendar.
  std::int64_t days = 0;                  ///< Shooting days of the show.
};

/// Lines and sums. Cards are those to have, less those at hand; drives and tapes whole ones; film
/// by the foot; people by the day (or hour); what is rented by the week, begun weeks counted whole.
[[nodiscard]] MoneyReport money_of(const Costed& costed);

/// Money spent by the end of each shooting day, one list for each day with a value for each sum:
/// cards and what is bought on the first day they are used, drives and tapes as they are begun,
/// rent as weeks begin, the rest day by day.
[[nodiscard]] std::vector<std::vector<Span>> money_by_day(const Costed& costed,
                                                          const MoneyReport& money);

/// Sum of spans; the order of the parts changes no bit of it.
[[nodiscard]] Span sum_of(std::vector<Span> parts);

}  // namespace widegate
