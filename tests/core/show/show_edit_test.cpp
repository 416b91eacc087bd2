// Parts in and out of a show, names, prices as they are typed.
#include "core/show/show_edit.h"

#include <doctest/doctest.h>

#include "core/catalogue/catalogue_json.h"
#include "core/show/show_check.h"

namespace widegate {
namespace {

const Catalogue& library() {
  static const Catalogue catalogue = built_in_catalogue().value();
  return catalogue;
}

TEST_CASE("Parts are called as their plans, each name once; people follow a new name") {
  Show show;
  Plan plan;
  plan.title = "Ferry";
  CHECK(add_part(show, plan));
  CHECK(add_part(show, plan));
  plan.title = "";
  CHECK(add_part(show, plan));
  plan.title = std::string(80, 'x');
  CHECK(add_part(show, plan));
  CHECK(show.parts[0].name == "Ferry");
  CHECK(show.parts[1].name == "Ferry 2");
  CHECK(show.parts[2].name == "Unit");
  CHECK(show.parts[3].name == std::string(60, 'x'));
  show.people.push_back({.name = "A", .part = "Ferry 2"});
  show.rent.push_back({.name = "B", .part = "Unit"});
  rename_part(show, 1, "Ferry");
  CHECK(show.parts[1].name == "Ferry 2");
  rename_part(show, 1, "Night");
  CHECK(show.people[0].part == "Night");
  CHECK(check_show(show, library()).empty());
  remove_part(show, 2);
  CHECK(show.rent.empty());
  CHECK(show.people.size() == 1);
  CHECK(check_show(show, library()).empty());
  while (show.parts.size() < 24) REQUIRE(add_part(show, plan));
  CHECK(!add_part(show, plan));
}

TEST_CASE("A price is typed with its currency, in any order and grouping") {
  const auto typed = [](std::string_view text) {
    Price price;
    return read_price(text, price) ? typed_price(price) : std::string("refused");
  };
  CHECK(typed("1350 EUR") == "1350 EUR");
  CHECK(typed("EUR 1 350") == "1350 EUR");
  CHECK(typed("0,95GBP") == "0.95 GBP");
  CHECK(typed("€1350") == "1350 €");
  CHECK(typed("") == "");
  for (const char* text : {"1350", "EUR", "12.3.4 EUR", "-5 EUR", "5 EUR GBP", "2000000000 EUR"}) {
    CAPTURE(text);
    CHECK(typed(text) == "refused");
  }
}

TEST_CASE("The library's prices are taken where none was entered, and marked invented") {
  Show show;
  add_part(show, Plan{});
  const auto things = things_to_price(show, library());
  REQUIRE(things.size() >= 4);
  CHECK(things[0].what == Priced::card);
  set_price(show, things[1], {.amount = 1, .currency = "GBP", .date = "", .source = ""});
  take_library_prices(show, library());
  const Price card = price_of(show, things[0]);
  CHECK(card.invented);
  CHECK(card.currency == "EUR");
  CHECK(price_of(show, things[1]).amount == 1.0);
  CHECK(check_show(show, library()).empty());
  set_price(show, things[0], {});
  CHECK(!price_of(show, things[0]).amount);
}

}  // namespace
}  // namespace widegate
