// The time between the first picture and the arrival of the rest of the program: what works, what
// is said about the rest, and that nothing asked for meanwhile is lost.
#include <doctest/doctest.h>

#include <algorithm>
#include <string>

#include "tests/web/support/harness.h"
#include "web/view/sections.h"

using namespace widegate;
using namespace widegate::test;

namespace {

const Device& phone() { return devices()[3]; }

const Section& section(const Screen& screen, std::string_view id) {
  for (const Section& each : screen.ui.mirror().sections) {
    if (each.id == id) return each;
  }
  FAIL("no section " << id);
  return screen.ui.mirror().sections.front();
}

bool has_controls(const Screen& screen, std::string_view id) {
  const auto& controls = screen.ui.mirror().controls;
  return std::any_of(controls.begin(), controls.end(),
                     [id](const Control& each) { return each.section == id; });
}

void turn(Screen& screen, RestOfProgram rest) {
  screen.platform.rest_of_program = rest;
  screen.ui.rest_changed();
  screen.settle();
}

}  // namespace

TEST_CASE("sections that come later say so, and are whole when the rest is here") {
  Screen screen(phone(), {}, {}, RestOfProgram::coming);
  screen.settle();
  int later = 0;
  for (const Panel& panel : panels()) {
    CAPTURE(panel.id);
    if (!panel.comes_later) {
      CHECK(has_controls(screen, panel.id));
      continue;
    }
    ++later;
    CHECK_FALSE(has_controls(screen, panel.id));
    CHECK_FALSE(section(screen, panel.id).has_verdict);
    REQUIRE(section(screen, panel.id).notes.size() == 1);
    CHECK(section(screen, panel.id).notes.front() == rest_words(RestOfProgram::coming));
  }
  CHECK(later > 0);
  turn(screen, RestOfProgram::missing);
  CHECK(section(screen, "choose").notes.front() == rest_words(RestOfProgram::missing));
  turn(screen, RestOfProgram::here);
  for (const Panel& panel : panels()) {
    CAPTURE(panel.id);
    CHECK(has_controls(screen, panel.id));
    CHECK(section(screen, panel.id).has_verdict == panel.has_verdict);
  }
  CHECK(screen.control("command:choose-format").choices.size() > 3);
}

TEST_CASE("without the rest the plan is set, undone, kept and linked as always") {
  Screen screen(phone(), {}, {}, RestOfProgram::missing);
  screen.settle();
  CHECK(screen.ui.set("/lens/focal_mm", "75"));
  CHECK(screen.ui.set("/deliverable/aspect_ratio", "2.39") ==
        Screen(phone()).ui.set("/deliverable/aspect_ratio", "2.39"));
  screen.ui.activate("command:add-frame-line");
  screen.settle();
  CHECK(screen.value("/lens/focal_mm") == "75");
  CHECK(screen.platform.kept.at("plan").find("75") != std::string::npos);
  CHECK_FALSE(screen.platform.fragment_text.empty());
  screen.ui.activate("command:undo");
  screen.ui.activate("command:undo");
  screen.settle();
  CHECK(screen.value("/lens/focal_mm") == "35");
  CHECK(screen.platform.wanted_rest == 0);
  CHECK(screen.ui.mirror().message.empty());
}

TEST_CASE("a working asked for early is shown when the rest is here") {
  Screen screen(phone(), {}, {}, RestOfProgram::coming);
  screen.settle();
  const std::string key = screen.ui.mirror().headline.front().working;
  REQUIRE_FALSE(key.empty());
  screen.ui.show_working(key);
  screen.settle();
  CHECK(screen.ui.mirror().working.title.empty());
  CHECK(screen.ui.mirror().message == rest_words(RestOfProgram::coming));
  CHECK(screen.platform.wanted_rest == 1);
  turn(screen, RestOfProgram::missing);
  CHECK(screen.ui.mirror().message == rest_words(RestOfProgram::missing));
  turn(screen, RestOfProgram::here);
  CHECK(screen.ui.mirror().message.empty());
  CHECK(screen.ui.mirror().working.key == key);
}

TEST_CASE("an action asked for early is done when the rest is here, unless it was put away") {
  Screen screen(phone(), {}, {}, RestOfProgram::missing);
  screen.settle();
  const std::string copy = "plans:add";
  screen.ui.set("/title", "Ferry");
  screen.ui.activate(copy);
  screen.settle();
  CHECK(screen.platform.wanted_rest == 1);
  CHECK(screen.platform.kept.count("plans") == 0);
  CHECK(screen.ui.mirror().message == rest_words(RestOfProgram::missing));
  SUBCASE("done") {
    turn(screen, RestOfProgram::here);
    CHECK(screen.platform.kept.count("plans") == 1);
    CHECK(screen.ui.mirror().message.find("list of plans") != std::string::npos);
  }
  SUBCASE("put away") {
    screen.ui.dismiss();
    turn(screen, RestOfProgram::here);
    CHECK(screen.platform.kept.count("plans") == 0);
  }
}

TEST_CASE("what is kept for the rest is read when that is here") {
  Screen first(phone());
  first.settle();
  first.ui.set("compare:camera", "cedar");
  first.settle();
  Screen screen(phone(), first.platform.kept, {}, RestOfProgram::coming);
  screen.settle();
  CHECK_FALSE(has_controls(screen, "compare"));
  turn(screen, RestOfProgram::here);
  CHECK(screen.control("compare:camera").edit_text == "cedar");
  CHECK(screen.platform.kept == first.platform.kept);
}
