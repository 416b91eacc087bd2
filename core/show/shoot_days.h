// Which days of the calendar a show shoots on.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "core/base/calendar_day.h"
#include "core/show/show.h"

namespace widegate {

/// Shooting days until the last part has ended: the largest of first day + days - 1.
[[nodiscard]] std::int64_t days_needed(const Show& show);

/// The day of the calendar of each shooting day, days off left out; empty when the show has no
/// start. A start that is itself a day off moves on to the next that is not.
/// @param days  how many.
[[nodiscard]] std::vector<CalendarDay> shoot_days(const ShowCalendar& calendar, std::int64_t days);

/// Weeks that are paid for from one shooting day to another, both included and begun ones counted
/// whole: by the calendar where it has a start, else by weeks of as many days as are shot in one.
/// @param first, last  shooting days from 1.
[[nodiscard]] std::int64_t weeks_between(const ShowCalendar& calendar,
                                         const std::vector<CalendarDay>& dates, std::int64_t first,
                                         std::int64_t last);

}  // namespace widegate
