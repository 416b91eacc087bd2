// Lesson documents and links: read strictly, written canonically, back again value for value.
#include "core/lesson/lesson_json.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <string>

#include "core/catalogue/catalogue_json.h"
#include "core/encode/qr.h"
#include "core/handover/link/link.h"
#include "core/lesson/built_in_lessons.h"
#include "core/lesson/lesson_link.h"
#include "core/lesson/lesson_run.h"
#include "core/plan/plan_json.h"
#include "tests/core/support/random_plans.h"
#include "tests/core/support/rounds.h"

namespace {

using namespace widegate;
using widegate::testing::Dice;
using widegate::testing::random_plan;
using widegate::testing::rounds;

const Catalogue& library() {
  static const Catalogue kLibrary = built_in_catalogue().value();
  return kLibrary;
}

/// A lesson of two steps with members of the second put in.
std::string with_step(const std::string& members) {
  return R"({"widegate_lesson": 1, "title": "Mine", "steps": [
    {"title": "One", "words": "Look.", "control": "/lens/focal_mm",
     "figures": [{"figure": "see.near_m"}]},
    {"title": "Two", "words": "Look.", "control": "/lens/focal_mm", )" +
         members + "}]}";
}
const std::string kWatch = R"("figures": [{"figure": "see.near_m"}])";

/// The first problem in words, or nothing when the text is a lesson.
std::string problem_of(const std::string& text) {
  const auto lesson = lesson_from_json(text, library());
  return lesson ? "" : to_line(lesson.error().front());
}

/// A lesson around random plans: anything that a plan can hold comes along.
Lesson random_lesson(Dice& dice) {
  Lesson lesson;
  lesson.title = "Drawn";
  for (int i = 0; i < 3; ++i) {
    LessonStep step;
    step.title = "Step " + std::to_string(i);
    step.words = "Sharp from {see.near_m}.";
    step.plan = random_plan(dice, library());
    step.control = "/lens/focal_mm";
    step.figures = {LessonFigure{.key = "see.hyperfocal_m",
                                 .does = {},
                                 .times = {},
                                 .value = 0.125 * i,
                                 .says = {},
                                 .within = 0.5,
                                 .since = 0}};
    lesson.steps.push_back(std::move(step));
  }
  return lesson;
}

}  // namespace

TEST_CASE("a step's plan is what is other than in the step before") {
  const auto lesson = lesson_from_json(
      with_step(R"("plan": {"lens": {"focal_mm": 50}, "deliverable": {"frame_lines": [{}, {"name":
                "Tall", "aspect": "9/16"}]}, "choose": {"cameras": ["birch"]}}, )" +
                kWatch),
      library());
  REQUIRE(lesson.has_value());
  const Plan& plan = lesson->steps[1].plan;
  CHECK(plan.lens.focal_mm == 50);
  CHECK(plan.lens.set == Plan{}.lens.set);
  REQUIRE(plan.deliverable.frame_lines.size() == 2);
  CHECK(plan.deliverable.frame_lines[0] == Plan{}.deliverable.frame_lines[0]);
  CHECK(plan.deliverable.frame_lines[1].name == "Tall");
  CHECK(plan.choose.cameras == std::vector<std::string>{"birch"});
  CHECK(lesson->steps[0].plan == Plan{});
  const std::string text = lesson_to_json(*lesson);
  const auto again = lesson_from_json(text, library());
  REQUIRE(again.has_value());
  CHECK(*again == *lesson);
  CHECK(lesson_to_json(*again) == text);
}

TEST_CASE("a step's plan may be a whole plan document, also one of the first release") {
  const auto lesson = lesson_from_json(
      with_step(R"("plan": {"widegate_plan": 1, "mandate": {"photosites": 0}}, )" + kWatch),
      library());
  REQUIRE(lesson.has_value());
  CHECK(lesson->steps[1].plan.commission.id == "none");
}

TEST_CASE("what is wrong with a lesson is said, and where") {
  const std::pair<std::string, std::string> kWrong[] = {
      {"[]", "/: a list is not accepted; expected an object"},
      {R"({"widegate_lesson": 2})",
       "/widegate_lesson: 2 is not accepted; expected 1, the version of this kind of document"},
      {R"({"widegate_lesson": 1, "title": "x", "steps": []})",
       "/steps: a list of 0 is not accepted; expected a list of 1 to 24 steps"},
      {with_step(R"("words2": 1, )" + kWatch),
       "/steps/1/words2: 1 is not accepted; expected one of the keys plan, figures, title, words, "
       "control, picture, against, question, answer"},
      {with_step(R"("plan": {"lens": {"focal": 3}}, )" + kWatch),
       "/steps/1/plan/lens/focal: 3 is not accepted; expected one of the keys set, focal_mm"},
      {with_step(R"("plan": {"format": {"mode": "nowhere"}}, )" + kWatch),
       "/steps/1/plan/format/mode: \"nowhere\" is not accepted; expected a sensor mode of this "
       "camera"},
      {with_step(R"("plan": {"mandate": {"photosites": 0}}, )" + kWatch),
       "/steps/1/plan/mandate: an object is not accepted; expected one of the keys"},
      {with_step(R"("plan": {"widegate_plan": 3}, )" + kWatch),
       "/steps/1/plan/widegate_plan: 3 is not accepted; expected 1"},
      {with_step(R"("figures": [{"figure": "see.nearest"}])"),
       "/steps/1/figures/0/figure: \"see.nearest\" is not accepted; expected the key of a figure "
       "in the report of step 2"},
      {with_step(R"("figures": [])"),
       "/steps/1/figures: a list of 0 is not accepted; expected a list of 1 to 12 figures"},
      {with_step(R"("figures": [{"figure": "see.near_m", "does": "grows"}])"),
       "/steps/1/figures/0/does: \"grows\" is not accepted; expected one of rises, falls, "
       "unchanged"},
      {with_step(R"("figures": [{"figure": "see.near_m", "does": "rises", "since": 2}])"),
       "/steps/1/figures/0/since: 2 is not accepted; expected 1, the step before"},
      {with_step(R"("figures": [{"figure": "cover.mode.covered", "value": 1}])"),
       "/steps/1/figures/0/figure: \"cover.mode.covered\" is not accepted; expected a figure that "
       "is a number"},
      {with_step(R"("figures": [{"figure": "see.near_m", "says": "far"}])"),
       "/steps/1/figures/0/says: \"far\" is not accepted; expected the keys does, times or value"},
      {with_step(R"("picture": "both_scenes", "against": 2, )" + kWatch),
       "/steps/1/against: 2 is not accepted; expected 1, the step before"},
      {with_step(R"("against": 1, )" + kWatch),
       "/steps/1/against: 1 is not accepted; expected nothing: only the pictures both_sensors"},
      {with_step(R"("question": "Why?", )" + kWatch),
       "/steps/1/answer: nothing is not accepted; expected text: a question and its answer"},
      {with_step(R"("question": "Why?", "answer": "{5:see.near_m}", )" + kWatch),
       "/steps/1/answer: 5 is not accepted; expected a step of this lesson: 1 to 2"},
  };
  for (const auto& [text, problem] : kWrong) {
    const std::string told = problem_of(text);
    CAPTURE(told);
    CHECK(told.starts_with(problem));
  }
  std::string control = with_step(kWatch);
  control.replace(control.rfind("/lens/focal_mm"), 14, "/lens/colour");
  CHECK(problem_of(control).starts_with("/steps/1/control: \"/lens/colour\" is not accepted"));
  std::string braces = with_step(kWatch);
  braces.replace(braces.rfind("Look."), 5, "Look {at");
  CHECK(problem_of(braces).starts_with("/steps/1/words: \"Look {at\" is not accepted"));
  CHECK(problem_of(R"({"widegate_lesson": 1, "title": "x", "steps": [{"title": "One"}]})")
            .starts_with("/steps/0/words: nothing is not accepted; expected text on one line"));
}

TEST_CASE("a claim that the plan does not keep is no bad document: it is told") {
  const auto lesson = lesson_from_json(with_step(R"("plan": {"lens": {"focal_mm": 50}}, "figures": [
                {"figure": "see.near_m", "does": "falls"}, {"figure": "see.far_m", "does": "falls"},
                {"figure": "see.focal_mm", "times": 1.43, "within": 0.005}])"),
                                       library());
  REQUIRE(lesson.has_value());
  const LessonRun run = run_lesson(*lesson, library());
  CHECK_FALSE(run.holds());
  CHECK_FALSE(run.steps[1].figures[0].holds);
  CHECK(run.steps[1].figures[1].holds);
  CHECK(run.steps[1].figures[2].holds);
  CHECK(run.steps[1].figures[2].before == "35 mm");
  CHECK(run.steps[1].figures[2].after == "50 mm");
}

TEST_CASE("any plans come back out of a lesson's text and link") {
  Dice dice(17);
  for (int round = 0; round < rounds(200, 50); ++round) {
    const Lesson lesson = random_lesson(dice);
    const std::string text = lesson_to_json(lesson);
    const auto again = lesson_from_json(text, library());
    if (!again) MESSAGE(to_line(again.error().front()));
    REQUIRE(again.has_value());
    CHECK(*again == lesson);
    CHECK(lesson_to_json(*again) == text);
    const auto link = lesson_to_link(lesson, 2, library());
    if (!link) continue;
    const auto linked = lesson_from_link(*link, library());
    REQUIRE(linked.has_value());
    CHECK(linked->lesson == lesson);
    CHECK(linked->step == 2);
  }
}

TEST_CASE(
    "a built-in lesson's link is its name; changed by one word it carries all and fits a QR code") {
  for (const std::string_view id : built_in_lesson_ids()) {
    CAPTURE(id);
    Lesson lesson = built_in_lesson(id, library()).value();
    CHECK(lesson_to_link(lesson, 2, library()) == "lesson-1.2.id." + std::string(id));
    lesson.title += "!";
    const auto link = lesson_to_link(lesson, 3, library());
    REQUIRE(link.has_value());
    CHECK(link->starts_with("lesson-1.3."));
    CAPTURE(link->size());
    CHECK(make_qr(*link).has_value());
    const auto linked = lesson_from_link("https://any.host/#" + *link, library());
    REQUIRE(linked.has_value());
    CHECK(linked->lesson == lesson);
    CHECK(linked->step == 3);
  }
}

TEST_CASE("a lesson's link that is damaged, newer or points nowhere is refused in words") {
  Lesson lesson = built_in_lesson("squeeze", library()).value();
  lesson.title = "Mine";
  const std::string link = lesson_to_link(lesson, 1, library()).value();
  const auto refusal = [](std::string_view text) {
    const auto linked = lesson_from_link(text, library());
    return linked ? std::string() : linked.error().front().accepted;
  };
  CHECK(refusal(link).empty());
  CHECK(is_lesson_link(link));
  CHECK(is_lesson_link("https://any.host/path/#" + link));
  CHECK_FALSE(is_lesson_link(plan_to_link(Plan{})));
  CHECK(refusal(plan_to_link(Plan{})) == "a lesson's link, which this one is not");
  CHECK(refusal("lesson-2" + link.substr(8)).find("newer Widegate") != std::string::npos);
  CHECK(refusal("lesson-1.5" + link.substr(10)).find("a step of this lesson: 1 to 4") !=
        std::string::npos);
  CHECK(refusal("lesson-1.x" + link.substr(10)).find("a step of this lesson") != std::string::npos);
  CHECK(refusal("lesson-1.1.id.nowhere").find("built-in lesson") != std::string::npos);
  for (std::size_t at = 11; at < link.size(); at += 13) {
    std::string damaged = link;
    damaged[at] = damaged[at] == 'A' ? 'B' : 'A';
    CAPTURE(at);
    CHECK_FALSE(refusal(damaged).empty());
    CHECK_FALSE(refusal(link.substr(0, at)).empty());
  }
  // A plan's reader does not take it for a plan.
  CHECK_FALSE(plan_from_link(link, library()).has_value());
}
