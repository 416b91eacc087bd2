#include "core/lesson/lesson_run.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/base/number_text.h"
#include "core/plan/plan_fields.h"
#include "core/report/evaluate.h"
#include "core/report/figure_text.h"
#include "core/report/flat_figures.h"
#include "core/report/told_figure.h"

namespace widegate {
namespace {

/// Sums of doubles differ by this share without having moved.
constexpr double kStill = 1e-9;
constexpr std::string_view kMissing = "–";

/// One step, evaluated.
struct Evaluated {
  const Plan* plan;
  Report report;
  std::vector<Figure> figures;

  [[nodiscard]] std::string told(std::string_view key, bool bare = false) const {
    const auto figure = told_figure(*plan, report, key);
    if (!figure) return std::string(kMissing);
    return bare ? figure->text : with_unit(figure->text, figure->unit);
  }
  [[nodiscard]] std::optional<Span> number(std::string_view key) const {
    const Figure* figure = find_figure(figures, key);
    const Span* span = figure != nullptr ? figure->number() : nullptr;
    return span != nullptr ? std::optional(*span) : std::nullopt;
  }
  [[nodiscard]] const std::string* text(std::string_view key) const {
    const Figure* figure = find_figure(figures, key);
    return figure != nullptr ? figure->text() : nullptr;
  }
};

double stillness(const Span& was) {
  return kStill * std::max(std::abs(was.least), std::abs(was.most));
}

bool same(const Span& was, const Span& is) {
  return std::abs(is.least - was.least) <= stillness(was) &&
         std::abs(is.most - was.most) <= stillness(was);
}

bool does(LessonMove move, const Span& was, const Span& is) {
  const double still = stillness(was);
  switch (move) {
    case LessonMove::unchanged:
      return same(was, is);
    case LessonMove::rises:
      return is.most > was.most + still && is.least >= was.least - still;
    case LessonMove::falls:
      return is.least < was.least - still && is.most <= was.most + still;
  }
  return false;
}

bool near(const Span& is, double value, double within) {
  const double allowed = within + kStill * std::abs(value);
  return std::abs(is.least - value) <= allowed && std::abs(is.most - value) <= allowed;
}

bool claim_holds(const LessonFigure& claim, const Evaluated& was, const Evaluated& is) {
  if (claim.says) {
    const std::string* text = is.text(claim.key);
    return text != nullptr && *text == *claim.says;
  }
  const auto after = is.number(claim.key);
  if (!after) return !claim.does && !claim.times && !claim.value && is.text(claim.key) != nullptr;
  if (claim.value && !near(*after, *claim.value, claim.within)) return false;
  if (!claim.does && !claim.times) return true;
  const auto before = was.number(claim.key);
  if (!before) return false;
  if (claim.does && !does(*claim.does, *before, *after)) return false;
  if (!claim.times) return true;
  const Span share{after->least / before->least, after->most / before->most};
  return near(share, *claim.times, claim.within);
}

std::string claim_words(const LessonFigure& figure) {
  constexpr auto kMoves = std::to_array<std::string_view>({"rises", "falls", "stays"});
  std::string words;
  const auto add = [&](const std::string& part) { words += (words.empty() ? "" : ", ") + part; };
  if (figure.does) add(std::string(kMoves[static_cast<std::size_t>(*figure.does)]));
  if (figure.times) add("is " + print_number(*figure.times) + " times what it was");
  if (figure.value) add("is " + print_number(*figure.value));
  if (figure.says)
    add("is " + (*figure.says == "true"    ? std::string("yes")
                 : *figure.says == "false" ? std::string("no")
                                           : *figure.says));
  if (!words.empty() && figure.since > 0) words += ", against step " + std::to_string(figure.since);
  return words;
}

/// The index of the step that a figure of step `at` is compared with; itself in a first step.
std::size_t compared_with(const LessonFigure& figure, std::size_t at) {
  if (figure.since > 0) return static_cast<std::size_t>(figure.since) - 1;
  return at == 0 ? 0 : at - 1;
}

WatchedFigure watched(const LessonFigure& figure, std::size_t at,
                      std::span<const Evaluated> steps) {
  WatchedFigure told;
  told.key = figure.key;
  told.since = std::min(compared_with(figure, at), at);
  const Evaluated& is = steps[at];
  const Evaluated& was = steps[told.since];
  const auto words = told_figure(*is.plan, is.report, figure.key);
  told.label = words ? words->label : figure.key;
  told.after = words ? with_unit(words->text, words->unit) : std::string(kMissing);
  told.after_number = is.number(figure.key);
  if (told.since != at) {
    told.before = was.told(figure.key);
    told.before_number = was.number(figure.key);
    told.changed = told.before != told.after;
  }
  told.claim = claim_words(figure);
  told.holds = claim_holds(figure, was, is);
  return told;
}

/// The text with every figure put in.
std::string told_words(std::string_view text, std::size_t at, std::span<const Evaluated> steps) {
  const auto figures = figures_in_words(text);
  if (!figures) return std::string(text);
  std::string told;
  for (const WordsFigure& figure : *figures) {
    told += text.substr(0, text.find('{'));
    text.remove_prefix(text.find('}') + 1);
    const std::size_t step = figure.step ? *figure.step - 1 : at;
    told += step < steps.size() ? steps[step].told(figure.key, figure.bare) : std::string(kMissing);
  }
  return told += text;
}

/// Where a control stands, as a person would say it.
std::string control_value(const Plan& plan, const FieldPlace& place, std::string_view pointer,
                          const Catalogue& catalogue) {
  const FieldInfo& info = *place.info;
  const std::string text = field_text(plan, pointer);
  for (const FieldOption& option : field_options(plan, catalogue, info)) {
    if (option.value == text) return option.label;
  }
  if (text.empty()) return "as the library has it";
  const FieldValue value = info.read(plan, place.line);
  const auto* fraction = std::get_if<Rational>(&value);
  const std::string shown = fraction == nullptr ? text : short_number(fraction->to_double(), 3);
  return with_unit(shown, info.unit == "deg" ? "°" : info.unit == "x" ? "×" : info.unit);
}

void tell_control(StepRun& run, const LessonStep& step, const Catalogue& catalogue) {
  const auto place = find_field(step.control);
  if (!place) return;
  run.control_label = place->info->label;
  run.control_value = control_value(step.plan, *place, step.control, catalogue);
}

}  // namespace

bool LessonRun::holds() const {
  return std::all_of(steps.begin(), steps.end(), [](const StepRun& step) {
    return std::all_of(step.figures.begin(), step.figures.end(),
                       [](const WatchedFigure& figure) { return figure.holds; });
  });
}

LessonRun run_lesson(const Lesson& lesson, const Catalogue& catalogue) {
  std::vector<Evaluated> steps;
  steps.reserve(lesson.steps.size());
  for (const LessonStep& step : lesson.steps) {
    Evaluated& evaluated =
        steps.emplace_back(Evaluated{&step.plan, evaluate(step.plan, catalogue), {}});
    evaluated.figures = figures_of(evaluated.report);
  }
  LessonRun run;
  for (std::size_t at = 0; at < steps.size(); ++at) {
    const LessonStep& step = lesson.steps[at];
    StepRun& told = run.steps.emplace_back();
    told.title = step.title;
    told.words = told_words(step.words, at, steps);
    told.question = told_words(step.question, at, steps);
    told.answer = told_words(step.answer, at, steps);
    tell_control(told, step, catalogue);
    for (const LessonFigure& figure : step.figures) {
      told.figures.push_back(watched(figure, at, steps));
    }
  }
  for (std::size_t at = 0; at < steps.size(); ++at) {
    run.steps[at].report = std::move(steps[at].report);
  }
  return run;
}

std::optional<std::vector<WordsFigure>> figures_in_words(std::string_view text) {
  std::vector<WordsFigure> figures;
  while (true) {
    const std::size_t open = text.find_first_of("{}");
    if (open == std::string_view::npos) return figures;
    if (text[open] == '}') return std::nullopt;
    const std::size_t close = text.find_first_of("{}", open + 1);
    if (close == std::string_view::npos || text[close] == '{') return std::nullopt;
    WordsFigure figure;
    figure.key = text.substr(open + 1, close - open - 1);
    const std::size_t colon = figure.key.find(':');
    if (colon != std::string_view::npos) {
      const auto step = parse_rational(figure.key.substr(0, colon));
      if (!step || !step->whole() || step->num() < 1) return std::nullopt;
      figure.step = static_cast<std::size_t>(step->num());
      figure.key.remove_prefix(colon + 1);
    }
    figure.bare = figure.key.starts_with('#');
    if (figure.bare) figure.key.remove_prefix(1);
    if (figure.key.empty()) return std::nullopt;
    figures.push_back(figure);
    text.remove_prefix(close + 1);
  }
}

std::string with_unit(std::string_view text, std::string_view unit) {
  const bool glued = unit.empty() || unit == "°" || unit == "×" || unit == "∶1";
  return std::string(text) + (glued ? "" : " ") + std::string(unit);
}

}  // namespace widegate
