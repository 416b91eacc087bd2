#include "core/show/shoot_days.h"

#include <algorithm>

namespace widegate {
namespace {

constexpr std::int64_t kDaysOfWeek = 7;

std::int64_t rounded_up(std::int64_t a, std::int64_t b) { return (a + b - 1) / b; }

bool is_off(const ShowCalendar& calendar, const std::vector<CalendarDay>& days_off,
            CalendarDay day) {
  const auto& weekdays = calendar.weekdays_off;
  return std::find(weekdays.begin(), weekdays.end(), weekday_of(day)) != weekdays.end() ||
         std::binary_search(days_off.begin(), days_off.end(), day);
}

}  // namespace

std::int64_t days_needed(const Show& show) {
  std::int64_t days = 0;
  for (const ShowPart& part : show.parts) {
    days = std::max(days, part.first_day + part.plan.shooting.days - 1);
  }
  return days;
}

std::vector<CalendarDay> shoot_days(const ShowCalendar& calendar, std::int64_t days) {
  const auto start = parse_day(calendar.start);
  if (!start) return {};
  std::vector<CalendarDay> off;
  off.reserve(calendar.days_off.size());
  for (const std::string& text : calendar.days_off) {
    if (const auto day = parse_day(text)) off.push_back(*day);
  }
  std::vector<CalendarDay> shot;
  shot.reserve(static_cast<std::size_t>(days));
  for (CalendarDay day = *start; static_cast<std::int64_t>(shot.size()) < days;
       day = day_after(day)) {
    if (!is_off(calendar, off, day)) shot.push_back(day);
  }
  return shot;
}

std::int64_t weeks_between(const ShowCalendar& calendar, const std::vector<CalendarDay>& dates,
                           std::int64_t first, std::int64_t last) {
  if (last < first) return 0;
  if (dates.empty()) {
    const auto off = static_cast<std::int64_t>(calendar.weekdays_off.size());
    return rounded_up(last - first + 1, kDaysOfWeek - off);
  }
  const std::int64_t from = dates[static_cast<std::size_t>(first - 1)].number;
  const std::int64_t to = dates[static_cast<std::size_t>(last - 1)].number;
  return rounded_up(to - from + 1, kDaysOfWeek);
}

}  // namespace widegate
