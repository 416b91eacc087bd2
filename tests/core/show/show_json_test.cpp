// Shows as documents: there and back, and every message with its place.
#include "core/show/show_json.h"

#include <doctest/doctest.h>

#include <array>

#include "core/catalogue/catalogue_json.h"
#include "core/show/show_check.h"
#include "tests/core/show/random_shows.h"
#include "tests/core/support/rounds.h"

namespace widegate {
namespace {

const Catalogue& library() {
  static const Catalogue catalogue = built_in_catalogue().value();
  return catalogue;
}

TEST_CASE("What was written is read back, and written alike") {
  testing::Dice dice(5);
  for (int round = 0; round < testing::rounds(500, 100); ++round) {
    const Show show = testing::random_show(dice, library());
    if (!check_show(show, library()).empty()) continue;
    const std::string text = show_to_json(show);
    const Checked<Show> back = show_from_json(text, library());
    CAPTURE(round);
    REQUIRE(back.has_value());
    CHECK(*back == show);
    CHECK(show_to_json(*back) == text);
  }
}

std::string part(const char* inside = "") {
  return R"({"name": "A", "plan": {"widegate_plan": 1)" + std::string(inside) + "}}";
}
std::string with(const std::string& rest) {
  return R"({"widegate_show": 1, "parts": [)" + part() + "]" + (rest.empty() ? "" : ", ") + rest +
         "}";
}

TEST_CASE("The least show is one plan with a name") {
  const Checked<Show> show = show_from_json(with(""), library());
  REQUIRE(show.has_value());
  CHECK(show->parts.front().plan == Plan{});
  CHECK(show->archive == ShowArchive{});
}

struct Row {
  std::string text;
  std::string pointer;
  std::string value;
  std::string accepted;
};

TEST_CASE("What is refused, where, and what would be accepted") {
  const std::array kRows = {
      Row{"[]", "", "a list", "an object"},
      Row{R"({"parts": []})", "/widegate_show", "nothing", "1"},
      Row{R"({"widegate_show": 2})", "/widegate_show", "2", "1"},
      Row{R"({"widegate_show": 1})", "/parts", "a list of 0", "a list of 1 to 24 parts"},
      Row{R"({"widegate_show": 1, "parts": [)" + part() + "," + part() + "]}", "/parts/1/name",
          "\"A\"", "a name that no other part has"},
      Row{R"({"widegate_show": 1, "parts": [)" + part(R"(, "lens": {"focal_mm": -2})") + "]}",
          "/parts/0/plan/lens/focal_mm", "-2", "a number from 1 to 3000 mm"},
      Row{R"({"widegate_show": 1, "parts": [{"name": "A", "plan": {}}]})",
          "/parts/0/plan/widegate_plan", "nothing", "1"},
      Row{with(R"("calendar": {"start": "2027-02-29"})"), "/calendar/start", "\"2027-02-29\"",
          "empty text, or a day of the calendar as YYYY-MM-DD, 1900 to 2999"},
      Row{with(R"("calendar": {"weekdays_off": ["sunday", "monday"]})"), "/calendar/weekdays_off",
          "a list of 2", "days of the week in their order, each once, and not all seven"},
      Row{with(R"("calendar": {"shooting_days": 3})"), "/calendar/shooting_days", "3",
          "at least the 42 days that the parts take"},
      Row{with(R"("people": [{"name": "B", "part": "C"}])"), "/people/0/part", "\"C\"",
          "empty text, or the name of a part: A"},
      Row{with(R"("rent": [{"name": "B", "price": {"amount": 3}}])"), "/rent/0/price/currency",
          "\"\"", "the currency of the amount"},
      Row{with(R"("prices": [{"what": "card", "id": "no-such"}])"), "/prices/0/id", "\"no-such\"",
          "a model of the library or of a part's plan"},
      Row{with(R"("prices": [{"what": "stock_foot"}, {"what": "stock_foot"}])"), "/prices/1",
          "an object", "each thing once"},
      Row{with(R"("archive": {"drives": "both"})"), "/archive/drives", "\"both\"",
          "one of separate, shared"},
      Row{with(R"("colour": 1)"), "/colour", "1",
          "one of the keys title, archive, calendar, parts, cards, prices, people, rent"},
  };
  for (const Row& row : kRows) {
    CAPTURE(row.text);
    const Checked<Show> show = show_from_json(row.text, library());
    REQUIRE(!show.has_value());
    const Problem& problem = show.error().front();
    CHECK(problem.pointer == row.pointer);
    CHECK(problem.value == row.value);
    CHECK(problem.accepted.find(row.accepted) != std::string::npos);
    INFO(problem.accepted);
  }
}

}  // namespace
}  // namespace widegate
