// Days of the calendar: dates whose weekdays are on record, and every day of four centuries.
#include "core/base/calendar_day.h"

#include <doctest/doctest.h>

namespace widegate {
namespace {

TEST_CASE("Dates on record") {
  // 1970-01-01 was a Thursday (POSIX); 2000-02-29 was a day, 1900-02-29 was none (ISO 8601).
  CHECK(parse_day("1970-01-01") == CalendarDay{0});
  CHECK(weekday_of(CalendarDay{0}) == Weekday::thursday);
  CHECK(weekday_of(*parse_day("1969-07-20")) == Weekday::sunday);  // first steps on the Moon
  CHECK(weekday_of(*parse_day("2027-03-26")) == Weekday::friday);  // Good Friday
  CHECK(parse_day("2000-02-29").has_value());
  CHECK(day_words(*parse_day("2027-03-01")) == "Mon 1 Mar 2027");
}

TEST_CASE("What is no day of the calendar") {
  for (const char* text :
       {"", "2027-2-01", "2027-02-29", "1900-02-29", "2027-13-01", "2027-00-10", "2027-04-31",
        "2027/04/01", "1899-12-31", "3000-01-01", "2027-04-01 ", "20a7-04-01"}) {
    CAPTURE(text);
    CHECK(!parse_day(text));
  }
}

TEST_CASE("Every day of the Gregorian cycle is read as it was written, one after another") {
  CalendarDay day = *parse_day("1900-01-01");
  Weekday weekday = Weekday::monday;  // it was
  for (std::int64_t left = 146'097; left > 0; --left) {
    REQUIRE(parse_day(print_day(day)) == day);
    REQUIRE(weekday_of(day) == weekday);
    weekday = static_cast<Weekday>((static_cast<int>(weekday) + 1) % 7);
    day = day_after(day);
  }
  CHECK(print_day(day) == "2300-01-01");
}

}  // namespace
}  // namespace widegate
