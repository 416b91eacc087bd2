#include "core/report/working.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/base/number_text.h"
#include "core/report/figure_text.h"
#include "core/report/flat_figures.h"
#include "core/report/formula_text.h"
#include "core/report/formulas.h"
#include "core/report/told_figure.h"

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

/// The row's unit, with the currency in the place of "money".
std::string unit_in(const Report& report, std::string_view unit) {
  constexpr std::string_view kMoney = "money";
  if (!unit.starts_with(kMoney)) return std::string(unit);
  return report.currency + std::string(unit.substr(kMoney.size()));
}

const GivenNumber* find_given(const Report& report, std::string_view key) {
  if (!key.starts_with(kGiven)) return nullptr;
  key.remove_prefix(kGiven.size());
  for (const GivenNumber& given : report.given) {
    if (given.key == key) return &given;
  }
  return nullptr;
}

/// Titles begin with a capital letter; inside a formula a name does not.
std::string as_name(std::string_view title) {
  std::string name(title.substr(0, title.find(", from the")));
  if (!name.empty() && name.front() >= 'A' && name.front() <= 'Z') {
    name.front() = static_cast<char>(name.front() - 'A' + 'a');
  }
  return name;
}

/// The three areas share titles; in a formula each is called by its own name.
std::string_view of_area(std::string_view key) {
  constexpr auto kAreas = std::to_array<std::pair<std::string_view, std::string_view>>({
      {"cover.mode.", " of the mode"},
      {"cover.protected.", " of the protected area"},
      {"cover.frame.", " of the frame line"},
  });
  for (const auto& [begins, words] : kAreas) {
    if (key.starts_with(begins)) return words;
  }
  return {};
}

/// The letters that the trade and textbooks use.
struct SymbolRow {
  std::string_view key, symbol;
};
constexpr auto kSymbols = std::to_array<SymbolRow>({
    {"mode.squeeze", "s"},
    {"mode.width_mm", "W"},
    {"mode.height_mm", "H"},
    {"mode.width_photosites", "X"},
    {"mode.height_photosites", "Y"},
    {"mode.pitch_um", "p"},
    {"frame.width_mm", "w"},
    {"frame.height_mm", "h"},
    {"frame.width_photosites", "x"},
    {"frame.height_photosites", "y"},
    {"frame.protected_width_photosites", "x₀"},
    {"frame.protected_height_photosites", "y₀"},
    {"frame.aspect", "A"},
    {"frame.protection", "q"},
    {"frame.nominal_scale", "k"},
    {"cover.image_circle_mm", "D"},
    {"cover.mode.diagonal_mm", "d"},
    {"cover.protected.diagonal_mm", "d"},
    {"cover.frame.diagonal_mm", "d"},
    {"see.marked_focal_mm", "f₀"},
    {"see.extender", "e"},
    {"see.focal_mm", "f"},
    {"see.f_number", "N"},
    {"see.focus_m", "a"},
    {"see.circle_of_confusion_mm", "c"},
    {"see.hyperfocal_m", "H"},
    {"see.horizontal_depth.hyperfocal_m", "H"},
    {"see.magnification", "m"},
    {"run.shutter_deg", "α"},
    {"run.exposure_s", "t"},
    {"run.sensor_rate_fps", "r"},
    {"run.project_rate_fps", "R"},
    {"run.flicker.pulses_hz", "P"},
    {"run.flicker.pulses_per_exposure", "n"},
    {"run.flicker.mains_hz", "F"},
});

std::string_view symbol_of(std::string_view key) {
  for (const SymbolRow& row : kSymbols) {
    if (row.key == key) return row.symbol;
  }
  return {};
}

/// A number with its unit as it stands in a line; one of what is counted is told as one.
std::string with_its_unit(const std::string& number, std::string_view unit) {
  constexpr auto kCounted = std::to_array<std::string_view>(
      {"days", "units", "cameras", "copies", "channels", "cards", "drives", "tapes", "passes",
       "frames", "rows", "pulses", "bands", "magazines"});
  if (unit.empty()) return number;
  const bool glued = unit == "°" || unit == "×" || unit == "∶1";
  const bool counted = std::find(kCounted.begin(), kCounted.end(), unit) != kCounted.end();
  if (counted && number == "1") {
    if (unit == "copies") return "1 copy";
    if (unit == "passes") return "1 pass";
    unit.remove_suffix(1);
  }
  return number + (glued ? "" : " ") + std::string(unit);
}

/// A number as it is read in a line of working: five digits, whole numbers whole.
std::string in_line(double value) {
  constexpr double kWholeTo = 1e15;
  constexpr int kDigits = 5;
  if (std::abs(value) < kWholeTo && std::floor(value) == value) {
    return std::abs(value) >= 10'000 ? print_grouped(static_cast<std::int64_t>(value))
                                     : print_number(value);
  }
  if (std::abs(value) >= 10'000 && std::abs(value) < kWholeTo) {
    return print_grouped(std::llround(value));
  }
  const int before = value == 0 ? 1 : static_cast<int>(std::floor(std::log10(std::abs(value)))) + 1;
  return short_number(value, std::clamp(kDigits - before, 0, 9));
}

/// The figures of one report and how a working looks at them.
class Figures : public FormulaFigures {
 public:
  Figures(const Report& report, const Context& context, bool largest_frames)
      : report_(report), context_(context), largest_frames_(largest_frames) {}

  [[nodiscard]] double value(std::string_view key) const override {
    const Figure* figure = context_.find(key);
    if (figure == nullptr || figure->number() == nullptr) return std::nan("");
    return end_of(*figure->number(), direction_of(figure->key), largest_frames_);
  }
  [[nodiscard]] std::string whole_key(std::string_view key) const {
    const Figure* figure = context_.find(key);
    return figure != nullptr ? figure->key : std::string(key);
  }
  [[nodiscard]] std::string name(std::string_view key) const {
    if (const GivenNumber* given = find_given(report_, key)) return as_name(given->label);
    const Figure* figure = context_.find(key);
    const FormulaRow* row = figure != nullptr ? find_row({context_.figures, *figure}) : nullptr;
    return row != nullptr ? as_name(row->title) + std::string(of_area(figure->key))
                          : std::string(key);
  }
  [[nodiscard]] std::string unit(std::string_view key) const {
    if (const GivenNumber* given = find_given(report_, key)) return unit_in(report_, given->unit);
    const Figure* figure = context_.find(key);
    const FormulaRow* row = figure != nullptr ? find_row({context_.figures, *figure}) : nullptr;
    return row != nullptr ? unit_in(report_, row->unit) : std::string();
  }

 private:
  const Report& report_;
  const Context& context_;
  bool largest_frames_;
};

class InNames : public Figures {
 public:
  using Figures::Figures;
  [[nodiscard]] std::string text(std::string_view key, std::string_view) const override {
    return name(key);
  }
};

class InSymbols : public Figures {
 public:
  using Figures::Figures;
  [[nodiscard]] std::string text(std::string_view key, std::string_view) const override {
    return std::string(symbol_of(whole_key(key)));
  }
};

/// Negative numbers get brackets so that the line still reads as arithmetic.
class InNumbers : public Figures {
 public:
  InNumbers(const Report& report, const Context& context, bool largest_frames, bool exact)
      : Figures(report, context, largest_frames), exact_(exact) {}
  [[nodiscard]] std::string text(std::string_view key, std::string_view other) const override {
    const double number = value(key);
    const std::string digits = exact_ ? print_number(number) : in_line(number);
    const std::string with = with_its_unit(digits, other.empty() ? unit(key) : std::string(other));
    return with.starts_with('-') ? "(" + with + ")" : with;
  }

 private:
  bool exact_;
};

/// What a row's condition means, told as the step that was taken.
struct ConditionRow {
  std::string_view condition, words;
};
constexpr auto kConditions = std::to_array<ConditionRow>({
    {"film.known=true", "the camera runs film"},
    {"store.no_cards=true", "the camera runs film"},
    {"see.extended=true", "an extender or reducer is behind the lens"},
    {"see.match=width", "the widths are matched"},
    {"see.match=height", "the heights are matched"},
    {"see.match=diagonal", "the diagonals are matched"},
    {"run.shutter_is_time=true", "the shutter is stated as a time"},
    {"run.rate_limited_by=card", "the card is what ends the rate"},
    {"given.codec_form=packed", "the codec packs photosites or pixels in blocks, uncompressed"},
    {"given.codec_form=ratio", "the codec keeps a ratio"},
    {"given.codec_form=lossless", "the codec is lossless: the picture decides"},
    {"given.codec_form=macroblock", "the codec's frames grow with blocks of 16 by 16"},
    {"given.codec_form=bit_rate", "the codec has a constant bit rate"},
    {"given.codec_form=measured", "the codec is known from a measured file"},
    {"given.shooting_by=ratio", "the footage is stated as a shooting ratio"},
    {"given.copying=drives, verified", "copies on drives are read back"},
    {"given.copying=drives", "copies on drives are not read back"},
    {"given.copying=no drives, verified", "no copy is on drives; what is copied is verified"},
    {"given.verification=none", "nothing is read back"},
    {"given.upload_what=originals", "the originals are uploaded"},
    {"given.counted=mode", "photosites are counted on the mode"},
    {"given.counted=frame", "photosites are counted inside the frame line"},
    {"given.counted=scan", "a scan of film is counted"},
    {"given.counted=scanned_frame", "a scan of film is counted, inside the frame line"},
});

/// Why an optional part stands, or which branch was taken; "#" is the figure.
struct StepRow {
  std::string_view key;
  std::string_view taken, not_taken;
};
constexpr auto kSteps = std::to_array<StepRow>({
    {"mode.squeeze", "the lens squeezes #", ""},
    {"frame.protection", "a share of # is kept as protection", ""},
    {"resolve.recorded_squeeze", "the file is still squeezed #", ""},
    {"cover.frame.area_mm2", "the frame line fills the mode", "the mode is larger than the frame"},
    {"store.cards_per_day", "hardly a card is filled in a day", "# are filled in a day"},
    {"given.drive_copies", "no copy is on drives: the tape alone sets the pace",
     "the tape is written from a drive: the slower one sets the pace"},
});

void tell_steps(Working& working, const InNumbers& numbers, const FormulaRow& row,
                const std::vector<TakenStep>& steps) {
  const auto add = [&](std::string words) {
    auto& because = working.because;
    if (words.empty() || std::find(because.begin(), because.end(), words) != because.end()) return;
    because.push_back(std::move(words));
  };
  for (const ConditionRow& condition : kConditions) {
    if (condition.condition == row.when) add(std::string(condition.words));
  }
  for (const TakenStep& step : steps) {
    const std::string key = numbers.whole_key(step.key);
    for (const StepRow& each : kSteps) {
      const bool protection = each.key == "frame.protection" && key.ends_with(".protection");
      if (each.key != key && !protection) continue;
      std::string words(step.taken ? each.taken : each.not_taken);
      const std::size_t mark = words.find('#');
      if (mark != std::string::npos) words.replace(mark, 1, numbers.text(step.key, ""));
      add(std::move(words));
    }
  }
}

/// The parts of a formula, in its order.
void list_parts(Working& working, const InNumbers& numbers,
                const std::vector<std::string_view>& figures) {
  for (const std::string_view key : figures) {
    const std::string whole = numbers.whole_key(key);
    // What only a branch hung on stands in no line.
    const bool there = working.formula.find(numbers.name(key)) != std::string::npos;
    if (!there || whole == working.key) continue;
    const double value = numbers.value(key);
    const ToldNumber told = told_number({value, value}, numbers.unit(key));
    working.parts.push_back({whole, numbers.name(key), std::string(symbol_of(whole)),
                             with_its_unit(told.text, told.unit)});
  }
}

/// Symbols serve when every part has its own.
bool has_symbols(const Working& working) {
  const auto& parts = working.parts;
  return !parts.empty() && std::all_of(parts.begin(), parts.end(), [&](const WorkingPart& part) {
    return !part.symbol.empty() &&
           std::count_if(parts.begin(), parts.end(), [&](const WorkingPart& other) {
             return other.symbol == part.symbol;
           }) == 1;
  });
}

void add_line(Working& working, const Report& report, const Context& context, const FormulaRow& row,
              bool largest_frames) {
  if (!row.formula.empty()) {
    const InNumbers people(report, context, largest_frames, false);
    const InNumbers exact(report, context, largest_frames, true);
    working.substituted.push_back(told_formula(row.formula, people).text);
    working.exact.push_back(told_formula(row.formula, exact).text);
  }
  const double result = end_of(*context.subject.number(), row.with_frame_size, largest_frames);
  working.results.push_back(print_number(result));
  const ToldNumber told = told_number({result, result}, working.unit);
  working.told.push_back(with_its_unit(told.text, told.unit));
}

void tell_formula(Working& working, const Report& report, const Context& context,
                  const FormulaRow& row) {
  const InNumbers numbers(report, context, true, false);
  const ToldFormula names = told_formula(row.formula, InNames(report, context, true));
  working.formula = names.text;
  list_parts(working, numbers, names.figures);
  tell_steps(working, numbers, row, names.steps);
  if (has_symbols(working)) {
    working.symbols = told_formula(row.formula, InSymbols(report, context, true)).text;
  }
}

/// A number that was put in has its words in the report itself.
std::optional<Working> explained_given(const Report& report, const Figure& subject) {
  const GivenNumber* given = find_given(report, subject.key);
  if (given == nullptr) return std::nullopt;
  Working working;
  working.key = subject.key;
  working.title = given->label;
  working.unit = unit_in(report, given->unit);
  std::vector<double> ends = {given->value.least};
  if (given->value.least != given->value.most) ends.push_back(given->value.most);
  for (const double end : ends) {
    working.results.push_back(print_number(end));
    const ToldNumber told = told_number({end, end}, working.unit);
    working.told.push_back(with_its_unit(told.text, told.unit));
  }
  working.source = given->source;
  return working;
}

/// The source of the row, or that the equipment it is read from was invented.
std::string source_of(const Report& report, const FormulaRow& row) {
  constexpr std::string_view kInvented = "invented for the demo";
  const bool library = row.source.starts_with("the library");
  const bool lens = row.key.starts_with("cover.lens_set") || row.key.starts_with("see.widest") ||
                    row.key.starts_with("see.close");
  if (library && (lens ? report.lens_invented : report.camera_invented)) {
    return std::string(kInvented);
  }
  const bool of_set = row.source.starts_with("the lens set");
  if (of_set && report.lens_invented) {
    return std::string(row.source) + "; the set is " + std::string(kInvented);
  }
  return std::string(row.source);
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
  working.unit = unit_in(report, row->unit);
  working.source = source_of(report, *row);
  if (!row->formula.empty()) tell_formula(working, report, context, *row);
  const bool range = subject.number()->least != subject.number()->most;
  if (range) add_line(working, report, context, *row, false);
  add_line(working, report, context, *row, true);
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
