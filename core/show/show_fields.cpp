#include "core/show/show_fields.h"

#include <array>

namespace widegate {
namespace {

constexpr std::int64_t kBillion = 1'000'000'000;
constexpr std::int64_t kMostDays = 10'000;
constexpr std::int64_t kDateLetters = 10;

constexpr auto kKeepings = std::to_array<ChoiceName>({
    {"separate", "Each part on its own"},
    {"shared", "All parts together"},
});
constexpr auto kPriced = std::to_array<ChoiceName>({
    {"card", "A card"},
    {"drive", "A drive"},
    {"tape", "A tape"},
    {"stock_foot", "A foot of film stock"},
    {"processing_foot", "Processing a foot"},
    {"scanning_foot", "Scanning a foot"},
    {"copying_hour", "An hour of copying"},
    {"upload_terabyte", "Uploading a terabyte"},
});
constexpr auto kWeekdays = std::to_array<ChoiceName>({
    {"monday", "Monday"},
    {"tuesday", "Tuesday"},
    {"wednesday", "Wednesday"},
    {"thursday", "Thursday"},
    {"friday", "Friday"},
    {"saturday", "Saturday"},
    {"sunday", "Sunday"},
});

constexpr FieldSpec text(std::string_view pointer, std::string_view label, std::int64_t shortest,
                         std::int64_t longest) {
  return {.pointer = pointer, .label = label, .low = shortest, .high = longest};
}
constexpr FieldSpec number(std::string_view pointer, std::string_view label, std::string_view unit,
                           Rational low, Rational high) {
  return {.pointer = pointer, .label = label, .unit = unit, .low = low, .high = high};
}
constexpr FieldSpec above_low(FieldSpec spec) {
  spec.low_excluded = true;
  return spec;
}
constexpr FieldSpec choice(std::string_view pointer, std::string_view label,
                           std::span<const ChoiceName> choices) {
  return {.pointer = pointer, .label = label, .choices = choices};
}
constexpr FieldSpec id(std::string_view pointer, std::string_view label, IdList ids,
                       bool optional) {
  return {.pointer = pointer, .label = label, .optional = optional, .ids = ids};
}
constexpr FieldSpec name() { return text("/name", "Name", 1, 60); }
constexpr FieldSpec of_part() { return text("/part", "Part", 0, 60); }
constexpr FieldSpec count() { return number("/count", "How many", "", 0, kMostDays); }

constexpr auto kShow = std::to_array<Field<Show>>({
    field<&Show::title>(text("/title", "Title", 0, 120)),
    field<&Show::archive, &ShowArchive::drives>(choice("/archive/drives", "Drives", kKeepings)),
    field<&Show::archive, &ShowArchive::tapes>(choice("/archive/tapes", "Tapes", kKeepings)),
    field<&Show::archive, &ShowArchive::station_hours_per_day>(
        above_low(number("/archive/station_hours_per_day", "A copying station works", "h", 0, 24))),
    field<&Show::archive, &ShowArchive::upload_megabits_per_s>(
        number("/archive/upload_megabits_per_s", "Line of all parts", "Mbit/s", Rational(1, 100),
               1'000'000)),
    field<&Show::calendar, &ShowCalendar::start>(
        text("/calendar/start", "First shooting day", 0, kDateLetters)),
    field<&Show::calendar, &ShowCalendar::shooting_days>(
        number("/calendar/shooting_days", "Shooting days", "", 1, 2 * kMostDays)),
});
constexpr auto kPart = std::to_array<Field<ShowPart>>({
    field<&ShowPart::name>(name()),
    field<&ShowPart::first_day>(
        number("/first_day", "Shooting day it begins on", "", 1, kMostDays)),
});
constexpr auto kCards = std::to_array<Field<CardsAtHand>>({
    field<&CardsAtHand::card>(id("/card", "Card", IdList::card, false)),
    field<&CardsAtHand::count>(count()),
});

// Every price is spelled alike.
constexpr FieldSpec kAmount = number("/price/amount", "Amount", "", 0, kBillion);
constexpr FieldSpec kCurrency = text("/price/currency", "Currency", 0, 12);
constexpr FieldSpec kDate = text("/price/date", "Day it was given", 0, kDateLetters);
constexpr FieldSpec kSource = text("/price/source", "Source", 0, 300);
constexpr FieldSpec kInvented = {.pointer = "/price/invented", .label = "Invented"};

constexpr auto kPrice = std::to_array<Field<PriceRow>>({
    field<&PriceRow::what>(choice("/what", "What it is for", kPriced)),
    field<&PriceRow::id>(id("/id", "Model", IdList::card_kind, true)),
    field<&PriceRow::price, &Price::amount>(kAmount),
    field<&PriceRow::price, &Price::currency>(kCurrency),
    field<&PriceRow::price, &Price::date>(kDate),
    field<&PriceRow::price, &Price::source>(kSource),
    field<&PriceRow::price, &Price::invented>(kInvented),
});
constexpr auto kPerson = std::to_array<Field<Person>>({
    field<&Person::name>(name()),
    field<&Person::part>(of_part()),
    field<&Person::count>(count()),
    field<&Person::days>(number("/days", "Days", "", 0, 2 * kMostDays)),
    field<&Person::hours_per_day>(above_low(number("/hours_per_day", "Hours a day", "h", 0, 24))),
    field<&Person::price, &Price::amount>(kAmount),
    field<&Person::price, &Price::currency>(kCurrency),
    field<&Person::price, &Price::date>(kDate),
    field<&Person::price, &Price::source>(kSource),
    field<&Person::price, &Price::invented>(kInvented),
});
constexpr auto kRental = std::to_array<Field<Rental>>({
    field<&Rental::name>(name()),
    field<&Rental::part>(of_part()),
    field<&Rental::count>(count()),
    field<&Rental::bought>(FieldSpec{.pointer = "/bought", .label = "Bought"}),
    field<&Rental::weeks>(number("/weeks", "Weeks", "", 0, kMostDays)),
    field<&Rental::price, &Price::amount>(kAmount),
    field<&Rental::price, &Price::currency>(kCurrency),
    field<&Rental::price, &Price::date>(kDate),
    field<&Rental::price, &Price::source>(kSource),
    field<&Rental::price, &Price::invented>(kInvented),
});

WIDEGATE_EVERY_MEMBER(Show, rows_of<Show>(kShow), 7, title, parts, archive, cards, prices, people,
                      rent, calendar);
WIDEGATE_EVERY_MEMBER(ShowArchive, rows_of<ShowArchive>(kShow), 0, drives, tapes,
                      station_hours_per_day, upload_megabits_per_s);
WIDEGATE_EVERY_MEMBER(ShowCalendar, rows_of<ShowCalendar>(kShow), 2, start, shooting_days,
                      weekdays_off, days_off);
WIDEGATE_EVERY_MEMBER(ShowPart, rows_of<ShowPart>(kPart), 1, name, first_day, plan);
WIDEGATE_EVERY_MEMBER(CardsAtHand, rows_of<CardsAtHand>(kCards), 0, card, count);
WIDEGATE_EVERY_MEMBER(PriceRow, rows_of<PriceRow>(kPrice), 1, what, id, price);
WIDEGATE_EVERY_MEMBER(Price, rows_of<Price>(kPrice), 0, amount, currency, date, source, invented);
WIDEGATE_EVERY_MEMBER(Person, rows_of<Person>(kPerson), 1, name, part, count, days, hours_per_day,
                      price);
WIDEGATE_EVERY_MEMBER(Rental, rows_of<Rental>(kRental), 1, name, part, count, bought, weeks, price);

}  // namespace

template <>
std::span<const Field<Show>> show_fields() {
  return kShow;
}
template <>
std::span<const Field<ShowPart>> show_fields() {
  return kPart;
}
template <>
std::span<const Field<CardsAtHand>> show_fields() {
  return kCards;
}
template <>
std::span<const Field<PriceRow>> show_fields() {
  return kPrice;
}
template <>
std::span<const Field<Person>> show_fields() {
  return kPerson;
}
template <>
std::span<const Field<Rental>> show_fields() {
  return kRental;
}

std::span<const ChoiceName> weekday_names() { return kWeekdays; }
std::span<const ChoiceName> priced_names() { return kPriced; }
bool priced_by_model(Priced what) { return what <= Priced::tape; }

}  // namespace widegate
