// Every step of every lesson is a valid plan, and its numbers do what its words say.
#include "core/lessons.h"

#include <doctest/doctest.h>

#include <cmath>
#include <set>
#include <string>

#include "core/catalogue_json.h"
#include "core/evaluate.h"
#include "core/figures.h"
#include "core/working.h"

namespace {

using namespace widegate;

bool moved(LessonMove move, const Span& from, const Span& to) {
  const double tolerance = 1e-9 * std::abs(from.most);
  switch (move) {
    case LessonMove::same:
      return std::abs(to.least - from.least) <= tolerance &&
             std::abs(to.most - from.most) <= tolerance;
    case LessonMove::rises:
      return to.most > from.most + tolerance && to.least >= from.least - tolerance;
    case LessonMove::falls:
      return to.least < from.least - tolerance && to.most <= from.most + tolerance;
  }
  return false;
}

Report step_report(const Lesson& lesson, std::size_t step, const Catalogue& catalogue) {
  const Checked<Plan> plan = lesson_plan(lesson, step, catalogue);
  if (!plan) {
    for (const Problem& problem : plan.error()) MESSAGE(to_line(problem));
  }
  REQUIRE(plan.has_value());
  return evaluate(*plan, catalogue);
}

}  // namespace

TEST_CASE("every lesson's steps are plans that keep their claims") {
  const Checked<Catalogue> catalogue = built_in_catalogue();
  REQUIRE(catalogue.has_value());
  CHECK(lessons().size() >= 6);
  std::set<std::string_view> ids;
  for (const Lesson& lesson : lessons()) {
    CAPTURE(lesson.id);
    CHECK(ids.insert(lesson.id).second);
    CHECK(lesson.steps.size() >= 3);
    std::vector<Figure> before;
    for (std::size_t step = 0; step < lesson.steps.size(); ++step) {
      CAPTURE(lesson.steps[step].title);
      const Report report = step_report(lesson, step, *catalogue);
      REQUIRE(report.problems.empty());
      const std::vector<Figure> now = figures_of(report);
      CHECK(working_of(report, lesson.steps[step].figure).has_value());
      CHECK(lesson.steps[step].claims.empty() == (step == 0));
      for (const LessonClaim& claim : lesson.steps[step].claims) {
        CAPTURE(claim.key);
        const Figure* was = find_figure(before, claim.key);
        const Figure* is = find_figure(now, claim.key);
        REQUIRE(was != nullptr);
        REQUIRE(is != nullptr);
        REQUIRE(was->number() != nullptr);
        REQUIRE(is->number() != nullptr);
        CAPTURE(was->number()->least);
        CAPTURE(is->number()->least);
        CHECK(moved(claim.move, *was->number(), *is->number()));
      }
      before = now;
    }
  }
}

TEST_CASE("a lesson without its cameras gives problems, not a plan") {
  CHECK_FALSE(lesson_plan(lessons().front(), 0, Catalogue{}).has_value());
}
