// The tables of every scalar value of a show, one for each kind of row, as plan_fields.h is for a
// plan: reading and writing JSON, checking, schema and links walk them. A member without a row does
// not compile. Plans and lists are handled beside the tables, by name.
#pragma once

#include <span>
#include <string_view>

#include "core/field/field.h"
#include "core/show/show.h"

namespace widegate {

inline constexpr std::size_t kMaxShowParts = 24;
inline constexpr std::size_t kMaxShowRows = 200;     ///< Of prices, people, rent, cards.
inline constexpr std::size_t kMaxShowDaysOff = 400;  ///< Named one by one.

/// Every row of the table for this kind of row, in the order of the document.
template <class Row>
[[nodiscard]] std::span<const Field<Row>> show_fields() = delete;

template <>
std::span<const Field<Show>> show_fields();
template <>
std::span<const Field<ShowPart>> show_fields();
template <>
std::span<const Field<CardsAtHand>> show_fields();
template <>
std::span<const Field<PriceRow>> show_fields();
template <>
std::span<const Field<Person>> show_fields();
template <>
std::span<const Field<Rental>> show_fields();

/// Days of the week, in their order.
[[nodiscard]] std::span<const ChoiceName> weekday_names();

/// What a price is for: key and words.
[[nodiscard]] std::span<const ChoiceName> priced_names();

/// What a price is for is a model of the library: a card, a drive or a tape.
[[nodiscard]] bool priced_by_model(Priced what);

/// The lists of rows of a show: visit(key, rows) for each, in the order of the document.
template <class AnyShow, class Visit>
void for_show_lists(AnyShow& show, Visit visit) {
  visit(std::string_view("cards"), show.cards);
  visit(std::string_view("prices"), show.prices);
  visit(std::string_view("people"), show.people);
  visit(std::string_view("rent"), show.rent);
}

}  // namespace widegate
