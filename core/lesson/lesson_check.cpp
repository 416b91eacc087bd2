// check_lesson() of lesson_json.h: what a lesson says of its plans and their reports.
#include <algorithm>

#include "core/base/plain_text.h"
#include "core/encode/json_path.h"
#include "core/lesson/lesson_fields.h"
#include "core/lesson/lesson_json.h"
#include "core/lesson/lesson_run.h"
#include "core/plan/plan_fields.h"
#include "core/report/evaluate.h"
#include "core/report/flat_figures.h"

namespace widegate {
namespace {

/// Every step's figures, and the problems found so far.
struct Checking {
  const Lesson& lesson;
  std::vector<std::vector<Figure>> figures;
  Problems& problems;
};

bool is_both(LessonPicture picture) {
  return picture == LessonPicture::both_sensors || picture == LessonPicture::both_scenes;
}

/// The number of an earlier step than `at` (from 0), as a person counts.
std::string earlier_steps(std::size_t at) {
  return at == 1 ? "1, the step before" : "a step before this one: 1 to " + std::to_string(at);
}

void check_control(Checking& checking, const LessonStep& step, const JsonPath& path) {
  const auto place = find_field(step.control);
  const bool there = place && (!per_frame_line(*place->info) ||
                               place->line < step.plan.deliverable.frame_lines.size());
  if (there) return;
  add_problem(checking.problems, path.member("control"), in_quotes(step.control),
              "the pointer of a value of this step's plan, such as /lens/focal_mm");
}

void check_against(Checking& checking, std::size_t at, const JsonPath& path) {
  const LessonStep& step = checking.lesson.steps[at];
  const auto number = static_cast<std::size_t>(step.against);
  if (!is_both(step.picture)) {
    if (number == 0) return;
    add_problem(checking.problems, path.member("against"), std::to_string(number),
                "nothing: only the pictures both_sensors and both_scenes have another step");
  } else if (number < 1 || number > at) {
    add_problem(checking.problems, path.member("against"), std::to_string(number),
                at == 0 ? "a step before this one, which the first step has not: choose another "
                          "picture"
                        : earlier_steps(at));
  }
}

/// False after a problem: a report has no such figure.
bool check_key(Checking& checking, std::size_t step, std::string_view key, const JsonPath& path) {
  if (find_figure(checking.figures[step], key) != nullptr) return true;
  add_problem(checking.problems, path, in_quotes(key),
              "the key of a figure in the report of step " + std::to_string(step + 1) +
                  ", as `widegate evaluate --json` prints it: store.minutes_per_card");
  return false;
}

void check_words(Checking& checking, std::size_t at, std::string_view text, const JsonPath& path) {
  const auto figures = figures_in_words(text);
  if (!figures) {
    add_problem(checking.problems, path, in_quotes(text),
                "braces around the key of a figure only: {store.minutes_per_card}, "
                "{#store.minutes_per_card} without its unit, or {2:store.minutes_per_card} for "
                "that of step 2");
    return;
  }
  for (const WordsFigure& figure : *figures) {
    const std::size_t step = figure.step ? *figure.step - 1 : at;
    if (step < checking.figures.size()) {
      check_key(checking, step, figure.key, path);
    } else {
      add_problem(checking.problems, path, std::to_string(step + 1),
                  "a step of this lesson: 1 to " + std::to_string(checking.figures.size()));
    }
  }
}

void check_kind(Checking& checking, std::size_t step, const LessonFigure& figure,
                const JsonPath& path) {
  const bool number = find_figure(checking.figures[step], figure.key)->number() != nullptr;
  const bool counted = figure.does || figure.times || figure.value;
  if (!number && counted) {
    add_problem(checking.problems, path.member("figure"), in_quotes(figure.key),
                "a figure that is a number, or the key says in place of does, times and value");
  }
  if (number && figure.says) {
    add_problem(checking.problems, path.member("says"), in_quotes(*figure.says),
                "the keys does, times or value: this figure is a number");
  }
}

void check_figure(Checking& checking, std::size_t at, const LessonFigure& figure,
                  const JsonPath& path) {
  if (!check_key(checking, at, figure.key, path.member("figure"))) return;
  check_kind(checking, at, figure, path);
  const auto since = static_cast<std::size_t>(figure.since);
  if (since > at || (at == 0 && since > 0)) {
    add_problem(checking.problems, path.member("since"), std::to_string(since),
                at == 0 ? "nothing: there is no step before the first" : earlier_steps(at));
    return;
  }
  if (!figure.does && !figure.times) return;
  if (at == 0) {
    add_problem(checking.problems, path.member(figure.does ? "does" : "times"), "a change",
                "value or says: there is no step before the first");
    return;
  }
  check_key(checking, since > 0 ? since - 1 : at - 1, figure.key, path.member("figure"));
}

void check_step(Checking& checking, std::size_t at, const JsonPath& path) {
  const LessonStep& step = checking.lesson.steps[at];
  check_control(checking, step, path);
  check_against(checking, at, path);
  check_words(checking, at, step.words, path.member("words"));
  check_words(checking, at, step.question, path.member("question"));
  check_words(checking, at, step.answer, path.member("answer"));
  if (step.question.empty() != step.answer.empty()) {
    add_problem(checking.problems, path.member(step.answer.empty() ? "answer" : "question"),
                "nothing", "text: a question and its answer stand together");
  }
  const JsonPath figures = path.member("figures");
  if (step.figures.empty() || step.figures.size() > kMaxLessonFigures) {
    add_problem(checking.problems, figures, "a list of " + std::to_string(step.figures.size()),
                "a list of 1 to " + std::to_string(kMaxLessonFigures) + " figures to watch");
  }
  for (std::size_t i = 0; i < step.figures.size(); ++i) {
    check_figure(checking, at, step.figures[i], figures.item(i));
  }
}

}  // namespace

Problems check_lesson(const Lesson& lesson, const Catalogue& catalogue) {
  Problems problems;
  const JsonPath root;
  const JsonPath steps = root.member("steps");
  if (lesson.steps.empty() || lesson.steps.size() > kMaxLessonSteps) {
    add_problem(problems, steps, "a list of " + std::to_string(lesson.steps.size()),
                "a list of 1 to " + std::to_string(kMaxLessonSteps) + " steps");
    return problems;
  }
  Checking checking{lesson, {}, problems};
  for (const LessonStep& step : lesson.steps) {
    checking.figures.push_back(figures_of(evaluate(step.plan, catalogue)));
  }
  for (std::size_t at = 0; at < lesson.steps.size(); ++at) {
    check_step(checking, at, steps.item(at));
  }
  return problems;
}

}  // namespace widegate
