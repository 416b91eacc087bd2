// The list of plans kept on a device: by name, read back as written, and no row spoils another.
#include "core/plan/kept_plans.h"

#include <doctest/doctest.h>

namespace {

using namespace widegate;

PlanShelf read_back(const PlanShelf& shelf) {
  const auto read = shelf_from_json(shelf_to_json(shelf));
  REQUIRE(read.has_value());
  return *read;
}

}  // namespace

TEST_CASE("plans are kept by name, and no id comes twice") {
  PlanShelf shelf;
  const auto first = add_plan(shelf, "One", "1.a");
  const auto second = add_plan(shelf, "Two", "1.b");
  CHECK(first != second);
  std::int64_t edition = 1;
  CHECK(keep_plan(shelf, first, edition, "One", "1.c") == Kept::done);
  CHECK(edition == 2);
  CHECK(keep_plan(shelf, first, edition, "One", "1.c") == Kept::same);
  std::int64_t stale = 1;
  CHECK(keep_plan(shelf, first, stale, "One", "1.d") == Kept::changed);
  CHECK(find_plan(shelf, first)->link == "1.c");
  const KeptPlan removed = *find_plan(shelf, first);
  CHECK(remove_plan(shelf, first));
  CHECK_FALSE(remove_plan(shelf, first));
  CHECK(keep_plan(shelf, first, edition, "One", "1.e") == Kept::gone);
  CHECK(add_plan(shelf, "Three", "1.f") > second);
  restore_plan(shelf, removed);
  restore_plan(shelf, removed);
  CHECK(shelf.plans.size() == 3);
  CHECK(shelf.plans.front() == removed);
  const auto read = shelf_from_json(shelf_to_json(shelf));
  REQUIRE(read.has_value());
  CHECK(*read == shelf);
  while (add_plan(shelf, "More", "1.x") != 0) continue;
  CHECK(shelf.plans.size() == kMaxKeptPlans);
}

TEST_CASE("a text that is no list of plans is refused whole") {
  const char* rows[] = {
      "",
      "[]",
      "{}",
      R"({"widegate_plans":2,"next_id":1,"plans":[]})",
      R"({"widegate_plans":1,"plans":[]})",
      R"({"widegate_plans":1,"next_id":1})",
      R"({"widegate_plans":1,"next_id":1,"plans":{}})",
      R"({"widegate_plans":1,"next_id":1,"plans":[],"unread":7})",
      R"({"widegate_plans":1,"next_id":1,"plans":[{"id":1)",
  };
  for (const char* row : rows) {
    CAPTURE(row);
    CHECK_FALSE(shelf_from_json(row).has_value());
  }
}

TEST_CASE("a row that is no plan's is kept as it is, and the others are read") {
  const char* rows[] = {
      "3",
      "[]",
      R"({"id":0,"edition":1,"title":"a","link":"b"})",
      R"({"id":1,"edition":1,"title":1,"link":"b"})",
      R"({"id":1,"edition":1,"title":"\n","link":"b"})",
      R"({"id":1,"edition":1,"title":"a"})",
  };
  for (const char* row : rows) {
    CAPTURE(row);
    const std::string text =
        R"({"widegate_plans":1,"next_id":3,"plans":[{"id":2,"edition":1,"title":"Good","link":"1.x"},)" +
        std::string(row) + "]}";
    const auto read = shelf_from_json(text);
    REQUIRE(read.has_value());
    REQUIRE(read->plans.size() == 1);
    CHECK(read->plans.front().title == "Good");
    CHECK(read->unread.size() == 1);
    CHECK(read_back(*read) == *read);
  }
}

TEST_CASE(
    "a plan of an over-long text is not taken, and one that is in a list from elsewhere costs no "
    "other") {
  const std::string longest(kMaxKeptText, 'x');
  PlanShelf shelf;
  CHECK(add_plan(shelf, "Long", longest + "x") == 0);
  const auto id = add_plan(shelf, "Long", longest);
  REQUIRE(id != 0);
  std::int64_t edition = 1;
  CHECK(keep_plan(shelf, id, edition, "Longer", longest + "x") == Kept::too_long);
  CHECK(edition == 1);
  CHECK(read_back(shelf) == shelf);
  PlanShelf spoiled = shelf;
  spoiled.plans.push_back({shelf.next_id, 1, "Too long", longest + "x"});
  const PlanShelf read = read_back(spoiled);
  CHECK(read.plans == shelf.plans);
  CHECK(read.unread.size() == 1);
}

TEST_CASE("rows that fell aside are tried again, and ids stay apart") {
  const auto read = shelf_from_json(
      R"({"widegate_plans":1,"next_id":1,"plans":[{"id":4,"edition":2,"title":"A","link":"1.a"},
      {"id":4,"edition":1,"title":"B","link":"1.b"}],
      "unread":[{"id":2,"edition":1,"title":"C","link":"1.c"}]})");
  REQUIRE(read.has_value());
  CHECK(read->unread.empty());
  REQUIRE(read->plans.size() == 3);
  CHECK(read->plans[0].id == 4);
  CHECK(read->plans[1].id == 5);
  CHECK(read->plans[2].id == 2);
  CHECK(read->next_id == 6);
}

TEST_CASE("more plans than a list takes are kept aside") {
  PlanShelf shelf;
  while (add_plan(shelf, "More", "1.x") != 0) continue;
  shelf.plans.push_back({shelf.next_id, 1, "One more", "1.y"});
  ++shelf.next_id;
  const PlanShelf read = read_back(shelf);
  CHECK(read.plans.size() == kMaxKeptPlans);
  CHECK(read.unread.size() == 1);
}

TEST_CASE("a title that is taken gets the next free number") {
  PlanShelf shelf;
  add_plan(shelf, "Shared", "1.a");
  CHECK(free_title(shelf, "Shared") == "Shared (2)");
  add_plan(shelf, "Shared (2)", "1.b");
  CHECK(free_title(shelf, "Shared") == "Shared (3)");
  CHECK(free_title(shelf, "Shared (2)") == "Shared (3)");
  CHECK(free_title(shelf, "Shared (x)") == "Shared (x) (2)");
}
