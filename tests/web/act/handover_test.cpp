// Links, files, printing and lessons, through the door the host uses.
#include <doctest/doctest.h>

#include <string>

#include "core/catalogue/catalogue_json.h"
#include "core/handover/link/link.h"
#include "core/lesson/built_in_lessons.h"
#include "core/lesson/lesson_run.h"
#include "core/plan/example_plans.h"
#include "imgui.h"
#include "imgui_internal.h"
#include "tests/web/support/harness.h"

using namespace widegate;
using namespace widegate::test;

namespace {

const Device& phone() { return devices()[3]; }

}  // namespace

TEST_CASE("the address follows the plan, and opens it elsewhere") {
  Screen screen(phone());
  screen.settle();
  screen.ui.set("/lens/focal_mm", "75");
  screen.ui.set("/title", "Ferry, unit two");
  screen.settle();
  REQUIRE_FALSE(screen.platform.fragment_text.empty());
  Screen other(phone(), {}, screen.platform.fragment_text);
  other.settle();
  CHECK(other.value("/lens/focal_mm") == "75");
  CHECK(other.value("/title") == "Ferry, unit two");
  CHECK_FALSE(other.control("command:undo").enabled);
}

TEST_CASE("a link goes before the plan kept on the device") {
  Plan linked;
  linked.lens.focal_mm = 50;
  Screen first(phone());
  first.settle();
  first.ui.set("/lens/focal_mm", "85");
  first.settle();
  Screen screen(phone(), first.platform.kept, plan_to_link(linked));
  screen.settle();
  CHECK(screen.value("/lens/focal_mm") == "50");
}

TEST_CASE("a damaged link changes nothing and says so") {
  Screen screen(phone());
  screen.settle();
  screen.ui.set("/lens/focal_mm", "75");
  screen.settle();
  for (const std::string junk : {"1.AAAA", "nonsense", "1.", "99.zzzz", "%00"}) {
    CAPTURE(junk);
    screen.ui.fragment_changed(junk);
    screen.settle();
    CHECK(screen.value("/lens/focal_mm") == "75");
    CHECK(screen.ui.mirror().message.find("unchanged") != std::string::npos);
    CHECK(screen.ui.mirror().live == screen.ui.mirror().message);
    Plan shown = first_plan(built_in_catalogue().value());
    shown.lens.focal_mm = 75;
    CHECK(screen.platform.fragment_text == plan_to_link(shown));
  }
  screen.ui.set("/lens/focal_mm", "50");
  CHECK(screen.ui.mirror().message.empty());
}

TEST_CASE("a link typed into the address replaces the plan and can be undone") {
  Screen screen(phone());
  screen.settle();
  Plan linked;
  linked.lens.focal_mm = 21;
  screen.ui.fragment_changed(plan_to_link(linked));
  screen.settle();
  CHECK(screen.value("/lens/focal_mm") == "21");
  screen.ui.activate("command:undo");
  CHECK(screen.value("/lens/focal_mm") == "35");
}

TEST_CASE("everything can be handed over") {
  Screen screen(phone());
  screen.settle();
  screen.ui.set("/title", "The ferry: day 1");
  screen.ui.activate("command:copy-link");
  CHECK(screen.platform.copied.starts_with("https://example.org/widegate/#1."));
  screen.ui.activate("command:print-sheet");
  CHECK(screen.platform.printed.find("The ferry: day 1") != std::string::npos);
  for (const char* id : {"command:save-plan", "command:save-ranking", "command:save-chart",
                         "command:save-framing"}) {
    screen.ui.activate(id);
  }
  const auto& saved = screen.platform.saved;
  CHECK(saved.size() == 4);
  CHECK(saved.count("The-ferry-day-1.plan.json") == 1);
  CHECK(saved.at("The-ferry-day-1-formats.csv").find("alder") != std::string::npos);
  CHECK(saved.at("The-ferry-day-1-chart.svg").find("<svg") != std::string::npos);
  CHECK(saved.at("The-ferry-day-1.fdl").find("framing_intents") != std::string::npos);
  screen.ui.activate("command:open-plan");
  CHECK(screen.platform.asked_for == "plan");
  // What was saved opens again.
  const std::string text = saved.at("The-ferry-day-1.plan.json");
  screen.ui.activate("command:start-afresh");
  screen.ui.file_opened("plan", "x.json", text);
  CHECK(screen.value("/title") == "The ferry: day 1");
}

TEST_CASE("every lesson can be walked through, and its working is on the screen") {
  Screen screen(phone());
  screen.settle();
  const Catalogue library = built_in_catalogue().value();
  for (const LessonHead& head : built_in_lesson_heads()) {
    CAPTURE(head.id);
    const Lesson lesson = built_in_lesson(head.id, library).value();
    const LessonRun run = run_lesson(lesson, library);
    screen.ui.set("view:lesson", head.id);
    screen.settle();
    CHECK_FALSE(screen.control("command:lesson-back").enabled);
    for (std::size_t step = 0; step < lesson.steps.size(); ++step) {
      CAPTURE(step);
      const LessonText& shown = screen.ui.mirror().lesson;
      CHECK(shown.words == run.steps[step].words);
      CHECK(shown.working.key == lesson.steps[step].figures.front().key);
      CHECK_FALSE(shown.working.result.empty());
      CHECK(screen.control("command:lesson-next").enabled == (step + 1 < lesson.steps.size()));
      screen.ui.activate("command:lesson-next");
      screen.settle();
    }
    screen.ui.activate("command:lesson-leave");
    CHECK(screen.ui.mirror().lesson.title.empty());
  }
}

TEST_CASE("the working of every figure can be asked for") {
  Screen screen(phone());
  screen.settle();
  const std::vector<ResultRow> rows = screen.ui.mirror().results;
  for (const ResultRow& row : rows) {
    CAPTURE(row.key);
    const std::string& key = row.working;
    // A delivery is not part of the report; docs/fdl.md has its arithmetic.
    if (row.section == "delivery") {
      CHECK(key.empty());
      continue;
    }
    CHECK((key.empty()) == (row.key == "run.flicker.nearest_safe_rates"));
    if (key.empty()) continue;
    screen.ui.show_working(key);
    screen.settle();
    CHECK(screen.ui.mirror().working.key == key);
    CHECK_FALSE(screen.ui.mirror().working.title.empty());
    CHECK_FALSE(screen.ui.mirror().working.result.empty());
    CHECK_FALSE(screen.ui.mirror().working.source.empty());
  }
  screen.ui.show_working("no.such.figure");
  screen.settle();
  CHECK(screen.ui.mirror().working.title.empty());
}

TEST_CASE("nothing is drawn outside of the app's own windows") {
  Screen screen(phone());
  screen.settle();
  const auto stray = [] {
    const ImGuiWindow* window = ImGui::FindWindowByName("Debug##Default");
    return window != nullptr && window->Active;
  };
  CHECK_FALSE(stray());
  const RectPx row = screen.control("/format/mode").rect;
  screen.tap(row.x + 50, row.y + 20);
  CHECK_FALSE(stray());
  screen.ui.show_working("see.near_m");
  screen.settle();
  CHECK_FALSE(stray());
}

TEST_CASE("large type is for a wall") {
  Screen screen(devices()[7]);
  screen.settle();
  const float before = screen.control("/format/camera").rect.height;
  screen.ui.set("view:large-type", "true");
  screen.settle();
  CHECK(screen.control("/format/camera").rect.height > before * 1.3F);
}
