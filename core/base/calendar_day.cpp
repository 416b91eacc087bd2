#include "core/base/calendar_day.h"

#include <array>

namespace widegate {
namespace {

struct Date {
  std::int64_t year = 0, month = 0, day = 0;
};

constexpr std::array<std::string_view, 7> kWeekdays = {"Mon", "Tue", "Wed", "Thu",
                                                       "Fri", "Sat", "Sun"};
constexpr std::array<std::string_view, 12> kMonths = {"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                                      "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
constexpr std::array<std::int64_t, 12> kDays = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};

bool leap(std::int64_t year) { return year % 4 == 0 && (year % 100 != 0 || year % 400 == 0); }

std::int64_t days_in(std::int64_t year, std::int64_t month) {
  return kDays[static_cast<std::size_t>(month - 1)] + (month == 2 && leap(year) ? 1 : 0);
}

// Every fourth year has one more day, but for three in four centuries.
std::int64_t days_before(std::int64_t year) {
  const std::int64_t past = year - 1;
  return past * 365 + past / 4 - past / 100 + past / 400;
}

std::int64_t number_of(Date date) {
  std::int64_t number = days_before(date.year) - days_before(1970) + date.day - 1;
  for (std::int64_t month = 1; month < date.month; ++month) number += days_in(date.year, month);
  return number;
}

Date date_of(CalendarDay day) {
  Date date{.year = 1970 + day.number / 366, .month = 1, .day = 1};
  while (number_of({date.year + 1, 1, 1}) <= day.number) ++date.year;
  while (number_of(date) > day.number) --date.year;
  while (date.month < 12 && number_of({date.year, date.month + 1, 1}) <= day.number) ++date.month;
  date.day = day.number - number_of(date) + 1;
  return date;
}

std::optional<std::int64_t> digits(std::string_view text) {
  std::int64_t value = 0;
  for (const char c : text) {
    if (c < '0' || c > '9') return std::nullopt;
    value = value * 10 + (c - '0');
  }
  return value;
}

std::string two(std::int64_t value) { return (value < 10 ? "0" : "") + std::to_string(value); }

}  // namespace

std::optional<CalendarDay> parse_day(std::string_view text) {
  if (text.size() != 10 || text[4] != '-' || text[7] != '-') return std::nullopt;
  const auto year = digits(text.substr(0, 4));
  const auto month = digits(text.substr(5, 2));
  const auto day = digits(text.substr(8, 2));
  if (!year || !month || !day || *year < 1900 || *year > 2999) return std::nullopt;
  if (*month < 1 || *month > 12 || *day < 1 || *day > days_in(*year, *month)) return std::nullopt;
  return CalendarDay{number_of({*year, *month, *day})};
}

std::string print_day(CalendarDay day) {
  const Date date = date_of(day);
  return std::to_string(date.year) + "-" + two(date.month) + "-" + two(date.day);
}

std::string day_words(CalendarDay day) {
  const Date date = date_of(day);
  return std::string(kWeekdays[static_cast<std::size_t>(weekday_of(day))]) + " " +
         std::to_string(date.day) + " " +
         std::string(kMonths[static_cast<std::size_t>(date.month - 1)]) + " " +
         std::to_string(date.year);
}

}  // namespace widegate
