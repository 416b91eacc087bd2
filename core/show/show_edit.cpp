#include "core/show/show_edit.h"

#include <algorithm>

#include "core/base/number_text.h"
#include "core/show/show_fields.h"
#include "core/show/show_rows.h"

namespace widegate {
namespace {

constexpr std::size_t kNameBytes = 60;

/// Cut so that no character of UTF-8 is left in two.
std::string cut(std::string_view text, std::size_t bytes) {
  if (text.size() <= bytes) return std::string(text);
  while (bytes > 0 && (static_cast<unsigned char>(text[bytes]) & 0xC0U) == 0x80U) --bytes;
  return std::string(text.substr(0, bytes));
}

bool is_taken(const Show& show, std::string_view name, std::size_t besides) {
  for (std::size_t i = 0; i < show.parts.size(); ++i) {
    if (i != besides && show.parts[i].name == name) return true;
  }
  return false;
}

void add_thing(std::vector<PricedThing>& things, PricedThing thing) {
  if (std::find(things.begin(), things.end(), thing) == things.end()) {
    things.push_back(std::move(thing));
  }
}

bool on_film(const ShowPart& part, const Catalogue& catalogue) {
  const Plan& plan = part.plan;
  const Camera* camera = find_row(plan.own.cameras, catalogue.cameras, plan.format.camera);
  return camera != nullptr && camera->medium == Medium::film;
}

template <class Rows>
bool of_part(const Rows& row, std::string_view name) {
  return row.part == name;
}

/// A row of the library as a price.
template <class Row>
void take_price(Show& show, const PricedThing& thing, const Row* row, const std::string& currency) {
  if (row == nullptr || row->price <= 0 || price_of(show, thing).amount) return;
  set_price(show, thing,
            {.amount = row->price,
             .currency = currency,
             .source = row->source,
             .invented = row->source.find("invented") != std::string::npos});
}

}  // namespace

bool add_part(Show& show, Plan plan) {
  if (show.parts.size() >= kMaxShowParts) return false;
  const std::string name = free_part_name(show, plan.title, show.parts.size());
  show.parts.push_back({.name = name, .plan = std::move(plan)});
  return true;
}

std::string free_part_name(const Show& show, std::string_view name, std::size_t besides) {
  const std::string wanted = name.empty() ? "Unit" : cut(name, kNameBytes);
  if (!is_taken(show, wanted, besides)) return wanted;
  for (std::size_t number = 2;; ++number) {
    const std::string end = " " + std::to_string(number);
    const std::string numbered = cut(wanted, kNameBytes - end.size()) + end;
    if (!is_taken(show, numbered, besides)) return numbered;
  }
}

void rename_part(Show& show, std::size_t part, std::string_view name) {
  const std::string before = show.parts[part].name;
  const std::string after = free_part_name(show, name, part);
  show.parts[part].name = after;
  for (Person& person : show.people) {
    if (person.part == before) person.part = after;
  }
  for (Rental& rental : show.rent) {
    if (rental.part == before) rental.part = after;
  }
}

void remove_part(Show& show, std::size_t part) {
  const std::string name = show.parts[part].name;
  std::erase_if(show.people, [&](const Person& person) { return of_part(person, name); });
  std::erase_if(show.rent, [&](const Rental& rental) { return of_part(rental, name); });
  show.parts.erase(show.parts.begin() + static_cast<std::ptrdiff_t>(part));
}

std::vector<PricedThing> things_to_price(const Show& show, const Catalogue& catalogue) {
  const ShowRows rows(show, catalogue);
  std::vector<PricedThing> things;
  bool film = false;
  for (const ShowPart& part : show.parts) {
    const Storing& store = part.plan.store;
    const bool scanned = on_film(part, catalogue);
    film = film || scanned;
    const Card* card = scanned ? nullptr : rows.card(store.card);
    if (card != nullptr) add_thing(things, {Priced::card, card->id, card->name});
    const Drive* drive = store.drive_copies > 0 ? rows.drive(store.drive) : nullptr;
    if (drive != nullptr) add_thing(things, {Priced::drive, drive->id, drive->name});
    const Tape* tape = store.tape_copies > 0 ? rows.tape(store.tape) : nullptr;
    if (tape != nullptr) add_thing(things, {Priced::tape, tape->id, tape->name});
  }
  for (std::size_t i = 0; i < priced_names().size(); ++i) {
    const auto what = static_cast<Priced>(i);
    const bool of_film = what >= Priced::stock_foot && what <= Priced::scanning_foot;
    if (priced_by_model(what) || (of_film && !film)) continue;
    things.push_back({what, "", std::string(priced_names()[i].label)});
  }
  return things;
}

Price price_of(const Show& show, const PricedThing& thing) {
  for (const PriceRow& row : show.prices) {
    if (row.what == thing.what && row.id == thing.id) return row.price;
  }
  return {};
}

void set_price(Show& show, const PricedThing& thing, Price price) {
  const auto same = [&](const PriceRow& row) {
    return row.what == thing.what && row.id == thing.id;
  };
  if (!price.amount) {
    std::erase_if(show.prices, same);
    return;
  }
  const auto at = std::find_if(show.prices.begin(), show.prices.end(), same);
  if (at != show.prices.end()) {
    at->price = std::move(price);
  } else {
    show.prices.push_back({.what = thing.what, .id = thing.id, .price = std::move(price)});
  }
}

bool read_price(std::string_view text, Price& price) {
  std::string digits;
  std::string currency;
  bool ended = false;
  for (const char c : text) {
    const bool digit = (c >= '0' && c <= '9') || c == '.' || c == ',';
    if (c == ' ') {
      ended = ended || !currency.empty();
    } else if (digit) {
      digits += c == ',' ? '.' : c;
    } else {
      if (ended && !digits.empty() && !currency.empty()) return false;
      currency += c;
    }
  }
  if (digits.empty() && currency.empty()) {
    price = {};
    return true;
  }
  const auto amount = parse_decimal(digits);
  if (!amount || currency.empty() || currency.size() > 12 || *amount < 0 || *amount > 1e9) {
    return false;
  }
  price.amount = *amount;
  price.currency = std::move(currency);
  return true;
}

std::string typed_price(const Price& price) {
  return price.amount ? print_number(*price.amount) + " " + price.currency : std::string();
}

void take_library_prices(Show& show, const Catalogue& catalogue) {
  const std::vector<ShowPart> parts = show.parts;
  for (const ShowPart& part : parts) {
    Show one;
    one.parts = {part};
    const ShowRows rows(one, catalogue);
    const std::string& currency = part.plan.store.currency;
    for (const PricedThing& thing : things_to_price(one, catalogue)) {
      if (thing.what == Priced::card) take_price(show, thing, rows.card(thing.id), currency);
      if (thing.what == Priced::drive) take_price(show, thing, rows.drive(thing.id), currency);
      if (thing.what == Priced::tape) take_price(show, thing, rows.tape(thing.id), currency);
    }
  }
}

}  // namespace widegate
