#include "web/view/screen_controls.h"

#include <algorithm>
#include <array>
#include <string>
#include <utility>

#include "web/view/answer_controls.h"
#include "web/view/choice_search.h"
#include "web/view/comparison.h"
#include "web/view/delivery.h"
#include "web/view/frame_lines.h"
#include "web/view/kept_plan_controls.h"
#include "web/view/library_controls.h"
#include "web/view/picture_controls.h"
#include "web/view/plan_controls.h"
#include "web/view/ranking_controls.h"
#include "web/view/sections.h"
#include "web/view/see_rows.h"
#include "web/view/show.h"
#include "web/view/start_controls.h"

namespace widegate {
namespace {

constexpr auto kThemes = std::to_array<std::pair<ThemeChoice, std::string_view>>({
    {ThemeChoice::system, "system"},
    {ThemeChoice::dark, "dark"},
    {ThemeChoice::light, "light"},
    {ThemeChoice::sunlight, "sunlight"},
});
constexpr std::array<std::string_view, 4> kThemeLabels = {"As the device", "Dark", "Light",
                                                          "Sunlight"};

/// What the makers of single controls need.
struct Source {
  const App& app;
  const PanelState& state;
  const RankingRows& ranking;
};

Control named(std::string_view id, ControlKind kind, std::string_view section,
              std::string_view label) {
  Control control;
  control.id = id;
  control.kind = kind;
  control.section = section;
  control.label = label;
  return control;
}

void set_flag(Control& control, bool on) {
  control.value = on ? 1 : 0;
  control.edit_text = on ? "true" : "false";
  control.value_text = on ? "yes" : "no";
}

Control theme_control(const Source& source) {
  Control control = named(kTheme, ControlKind::choice, "plan", "Colours");
  control.edit_text = theme_key(source.state.theme);
  for (std::size_t i = 0; i < kThemes.size(); ++i) {
    control.choices.push_back({std::string(kThemes[i].second), std::string(kThemeLabels[i]), {}});
    if (kThemes[i].first == source.state.theme) control.value_text = kThemeLabels[i];
  }
  return control;
}

Control large_control(const Source& source) {
  Control control = named(kLargeType, ControlKind::flag, "plan", "Large type, for a wall");
  set_flag(control, source.state.large_type);
  return control;
}

/// The whole ranking as one choice for the page; the canvas draws it as rows of its own too.
Control format_control(const Source& source) {
  Control control = named(kFormat, ControlKind::choice, "choose", "Formats by rank");
  control.enabled = !source.ranking.rows.empty();
  control.help = source.ranking.lead;
  for (const std::string& words : source.ranking.binding) control.help += " " + words + ".";
  for (const RankingRow& row : source.ranking.rows) {
    const std::string_view mark = row.accepted ? "passes: " : "rejected: ";
    control.choices.push_back(
        {row.id, row.title + " · " + row.detail, std::string(mark) + row.words});
    if (!row.chosen) continue;
    control.edit_text = row.id;
    control.value_text = row.title + " · " + row.detail;
  }
  return control;
}

/// Every section by name: the marks along the edge lead to the questions only.
Control go_to_control() {
  Control control = named(kGoTo, ControlKind::choice, "plan", "Go to");
  control.choices.push_back({"", "Where I was", {}});
  for (const Panel& panel : panels()) {
    if (panel.id == kStartSection) continue;
    control.choices.push_back(
        {std::string(panel.id), std::string(panel.title), std::string(panel.question)});
  }
  return control;
}

Control lesson_control(const Source& source) {
  Control control = named(kLesson, ControlKind::choice, "lesson", "Lesson");
  control.edit_text = source.state.lesson;
  control.value_text = "None";
  control.choices.push_back({"", "None", ""});
  for (const LessonHead& lesson : source.state.lesson_heads) {
    control.choices.push_back({lesson.id, lesson.title, lesson.aim});
    if (lesson.id == source.state.lesson) control.value_text = lesson.title;
  }
  return control;
}

/// Steps of the lesson under way; 0 for none.
std::size_t lesson_steps(const PanelState& state) {
  return state.lesson_shown ? state.lesson_shown->lesson.steps.size() : 0;
}

/// A button: its words, and when it can be pressed.
struct ButtonRow {
  std::string_view id;
  std::string_view section;
  std::string_view label;
  bool (*enabled)(const Source&);
};
bool always(const Source&) { return true; }
bool in_lesson(const Source& source) { return !source.state.lesson.empty(); }
bool worked_out(const Source& source) { return source.app.report().problems.empty(); }

constexpr auto kButtons = std::to_array<ButtonRow>({
    {kUndo, "plan", "Undo", [](const Source& s) { return s.app.can_undo(); }},
    {kRedo, "plan", "Redo", [](const Source& s) { return s.app.can_redo(); }},
    {kStartAfresh, "plan", "Start afresh",
     [](const Source& s) { return s.app.plan() != s.app.first(); }},
    {kNewCommission, "resolve", "Write down a commission of your own",
     [](const Source& s) { return s.state.rest == RestOfProgram::here; }},
    {kCopyLink, "handover", "Copy the link", always},
    {kShareLink, "handover", "Share the link", always},
    {kShowQr, "handover", "Show the QR code", always},
    {kPrintSheet, "handover", "Print the sheet", worked_out},
    {kPrintWorkings, "handover", "Print sheet and workings", worked_out},
    {kSavePlan, "handover", "Save the plan as a file", always},
    {kOpenPlan, "handover", "Open a plan from a file", always},
    {kSaveRanking, "handover", "Save the ranking as a table", worked_out},
    {kSaveStorage, "handover", "Save the storage plan as a table", worked_out},
    {kSaveCover, "handover", "Save the lens cover as a table",
     [](const Source& s) { return !s.app.report().cover.lens_set.empty(); }},
    {kSaveChart, "handover", "Save the frame-line chart as SVG", worked_out},
    {kSaveChartPng, "handover", "Save the frame-line chart as PNG", worked_out},
    {kSaveFraming, "handover", "Save the framing for post", worked_out},
    {kLessonNext, "lesson", "Next step",
     [](const Source& s) { return s.state.lesson_step + 1 < lesson_steps(s.state); }},
    {kLessonBack, "lesson", "Step back",
     [](const Source& s) { return lesson_steps(s.state) > 0 && s.state.lesson_step > 0; }},
    {kLessonLeave, "lesson", "Leave the lesson", in_lesson},
    {kLessonOpen, "lesson", "Open a lesson from a file", always},
    {kLessonSave, "lesson", "Save the lesson as a file", in_lesson},
    {kLessonLink, "lesson", "Copy the link to this step", in_lesson},
    {kLessonQr, "lesson", "Show the QR code of this step", in_lesson},
    {kLessonPrint, "lesson", "Print the handout", in_lesson},
});

Control button_control(const Source& source, const ButtonRow& row) {
  Control control = named(row.id, ControlKind::action, row.section, row.label);
  control.enabled = row.enabled(source);
  return control;
}

/// The control with an id that is no field of the plan.
Control screen_control(const Source& source, std::string_view id) {
  if (id == kTheme) return theme_control(source);
  if (id == kLargeType) return large_control(source);
  if (auto control = picture_control(id, source.app, source.state)) return *control;
  if (id == kSameView) return same_view_control(source.app, source.state.same_view_camera);
  if (id == kFormat) return format_control(source);
  if (id == kLesson) return lesson_control(source);
  if (id.starts_with(kShelfPrefix)) return shelf_control(id, source.app, source.state);
  for (const ButtonRow& row : kButtons) {
    if (row.id == id) return button_control(source, row);
  }
  return {};
}

}  // namespace

std::vector<Control> make_controls(const App& app, const PanelState& state,
                                   const RankingRows& ranking, std::span<const Answer> answers) {
  const Source source{app, state, ranking};
  std::vector<Control> controls;
  controls.push_back(screen_control(source, kUndo));
  controls.push_back(screen_control(source, kRedo));
  controls.push_back(go_to_control());
  controls.push_back(screen_control(source, kPicture));
  const std::size_t line = picked_line(app.plan(), state);
  for (const Panel& panel : panels()) {
    if (!is_here(panel, state.rest)) continue;
    for (const PanelField& field : panel.fields) {
      if (field.wanted != nullptr && !field.wanted(app.plan(), line)) continue;
      controls.push_back(make_control(app, panel, field, line));
    }
    for (const std::string_view id : panel.extra_controls) {
      controls.push_back(screen_control(source, id));
    }
    for (Control& control : answer_controls(panel, answers)) controls.push_back(std::move(control));
    std::vector<Control> more;
    if (panel.id == kStartSection && shows_start(state)) more = start_controls(state);
    if (panel.id == kDeliverySection) more = delivery_controls(app, state.delivery);
    if (panel.id == kCompareSection) more = comparison_controls(app, state.comparison);
    if (panel.id == "frame") more = frame_line_controls(app, state);
    if (panel.id == "choose") more = ranking_controls(app, state, ranking);
    if (panel.id == "library") more = library_controls(app, state);
    if (panel.id == kShowSection) more = show_controls(app, state);
    for (Control& control : more) controls.push_back(std::move(control));
  }
  const auto open = std::find_if(controls.begin(), controls.end(), [&state](const Control& each) {
    return each.id == state.open_choice && is_long(each);
  });
  if (open != controls.end()) controls.push_back(search_control(*open, state));
  return controls;
}

std::string_view theme_key(ThemeChoice theme) {
  for (const auto& [choice, key] : kThemes) {
    if (choice == theme) return key;
  }
  return kThemes.front().second;
}

ThemeChoice theme_from_key(std::string_view key) {
  for (const auto& [choice, name] : kThemes) {
    if (name == key) return choice;
  }
  return ThemeChoice::system;
}

}  // namespace widegate
