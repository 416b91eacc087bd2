// Changing a show: parts in and out, prices as people type them. Nothing here checks the whole;
// show_check.h does.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "core/catalogue/catalogue.h"
#include "core/show/show.h"

namespace widegate {

/// Adds a plan as a part, named as its title or, where another part has that name or it has none,
/// with a number behind it. False when the show is full.
bool add_part(Show& show, Plan plan);

/// The name, with a number behind it when a part other than `besides` has it; at most 60 bytes.
[[nodiscard]] std::string free_part_name(const Show& show, std::string_view name,
                                         std::size_t besides);

/// Gives a part another name, and people and rentals of it with it.
void rename_part(Show& show, std::size_t part, std::string_view name);

/// Takes a part out; people and rentals of it go too.
void remove_part(Show& show, std::size_t part);

/// Something a show may have a price for.
struct PricedThing {
  Priced what = Priced::card;
  std::string id;    ///< Of the model; empty for the rest.
  std::string name;  ///< "Rowan magazine, 1 TB", "A foot of film stock".
  friend bool operator==(const PricedThing&, const PricedThing&) = default;
};

/// The models that the parts use, then what is not sold by models. Film's are there only where a
/// part is shot on film.
[[nodiscard]] std::vector<PricedThing> things_to_price(const Show& show,
                                                       const Catalogue& catalogue);

/// The price that was entered; one without an amount when there is none.
[[nodiscard]] Price price_of(const Show& show, const PricedThing& thing);

/// Enters a price in the place of the one that is there. One without an amount takes it out.
void set_price(Show& show, const PricedThing& thing, Price price);

/// Reads "1350 EUR", "EUR 1 350", "0.95 GBP": an amount and its currency, which come together so
/// that no amount is ever relabelled. Empty text is no amount. False, and nothing changed, for any
/// other text.
[[nodiscard]] bool read_price(std::string_view text, Price& price);

/// "1350 EUR", as read_price() reads it; empty without an amount.
[[nodiscard]] std::string typed_price(const Price& price);

/// Enters the library's prices of cards, drives and tapes where none was entered, in the currency
/// of the first plan that uses them, with the row's source; those are invented in the built-in
/// library, and marked so.
void take_library_prices(Show& show, const Catalogue& catalogue);

}  // namespace widegate
