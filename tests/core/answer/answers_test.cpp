// Every answer is tried: it mends what it answers and breaks nothing; and the answers are those a
// camera assistant would give.
#include "core/answer/answers.h"

#include <algorithm>

#include "core/catalogue/catalogue_json.h"
#include "core/plan/example_plans.h"
#include "core/report/evaluate.h"
#include "core/report/verdict.h"
#include "doctest/doctest.h"

namespace widegate {
namespace {

const Catalogue& library() {
  static const Catalogue kLibrary = built_in_catalogue().value();
  return kLibrary;
}

Plan plan_with(const std::vector<TypedField>& fields) {
  return with_fields(first_plan(library()), fields, library()).value();
}

std::vector<Answer> answers_to(const Plan& plan, Question question) {
  std::vector<Answer> all = answers(plan, evaluate(plan, library()), library());
  std::erase_if(all, [question](const Answer& each) { return each.question != question; });
  return all;
}

Report report_with(const Plan& plan, const Answer& answer) {
  return evaluate(with_answer(plan, answer, library()).value(), library());
}

bool has_text(const std::vector<Answer>& all, std::string_view text) {
  return std::any_of(all.begin(), all.end(),
                     [text](const Answer& answer) { return answer.text == text; });
}

TEST_CASE("what nobody chose needs no answer") {
  const Plan plan = first_plan(library());
  const Report report = evaluate(plan, library());
  CHECK(report.problems.empty());
  for (const Note& note : report.notes) {
    if (topic_standing(note.topic)) continue;
    INFO(note_text(note));
    CHECK(note.severity == Severity::ok);
  }
  CHECK(answers(plan, report, library()).empty());
}

TEST_CASE("every example can be opened, and fails and warns of nothing") {
  CHECK(example_plans().size() == 3);
  for (const ExamplePlan& example : example_plans()) {
    const auto plan = example_plan(example, library());
    REQUIRE(plan.has_value());
    for (const Note& note : evaluate(*plan, library()).notes) {
      INFO(example.id, ": ", note_text(note));
      CHECK((topic_standing(note.topic) || note.severity == Severity::ok));
    }
  }
}

// 24 frames a second under 50 Hz lights: 172.8 degrees, 1/50 s. common practice in every handbook
// of camera assistants; from memory.
TEST_CASE("a flickering shutter is answered by the one that is safe") {
  const Plan plan = plan_with({{"/run/shutter_angle_deg", "180"}});
  const auto found = answers_to(plan, Question::run);
  REQUIRE(!found.empty());
  CHECK(found.front().text == "Shutter 172.8°");
  CHECK(found.front().outcome == "1/50 s, no flicker");
  CHECK(report_with(plan, found.front()).run.flicker.grade == Severity::ok);
}

TEST_CASE("a shutter stated as a time is answered as a time") {
  const Plan plan = plan_with({{"/run/shutter_kind", "time"}, {"/run/shutter_time_s", "1/48"}});
  const auto found = answers_to(plan, Question::run);
  REQUIRE(!found.empty());
  CHECK(found.front().text == "Shutter 1/50 s");
}

TEST_CASE("lights that were not named may be daylight") {
  const Plan plan = plan_with({{"/run/shutter_angle_deg", "180"}, {"/run/lights", "not_said"}});
  CHECK(has_text(answers_to(plan, Question::run), "It is daylight"));
  CHECK_FALSE(has_text(answers_to(plan_with({{"/run/shutter_angle_deg", "180"}}), Question::run),
                       "It is daylight"));
}

TEST_CASE("a wall is answered by a lens that exists and what it sees, and by where to stand") {
  const Plan plan = plan_with({{"/lens/wanted_width_m", "6"}, {"/lens/focus_m", "4"}});
  const auto found = answers_to(plan, Question::see);
  REQUIRE(found.size() >= 2);
  // 26.96 mm of width, 4 m away: 18 mm would show 5.99 m of the 6 wanted, so the next shorter one
  // shows all of it.
  CHECK(found[0].text == "Use the 14 mm");
  CHECK(found[1].text == "Use the 18 mm");
  CHECK(found[1].outcome == "sees 5.96 m wide at 4 m");
  CHECK(report_with(plan, found[0]).see.width_at_focus_m >= 6);
  const Answer& further = found.back();
  CHECK(report_with(plan, further).see.width_at_focus_m >= 6);
}

TEST_CASE("a lens that does not cover is answered by one that does") {
  const Plan plan = plan_with({{"/lens/set", "dart"}, {"/lens/focal_mm", "25"}});
  const auto found = answers_to(plan, Question::cover);
  REQUIRE(!found.empty());
  for (const Answer& answer : found) CHECK(report_with(plan, answer).cover.frame.covered);
}

TEST_CASE("a rate beyond the format is answered by a format that runs it, and by its ceiling") {
  const Plan plan = plan_with({{"/run/sensor_rate", "100"}, {"/run/lights", "steady"}});
  REQUIRE_FALSE(evaluate(plan, library()).run.rate_allowed);
  const auto found = answers_to(plan, Question::run);
  REQUIRE(!found.empty());
  for (const Answer& answer : found) CHECK(report_with(plan, answer).run.rate_allowed);
}

TEST_CASE("a card that cannot keep up, copies that are missing") {
  const Plan slow = plan_with({{"/store/card", "sd-v60-256"}});
  const auto cards = answers_to(slow, Question::store);
  REQUIRE(!cards.empty());
  for (const Answer& answer : cards) {
    CHECK(worst_severity(report_with(slow, answer).notes, Question::store) <= Severity::caution);
  }
  const Plan single = plan_with({{"/store/drive_copies", "1"}, {"/store/tape_copies", "0"}});
  CHECK(has_text(answers_to(single, Question::store), "Two copies on drives"));
  const Plan one_place = plan_with({{"/store/copy_places", "1"}});
  CHECK(has_text(answers_to(one_place, Question::store), "Keep them in two places"));
}

TEST_CASE("what binds is answered in Choose") {
  const Plan plan = plan_with({{"/choose/min_minutes_per_card", "90"}});
  const auto found = answers_to(plan, Question::choose);
  REQUIRE(!found.empty());
  for (const Answer& answer : found) CHECK(report_with(plan, answer).commission.met);
}

TEST_CASE("a plan that cannot be worked out has no answers") {
  Plan plan = first_plan(library());
  plan.format.camera = "none such";
  CHECK(answers(plan, evaluate(plan, library()), library()).empty());
}

}  // namespace
}  // namespace widegate
