// What the canvas shows, as data: every control, result, verdict and message of the current state.
// The host turns it into native page elements (range inputs, selects, buttons, a table, a live
// region) for screen readers, search, copying and tests. No drawing and no platform code here.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "core/report/report.h"

namespace widegate {

/// A rectangle in CSS pixels from the top left corner of the canvas.
struct RectPx {
  float x = 0, y = 0, width = 0, height = 0;
  friend bool operator==(const RectPx&, const RectPx&) = default;
};

/// Which native element a control becomes.
enum class ControlKind {
  slider,  ///< A number: range input, and a text field on request.
  choice,  ///< One of `choices`: select.
  flag,    ///< On or off: checkbox; value 1 or 0.
  text,    ///< Free text: text input.
  action,  ///< A command: button. Ui::activate(id) runs it.
};

/// One entry of a choice.
struct ChoiceItem {
  std::string value;   ///< What Ui::set takes.
  std::string label;   ///< What a person reads.
  std::string detail;  ///< A second line, may be empty.
  friend bool operator==(const ChoiceItem&, const ChoiceItem&) = default;
};

/// One control, whether it is on the screen at the moment or not.
struct Control {
  std::string id;  ///< JSON pointer of the plan's value ("/lens/focal_mm"), or "command:NAME".
  ControlKind kind = ControlKind::action;
  std::string section;  ///< Id of the section it belongs to.
  std::string label;
  std::string short_label;                       ///< In a form, below its heading; empty: `label`.
  std::string heading;                           ///< Drawn above it; may be empty.
  std::string help;                              ///< One sentence, may be empty.
  double min = 0, max = 0, step = 0, value = 0;  ///< Of a slider; value also of a flag.
  std::string value_text;                        ///< For reading, without the unit: "23.976".
  std::string edit_text;                         ///< For typing; Ui::set accepts it unchanged.
  std::string unit;                              ///< "" for none.
  std::string problem;              ///< Why the last typed text was not accepted, or empty.
  std::vector<ChoiceItem> choices;  ///< Of a slider: usual values.
  bool numeric = false;             ///< Of a text: a number is expected.
  bool stops = false;               ///< Of a slider: a drag goes from one of `choices` to the next.
  double ceiling = 0;               ///< Of a slider: no more is possible; 0 for none.
  bool signs = false;               ///< A typed number may hold ':' or '/'.
  bool enabled = true;
  bool further = false;  ///< Behind "More" on the canvas.
  bool changed = false;  ///< Differs from a new plan's value: a reset makes sense.
  bool pressed = false;  ///< Of an action that is a toggle: its state.
  bool visible = false;  ///< Drawn and inside the screen in the last frame; `rect` holds.
  RectPx rect;
};

/// What is drawn as its label.
[[nodiscard]] inline std::string_view drawn_label(const Control& control) {
  return control.short_label.empty() ? control.label : control.short_label;
}

/// One figure of the results table.
struct ResultRow {
  std::string section;
  std::string key;  ///< Path in the report's JSON form.
  std::string label;
  std::string value_text;
  std::string unit;
  std::string working;  ///< What Ui::show_working takes; empty when nothing explains it.
  bool main = false;    ///< Among the few that answer the section's question.
  friend bool operator==(const ResultRow&, const ResultRow&) = default;
};

/// One of the seven questions, or the sections around them ("format", "plan", "view").
struct Section {
  std::string id;
  std::string title;                 ///< "Cover"
  std::string question;              ///< "Does the lens cover the format?"
  bool has_verdict = false;          ///< False for sections that ask nothing.
  Severity severity = Severity::ok;  ///< Of the verdict.
  std::string verdict;               ///< One line in words.
  std::vector<std::string> notes;    ///< Further lines, each beginning with its severity word.
  friend bool operator==(const Section&, const Section&) = default;
};

/// How the note begins that holds for every plan and is no judgement of this one.
inline constexpr std::string_view kAlways = "Always: ";

/// How one figure came about, on request.
struct WorkingText {
  std::string key;  ///< Of the figure; empty when none is asked for.
  std::string title;
  std::string formula;               ///< In words and symbols; may be empty.
  std::vector<std::string> numbers;  ///< The same with the numbers put in.
  std::string result;                ///< With its unit.
  std::string source;
  friend bool operator==(const WorkingText&, const WorkingText&) = default;
};

/// A figure to watch in a step: what it was and what it is now, each with its unit.
struct WatchedText {
  std::string label;
  std::string before;  ///< Empty in a first step.
  std::string after;
  friend bool operator==(const WatchedText&, const WatchedText&) = default;
};

/// The step of a lesson under way.
struct LessonText {
  std::string title;  ///< Of the lesson and its aim; empty when none is under way.
  std::string step;   ///< "2 of 5: The same area, fewer pixels"
  std::string words;
  std::vector<WatchedText> figures;  ///< Of the plan on the screen against the step before.
  WorkingText working;               ///< Of the figure the step is about.
  std::string control;  ///< The one to move; drawn in the lesson, not in its own section.
  friend bool operator==(const LessonText&, const LessonText&) = default;
};

/// Something drawn that can be pressed and is no control, and each verdict: an entry of an open
/// list, a mark of the rail, a ranked format.
struct Place {
  std::string id;  ///< "entry:VALUE", "rail:SECTION", "verdict:SECTION",
                   ///< "format:CAMERA/MODE/RECORDING/CODEC"
  RectPx rect;
};

/// The whole state for the page, in reading order.
struct Mirror {
  std::vector<Section> sections;
  std::vector<Control> controls;
  std::vector<ResultRow> headline;  ///< The three numbers that are always in sight.
  std::vector<ResultRow> results;
  WorkingText working;  ///< Of the figure a person asked about; Ui::show_working().
  LessonText lesson;
  std::string message;           ///< What the program has to say (a damaged link), or empty.
  std::string live;              ///< What has just changed, for a polite live region.
  std::string title;             ///< Of the plan, for the page's title.
  std::vector<Place> places;     ///< In the last frame, as far as they were in sight.
  std::vector<RectPx> surfaces;  ///< Drawings that take a finger's drag and pinch themselves.

  /// The control with this id, or nullptr.
  [[nodiscard]] const Control* find(std::string_view id) const;
};

}  // namespace widegate
