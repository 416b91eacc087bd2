#include "tools/cli/lesson_table.h"

#include "core/base/number_text.h"
#include "core/encode/json_text.h"
#include "tools/cli/text_table.h"

namespace widegate::cli {
namespace {

std::string told_change(const WatchedFigure& figure) {
  if (figure.before.empty()) return figure.after;
  if (!figure.changed) return figure.after + ", as before";
  return figure.before + " → " + figure.after;
}

void add_figure(TextTable& table, const WatchedFigure& figure, std::size_t at) {
  std::string value = told_change(figure);
  if (!figure.before.empty() && figure.since + 1 != at) {
    value += " (from step " + std::to_string(figure.since + 1) + ")";
  }
  if (!figure.holds) value += "  DOES NOT HOLD: " + figure.claim;
  table.row("  " + figure.label, value);
}

Json number(const std::optional<Span>& value) {
  if (!value) return nullptr;
  if (value->least == value->most) return round_12(value->least);
  return Json{{"least", round_12(value->least)}, {"most", round_12(value->most)}};
}

Json figure_json(const WatchedFigure& figure) {
  Json object = {{"figure", figure.key}, {"label", figure.label}};
  object["since_step"] =
      figure.before.empty() ? Json(nullptr) : Json(static_cast<std::int64_t>(figure.since) + 1);
  object["before"] = number(figure.before_number);
  object["after"] = number(figure.after_number);
  object["before_text"] = figure.before;
  object["after_text"] = figure.after;
  object["changed"] = figure.changed;
  object["claim"] = figure.claim;
  object["holds"] = figure.holds;
  return object;
}

}  // namespace

std::string lesson_table(const Lesson& lesson, const LessonRun& run) {
  TextTable table;
  table.paragraph(lesson.title);
  if (!lesson.aim.empty()) table.paragraph(lesson.aim);
  for (std::size_t i = 0; i < run.steps.size(); ++i) {
    const StepRun& step = run.steps[i];
    table.section(std::to_string(i + 1) + ". " + step.title);
    table.paragraph(step.words);
    table.row("Move", step.control_label + ", now " + step.control_value);
    for (const WatchedFigure& figure : step.figures) add_figure(table, figure, i);
  }
  return table.str();
}

std::string lesson_json(const Lesson& lesson, const LessonRun& run) {
  Json document = {{"title", lesson.title}, {"aim", lesson.aim}, {"holds", run.holds()}};
  Json& steps = document["steps"] = Json::array();
  for (std::size_t i = 0; i < run.steps.size(); ++i) {
    const StepRun& step = run.steps[i];
    Json object = {
        {"step", static_cast<std::int64_t>(i) + 1}, {"title", step.title}, {"words", step.words}};
    object["control"] = {{"pointer", lesson.steps[i].control},
                         {"label", step.control_label},
                         {"value", step.control_value}};
    Json& figures = object["figures"] = Json::array();
    for (const WatchedFigure& figure : step.figures) figures.push_back(figure_json(figure));
    steps.push_back(std::move(object));
  }
  return print_json(document) + "\n";
}

}  // namespace widegate::cli
