#include "core/report/working.h"

#include <algorithm>

#include "core/base/number_text.h"
#include "core/report/flat_figures.h"
#include "core/report/formulas.h"

namespace widegate {
namespace {

constexpr std::string_view kFrame = "frame.";
constexpr std::string_view kFrameLines = "frame_lines.#.";
constexpr std::string_view kGiven = "given.";
constexpr std::string_view kArea = "cover.area.";

/// "frame_lines.2.width_mm" -> "frame_lines.#.width_mm"
std::string with_marks(std::string_view key) {
  std::string marked;
  while (true) {
    const std::size_t dot = key.find('.');
    const std::string_view part = key.substr(0, dot);
    const bool index = !part.empty() && part.find_first_not_of("0123456789") == part.npos;
    marked += index ? "#" : part;
    if (dot == std::string_view::npos) return marked;
    marked += '.';
    key.remove_prefix(dot + 1);
  }
}

/// The key under which the table keeps a figure's formula.
std::string table_key(std::string_view key) {
  std::string marked = with_marks(key);
  if (marked.starts_with(kFrameLines)) marked.replace(0, kFrameLines.size(), kFrame);
  for (const std::string_view area : {"cover.mode.", "cover.protected.", "cover.frame."}) {
    if (marked.starts_with(area) && !marked.ends_with("left_mm") && !marked.ends_with("top_mm") &&
        !marked.ends_with("right_mm") && !marked.ends_with("bottom_mm")) {
      marked.replace(0, area.size(), kArea);
    }
  }
  return marked;
}

std::string_view object_of(std::string_view key) { return key.substr(0, key.rfind('.') + 1); }

/// The figures of one report and the one being explained.
struct Context {
  const std::vector<Figure>& figures;
  const Figure& subject;

  /// Looks a formula's key up: "." is the subject's own object; a frame line's formulas speak of
  /// "frame." and mean that frame line.
  [[nodiscard]] const Figure* find(std::string_view key) const {
    if (key == ".*") return &subject;
    if (key.starts_with('.')) {
      return find_figure(figures, std::string(object_of(subject.key)) + std::string(key.substr(1)));
    }
    if (key.starts_with(kFrame) && subject.key.starts_with("frame_lines.")) {
      return find_figure(
          figures, std::string(object_of(subject.key)) + std::string(key.substr(kFrame.size())));
    }
    return find_figure(figures, key);
  }

  [[nodiscard]] bool holds(std::string_view condition) const {
    if (condition.empty()) return true;
    const std::size_t equals = condition.find('=');
    const Figure* figure = find(condition.substr(0, equals));
    const std::string* text = figure == nullptr ? nullptr : figure->text();
    return text != nullptr && *text == condition.substr(equals + 1);
  }
};

const FormulaRow* find_row(const Context& context) {
  const std::string key = table_key(context.subject.key);
  for (const FormulaRow& row : formula_rows()) {
    if (row.key == key && context.holds(row.when)) return &row;
  }
  return nullptr;
}

/// The end of a range that belongs to the smallest (or largest) frames of the codec.
double end_of(const Span& span, WithFrameSize direction, bool largest_frames) {
  const bool upper = (direction == WithFrameSize::rises) == largest_frames;
  return upper ? span.most : span.least;
}

WithFrameSize direction_of(std::string_view key) {
  const std::string marked = table_key(key);
  for (const FormulaRow& row : formula_rows()) {
    if (row.key == marked) return row.with_frame_size;
  }
  return WithFrameSize::rises;
}

/// Negative numbers get brackets so that the line still reads as arithmetic.
std::string as_operand(double value) {
  const std::string text = print_number(value);
  return text.starts_with('-') ? "(" + text + ")" : text;
}

std::string number_for(const Context& context, std::string_view key, bool largest_frames) {
  const Figure* figure = context.find(key);
  if (figure == nullptr || figure->number() == nullptr) return "null";
  return as_operand(end_of(*figure->number(), direction_of(figure->key), largest_frames));
}

/// Replaces every {words|key}: by the words, or by whatever `number` makes of the key.
template <class Number>
std::string replaced(std::string_view formula, Number number) {
  std::string text;
  while (true) {
    const std::size_t open = formula.find('{');
    text += formula.substr(0, open);
    if (open == std::string_view::npos) return text;
    const std::size_t bar = formula.find('|', open);
    const std::size_t close = formula.find('}', bar);
    text +=
        number(formula.substr(open + 1, bar - open - 1), formula.substr(bar + 1, close - bar - 1));
    formula.remove_prefix(close + 1);
  }
}

void add_line(Working& working, const Context& context, const FormulaRow& row,
              bool largest_frames) {
  if (!row.formula.empty()) {
    working.substituted.push_back(
        replaced(row.formula, [&](std::string_view, std::string_view key) {
          return number_for(context, key, largest_frames);
        }));
  }
  working.results.push_back(
      print_number(end_of(*context.subject.number(), row.with_frame_size, largest_frames)));
}

/// A number that was put in has its words in the report itself.
std::optional<Working> explained_given(const Report& report, const Figure& subject) {
  if (!subject.key.starts_with(kGiven)) return std::nullopt;
  const std::string_view key = std::string_view(subject.key).substr(kGiven.size());
  for (const GivenNumber& given : report.given) {
    if (given.key != key) continue;
    Working working;
    working.key = subject.key;
    working.title = given.label;
    working.results = {print_number(given.value.least)};
    if (given.value.least != given.value.most) {
      working.results.push_back(print_number(given.value.most));
    }
    working.unit = given.unit;
    working.source = given.source;
    return working;
  }
  return std::nullopt;
}

std::optional<Working> explained(const Report& report, const std::vector<Figure>& figures,
                                 const Figure& subject) {
  if (subject.number() == nullptr) return std::nullopt;
  if (auto given = explained_given(report, subject)) return given;
  const Context context{.figures = figures, .subject = subject};
  const FormulaRow* row = find_row(context);
  if (row == nullptr) return std::nullopt;
  Working working;
  working.key = subject.key;
  working.title = row->title;
  working.unit = row->unit;
  working.source = row->source;
  working.formula = replaced(
      row->formula, [](std::string_view words, std::string_view) { return std::string(words); });
  const bool range = subject.number()->least != subject.number()->most;
  if (range) add_line(working, context, *row, false);
  add_line(working, context, *row, true);
  return working;
}

}  // namespace

std::optional<Working> working_of(const Report& report, std::string_view key) {
  const std::vector<Figure> figures = figures_of(report);
  const Figure* subject = find_figure(figures, key);
  return subject == nullptr ? std::nullopt : explained(report, figures, *subject);
}

std::vector<Working> all_workings(const Report& report) {
  const std::vector<Figure> figures = figures_of(report);
  std::vector<Working> workings;
  for (const Figure& figure : figures) {
    if (auto working = explained(report, figures, figure)) workings.push_back(std::move(*working));
  }
  return workings;
}

}  // namespace widegate
