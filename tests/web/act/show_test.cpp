// The Show section through the door the host uses: plans ticked, links and files taken in, a part
// opened as a plan and brought back, prices typed, everything handed over and kept.
#include <doctest/doctest.h>

#include <string>

#include "core/catalogue/catalogue_json.h"
#include "core/handover/link/link.h"
#include "core/handover/link/link_kind.h"
#include "core/handover/link/show_link.h"
#include "core/show/show_json.h"
#include "tests/web/support/harness.h"

using namespace widegate;
using namespace widegate::test;

namespace {

const Device& phone() { return devices()[3]; }

const Catalogue& library() {
  static const Catalogue catalogue = built_in_catalogue().value();
  return catalogue;
}

bool has_control(const Screen& screen, std::string_view id) {
  return screen.ui.mirror().find(id) != nullptr;
}

/// The text of the figure with this label in the section.
std::string figure(const Screen& screen, std::string_view label) {
  for (const ResultRow& row : screen.ui.mirror().results) {
    if (row.section == "show" && row.label == label) return row.value_text;
  }
  return {};
}

void press(Screen& screen, const char* id) {
  screen.ui.activate(id);
  screen.settle();
}

Plan named(const char* title, std::int64_t days) {
  Plan plan;
  plan.title = title;
  plan.shooting.days = days;
  return plan;
}

/// Puts two plans into the list.
void keep_two_plans(Screen& screen) {
  screen.settle();
  for (const auto& [title, days] : {std::pair("Main unit", "10"), std::pair("Second unit", "4")}) {
    screen.ui.set("/title", title);
    screen.ui.set("/shooting/days", days);
    press(screen, "plans:add");
  }
}

std::string tick_of(const Screen& screen, std::string_view label) {
  for (const Control& control : screen.ui.mirror().controls) {
    if (control.id.starts_with("show:plan/") && control.label == label) return control.id;
  }
  FAIL("no tick");
  return {};
}

Show kept_show(const Screen& screen) {
  const auto show = show_from_json(screen.platform.kept.at("show"), library());
  REQUIRE(show.has_value());
  return *show;
}

}  // namespace

TEST_CASE("a show is made by ticking kept plans, and stays on the device") {
  Screen screen(phone());
  keep_two_plans(screen);
  CHECK_FALSE(has_control(screen, "show:title"));
  CHECK(screen.ui.set(tick_of(screen, "Main unit"), "true"));
  screen.settle();
  CHECK(screen.ui.set(tick_of(screen, "Second unit"), "true"));
  screen.settle();
  CHECK(screen.control("show:title").edit_text == "Main unit");
  CHECK(figure(screen, "Shooting days") == "10 days");
  CHECK_FALSE(figure(screen, "Second unit").empty());
  CHECK(kept_show(screen).parts.size() == 2);
  CHECK(screen.control(tick_of(screen, "Main unit")).edit_text == "true");
  Screen again(phone(), screen.platform.kept);
  again.settle();
  CHECK(figure(again, "Footage in all") == figure(screen, "Footage in all"));
  CHECK(screen.ui.set(tick_of(screen, "Main unit"), "false"));
  screen.settle();
  CHECK(figure(screen, "Shooting days") == "4 days");
}

TEST_CASE("several links make a show; one that is none changes nothing and is told") {
  Screen screen(phone());
  screen.settle();
  const std::string links =
      "https://a.example/#" + plan_to_link(named("One", 3)) + "\n " + plan_to_link(named("Two", 5));
  CHECK(screen.ui.set("show:links", links));
  screen.settle();
  CHECK(kept_show(screen).parts.size() == 2);
  CHECK(screen.control("show:part").value_text == "One");
  screen.ui.set("show:links", "1.nonsense");
  screen.settle();
  CHECK_FALSE(screen.control("show:links").problem.empty());
  CHECK(kept_show(screen).parts.size() == 2);
}

TEST_CASE("a part opens as a plan and comes back, the plan of before with it") {
  Screen screen(phone());
  screen.settle();
  screen.ui.set("/title", "My own plan");
  screen.ui.set("show:links", plan_to_link(named("One", 3)) + " " + plan_to_link(named("Two", 5)));
  screen.settle();
  screen.ui.set("show:part", "1");
  screen.settle();
  press(screen, "command:the-show-open-part");
  CHECK(screen.value("/title") == "Two");
  screen.ui.set("/shooting/days", "7");
  screen.settle();
  press(screen, "command:the-show-take-part");
  CHECK(screen.value("/title") == "My own plan");
  CHECK(kept_show(screen).parts[1].plan.shooting.days == 7);
  CHECK(figure(screen, "Shooting days") == "7 days");
  press(screen, "command:the-show-open-part");
  screen.ui.set("/shooting/days", "30");
  press(screen, "command:the-show-leave-part");
  CHECK(screen.value("/title") == "My own plan");
  CHECK(kept_show(screen).parts[1].plan.shooting.days == 7);
}

TEST_CASE("prices are typed where they are used, each with its currency") {
  Screen screen(phone());
  screen.settle();
  press(screen, "command:the-show-add-current");
  CHECK(figure(screen, "Sum") == "no prices yet");
  screen.ui.set("show:price", "1350");
  screen.settle();
  CHECK_FALSE(screen.control("show:price").problem.empty());
  screen.ui.set("show:price", "1 350 EUR");
  screen.settle();
  CHECK(screen.control("show:price").edit_text == "1350 EUR");
  screen.ui.set("show:price/date", "2026-02-30");
  screen.settle();
  CHECK_FALSE(screen.control("show:price/date").problem.empty());
  screen.ui.set("show:price/date", "2026-11-02");
  screen.settle();
  CHECK(kept_show(screen).prices.front().price.date == "2026-11-02");
  CHECK(figure(screen, "Sum").ends_with(" EUR"));
  press(screen, "command:the-show-library-prices");
  CHECK_FALSE(figure(screen, "Sum, with invented prices").empty());
  CHECK(kept_show(screen).prices.front().price.amount == 1350);
}

TEST_CASE("the show is handed over as sheet, tables, link and file, and opened from them") {
  Screen screen(phone());
  screen.settle();
  screen.ui.set("/title", "Ferry, main");
  press(screen, "command:the-show-add-current");
  screen.ui.set("show:start", "2027-03-01");
  screen.ui.set("show:weekend", "weekend");
  screen.settle();
  press(screen, "command:the-show-print");
  CHECK(screen.platform.printed.find(figure(screen, "Footage in all")) != std::string::npos);
  press(screen, "command:the-show-save-table");
  press(screen, "command:the-show-save-days");
  press(screen, "command:the-show-save");
  CHECK(screen.platform.saved.contains("Ferry-show.csv"));
  CHECK(screen.platform.saved.contains("Ferry-calendar.csv"));
  const std::string file = screen.platform.saved.at("Ferry.show.json");
  press(screen, "command:the-show-copy-link");
  const std::string link = screen.platform.copied;
  CHECK(is_show_link(link));
  press(screen, "command:the-show-close");
  CHECK_FALSE(has_control(screen, "show:title"));
  CHECK(screen.platform.kept.count("show") == 0);

  screen.ui.file_opened("show", "a.show.json", file);
  screen.settle();
  CHECK(screen.control("show:start").edit_text == "2027-03-01");
  screen.ui.file_opened("show", "b.show.json", "{}");
  screen.settle();
  CHECK(screen.ui.mirror().message.find("is not a show") != std::string::npos);
  CHECK(screen.control("show:start").edit_text == "2027-03-01");

  const std::string fragment = link.substr(link.find('#') + 1);
  Screen other(phone(), {}, fragment);
  other.settle();
  CHECK(other.control("show:title").edit_text == "Ferry");
  CHECK(other.value("/title") == Plan{}.title);
  Screen damaged(phone(), {}, fragment.substr(0, fragment.size() - 2));
  damaged.settle();
  CHECK(damaged.ui.mirror().message.find("damaged") != std::string::npos);
}

TEST_CASE("a show's link waits for the rest of the program") {
  Show show;
  show.title = "Waiting";
  show.parts.push_back({.name = "A"});
  Screen screen(phone(), {}, show_to_link(show), RestOfProgram::coming);
  screen.settle();
  CHECK_FALSE(has_control(screen, "show:title"));
  screen.platform.rest_of_program = RestOfProgram::here;
  screen.ui.rest_changed();
  screen.settle();
  CHECK(screen.control("show:title").edit_text == "Waiting");
}

TEST_CASE("every control of the section can be reached by a finger") {
  Screen screen(phone());
  screen.settle();
  press(screen, "command:the-show-add-current");
  for (const char* id : {"show:title", "show:part", "show:price", "command:the-show-print"}) {
    CAPTURE(id);
    screen.reveal(id);
    CHECK(screen.control(id).visible);
    CHECK(screen.control(id).rect.height >= 44);
  }
}
