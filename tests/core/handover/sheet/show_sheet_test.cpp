// The sheet of a show: every figure of the table of figures stands on it, invented sums are marked,
// hostile names stay text.
#include "core/handover/sheet/show_sheet.h"

#include <doctest/doctest.h>

#include "core/catalogue/catalogue_json.h"
#include "core/encode/markup.h"
#include "core/handover/sheet/calendar_svg.h"
#include "core/handover/table/show_csv.h"
#include "core/show/evaluate_show.h"
#include "core/show/show_figures.h"

namespace widegate {
namespace {

const Catalogue& library() {
  static const Catalogue catalogue = built_in_catalogue().value();
  return catalogue;
}

Show two_parts() {
  Show show;
  show.title = "Ferry <b>& company</b>";
  show.parts.push_back({.name = "Main \"unit\""});
  show.parts.push_back({.name = "<script>", .first_day = 10});
  show.calendar.start = "2027-03-01";
  show.prices.push_back({.what = Priced::drive,
                         .id = "ssd-array-16",
                         .price = {.amount = 3400,
                                   .currency = "EUR",
                                   .date = "2026-11-02",
                                   .source = "made up",
                                   .invented = true}});
  return show;
}

bool holds(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

TEST_CASE("Every figure of a show is on its sheet, and in its table") {
  const Show show = two_parts();
  const ShowReport report = evaluate_show(show, library());
  REQUIRE(report.problems.empty());
  const std::string sheet =
      show_sheet_html(show, report, {.link = "https://a.example/#s1.x", .date = "2026-12-01"});
  const std::string table = show_to_csv(show, report);
  for (const ShowFigure& figure : show_figures(report)) {
    CAPTURE(figure.key);
    CHECK(holds(sheet, escape(with_unit(figure))));
    CHECK(holds(table, std::string(figure.label)));
  }
  for (const MoneySum& sum : report.money.sums) {
    CHECK(holds(sheet, money_text(sum.cost, sum.currency)));
    CHECK(holds(sheet, "Sum, with invented prices"));
    CHECK(holds(table, "Cost in all"));
  }
  CHECK(holds(sheet, "Made on 2026-12-01"));
  CHECK(holds(sheet, "https://a.example/#s1.x"));
  CHECK(holds(sheet, "In no sum, for want of a price:"));
  CHECK(!holds(sheet, "<script>"));
  CHECK(!holds(sheet, "<b>"));
  CHECK(holds(sheet, "no card is wiped before two verified copies"));
}

TEST_CASE("The drawing has an area for each part and a mark for each full medium") {
  const ShowReport report = evaluate_show(two_parts(), library());
  const std::string svg = storage_calendar_svg(report);
  const auto count = [&svg](std::string_view what) {
    std::size_t found = 0;
    for (std::size_t at = svg.find(what); at != std::string::npos; at = svg.find(what, at + 1)) {
      ++found;
    }
    return found;
  };
  CHECK(count("fill=\"url(#part-0)\"") == 1);
  CHECK(count("fill=\"url(#part-1)\"") == 1);
  std::size_t full = 0;
  for (const MediaSet& set : report.media) full += set.full_days.size();
  CHECK(full > 0);
  CHECK(count("z\" fill=\"") == full);
  CHECK(!money_calendar_svg(report).empty());
}

}  // namespace
}  // namespace widegate
