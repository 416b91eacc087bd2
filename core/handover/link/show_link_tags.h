// The numbers that stand for the fields of a show in links, as in link_tags.h: lists only grow at
// the end and nothing in them moves.
#pragma once

#include <span>
#include <string_view>

#include "core/show/show.h"

namespace widegate {

/// The list of a kind of row.
template <class Row>
[[nodiscard]] std::span<const std::string_view> show_link_tags() = delete;

template <>
std::span<const std::string_view> show_link_tags<Show>();
template <>
std::span<const std::string_view> show_link_tags<ShowPart>();
template <>
std::span<const std::string_view> show_link_tags<CardsAtHand>();
template <>
std::span<const std::string_view> show_link_tags<PriceRow>();
template <>
std::span<const std::string_view> show_link_tags<Person>();
template <>
std::span<const std::string_view> show_link_tags<Rental>();

}  // namespace widegate
