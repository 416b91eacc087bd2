#include "core/catalogue/merge.h"

#include <doctest/doctest.h>

#include "core/catalogue/catalogue_json.h"

namespace {

using namespace widegate;

Card card(std::string id, double price) {
  Card row;
  row.id = std::move(id);
  row.name = "Card " + row.id;
  row.price = price;
  return row;
}

Catalogue cards(std::vector<Card> rows) {
  Catalogue catalogue;
  catalogue.cards = std::move(rows);
  return catalogue;
}

}  // namespace

TEST_CASE("bringing in a library tells what is new, the same and different") {
  const Catalogue present = cards({card("a", 1), card("b", 2)});
  Catalogue incoming = cards({card("b", 3), card("a", 1), card("c", 4)});
  incoming.links.push_back({.id = "l", .name = "Link", .source = "", .payload_bytes_per_s = 5});
  const auto changes = library_changes(present, incoming);
  REQUIRE(changes.size() == 4);
  CHECK(changes[0].id == "b");
  CHECK(changes[0].change == RowChange::differs);
  CHECK(changes[1].change == RowChange::same);
  CHECK(changes[2].change == RowChange::added);
  CHECK(changes[2].list == "cards");
  CHECK(changes[3].list == "links");
  CHECK(changes[3].name == "Link");
}

TEST_CASE("nothing is overwritten unless it was agreed to") {
  const Catalogue present = cards({card("a", 1), card("b", 2)});
  const Catalogue incoming = cards({card("b", 3), card("c", 4)});
  CHECK(merged_library(present, incoming, OnDifference::keep) ==
        cards({card("a", 1), card("b", 2), card("c", 4)}));
  CHECK(merged_library(present, incoming, OnDifference::replace) ==
        cards({card("a", 1), card("b", 3), card("c", 4)}));
}

TEST_CASE("merging with nothing or with itself changes nothing") {
  const auto library = built_in_catalogue();
  REQUIRE(library.has_value());
  for (const OnDifference way : {OnDifference::keep, OnDifference::replace}) {
    CHECK(merged_library(*library, Catalogue{}, way) == *library);
    CHECK(merged_library(Catalogue{}, *library, way) == *library);
    CHECK(merged_library(*library, *library, way) == *library);
  }
  for (const LibraryChange& change : library_changes(*library, *library)) {
    CHECK(change.change == RowChange::same);
  }
}

TEST_CASE("one row can be taken out") {
  const Catalogue present = cards({card("a", 1), card("b", 2)});
  CHECK(library_without(present, "cards", "a") == cards({card("b", 2)}));
  CHECK(library_without(present, "cards", "x") == present);
  CHECK(library_without(present, "links", "a") == present);
}
