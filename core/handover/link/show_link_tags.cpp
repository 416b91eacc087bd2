#include "core/handover/link/show_link_tags.h"

namespace widegate {
namespace {

constexpr std::string_view kShow[] = {
    "/title",
    "/archive/drives",
    "/archive/tapes",
    "/archive/station_hours_per_day",
    "/archive/upload_megabits_per_s",
    "/calendar/start",
    "/calendar/shooting_days",
};
constexpr std::string_view kPart[] = {"/name", "/first_day"};
constexpr std::string_view kCards[] = {"/card", "/count"};
constexpr std::string_view kPrice[] = {
    "/what",       "/id",           "/price/amount",   "/price/currency",
    "/price/date", "/price/source", "/price/invented",
};
constexpr std::string_view kPerson[] = {
    "/name",         "/part",           "/count",      "/days",         "/hours_per_day",
    "/price/amount", "/price/currency", "/price/date", "/price/source", "/price/invented",
};
constexpr std::string_view kRental[] = {
    "/name",         "/part",           "/count",      "/bought",       "/weeks",
    "/price/amount", "/price/currency", "/price/date", "/price/source", "/price/invented",
};

}  // namespace

template <>
std::span<const std::string_view> show_link_tags<Show>() {
  return kShow;
}
template <>
std::span<const std::string_view> show_link_tags<ShowPart>() {
  return kPart;
}
template <>
std::span<const std::string_view> show_link_tags<CardsAtHand>() {
  return kCards;
}
template <>
std::span<const std::string_view> show_link_tags<PriceRow>() {
  return kPrice;
}
template <>
std::span<const std::string_view> show_link_tags<Person>() {
  return kPerson;
}
template <>
std::span<const std::string_view> show_link_tags<Rental>() {
  return kRental;
}

}  // namespace widegate
