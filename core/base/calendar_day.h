// Days of the calendar as numbers: reading and writing ISO 8601 dates, weekdays, one day and the
// next. Nothing of hours, zones or what today is.
#pragma once

#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace widegate {

enum class Weekday { monday, tuesday, wednesday, thursday, friday, saturday, sunday };

/// A day of the Gregorian calendar, counted from 1970-01-01.
struct CalendarDay {
  std::int64_t number = 0;
  friend constexpr auto operator<=>(const CalendarDay&, const CalendarDay&) = default;
};

/// "2027-03-01" from the year 1900 to 2999; nothing for any other text, or a day that is not in the
/// calendar (2027-02-29).
[[nodiscard]] std::optional<CalendarDay> parse_day(std::string_view text);

/// The day as parse_day() reads it.
[[nodiscard]] std::string print_day(CalendarDay day);

/// "Mon 1 Mar 2027".
[[nodiscard]] std::string day_words(CalendarDay day);

[[nodiscard]] constexpr CalendarDay day_after(CalendarDay day) { return {day.number + 1}; }

/// 1970-01-01 was a Thursday.
[[nodiscard]] constexpr Weekday weekday_of(CalendarDay day) {
  constexpr std::int64_t kThursday = 3;
  const std::int64_t place = (day.number + kThursday) % 7;
  return static_cast<Weekday>(place < 0 ? place + 7 : place);
}

}  // namespace widegate
