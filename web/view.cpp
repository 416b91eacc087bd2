#include "web/view.h"

#include <algorithm>
#include <array>
#include <utility>

#include "core/notes.h"
#include "core/readings.h"
#include "core/verdict.h"
#include "web/controls.h"
#include "web/panels/list.h"

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

std::string severity_word(Severity severity) {
  switch (severity) {
    case Severity::ok:
      return "Fine: ";
    case Severity::caution:
      return "Caution: ";
    case Severity::fail:
      return "Fails: ";
  }
  return {};
}

Section make_section(const App& app, const Panel& panel) {
  Section section;
  section.id = panel.id;
  section.title = panel.title;
  section.question = panel.question;
  section.has_verdict = panel.has_verdict;
  if (!panel.has_verdict) return section;
  Verdict words = verdict(app.plan(), app.report(), panel.topic);
  section.severity = words.severity;
  section.verdict = std::move(words.text);
  for (const Note& note : app.report().notes) {
    if (topic_question(note.topic) != panel.topic) continue;
    section.notes.push_back(severity_word(note.severity) + note_text(note));
  }
  return section;
}

ResultRow result_row(Reading& figure) {
  return {.section = std::string(figure.section),
          .key = std::string(figure.key),
          .label = std::string(figure.label),
          .value_text = std::move(figure.text),
          .unit = std::string(figure.unit),
          .main = figure.main};
}

Control action(std::string_view id, std::string_view section, std::string_view label,
               bool enabled) {
  Control control;
  control.id = id;
  control.kind = ControlKind::action;
  control.section = section;
  control.label = label;
  control.enabled = enabled;
  return control;
}

Control theme_control(const PanelState& state) {
  Control control = action(kTheme, "plan", "Colours", true);
  control.kind = ControlKind::choice;
  control.edit_text = theme_key(state.theme);
  for (std::size_t i = 0; i < kThemes.size(); ++i) {
    control.choices.push_back({std::string(kThemes[i].second), std::string(kThemeLabels[i]), {}});
    if (kThemes[i].first == state.theme) control.value_text = kThemeLabels[i];
  }
  return control;
}

Control desqueeze_control(const App& app, const PanelState& state) {
  Control control = action(kDesqueeze, "plan", "Picture de-squeezed", true);
  control.kind = ControlKind::flag;
  control.value = state.picture.desqueezed ? 1 : 0;
  control.edit_text = state.picture.desqueezed ? "true" : "false";
  control.value_text = state.picture.desqueezed ? "yes" : "no";
  control.enabled = app.report().problems.empty() && app.report().mode.squeeze > 1;
  return control;
}

/// The whole ranking as one choice for the page; the canvas draws it as rows of its own.
Control format_control(const RankingRows& ranking) {
  Control control = action(kFormat, "choose", "Format by rank", !ranking.rows.empty());
  control.kind = ControlKind::choice;
  for (const RankingRow& row : ranking.rows) {
    const std::string_view mark = row.accepted ? "passes: " : "rejected: ";
    control.choices.push_back(
        {row.id, row.title + " · " + row.detail, std::string(mark) + row.words});
    if (!row.chosen) continue;
    control.edit_text = row.id;
    control.value_text = row.title + " · " + row.detail;
  }
  return control;
}

void add_controls(Mirror& mirror, const App& app, const PanelState& state) {
  mirror.controls.push_back(action(kUndo, "plan", "Undo", app.can_undo()));
  mirror.controls.push_back(action(kRedo, "plan", "Redo", app.can_redo()));
  for (const Panel& panel : panels()) {
    for (const PanelField& field : panel.fields) {
      if (field.wanted != nullptr && !field.wanted(app.plan())) continue;
      mirror.controls.push_back(make_control(app, panel, field));
    }
  }
  mirror.controls.push_back(desqueeze_control(app, state));
  mirror.controls.push_back(theme_control(state));
  mirror.controls.push_back(action(kStartAfresh, "plan", "Start afresh", app.plan() != Plan{}));
}

std::string live_words(const Mirror& mirror) {
  std::string text;
  for (const ResultRow& row : mirror.headline) {
    if (!text.empty()) text += ", ";
    text += row.label + " " + row.value_text + " " + row.unit;
  }
  for (const Section& section : mirror.sections) {
    if (section.severity == Severity::fail && section.has_verdict) text += ". " + section.verdict;
  }
  return text;
}

Mirror make_mirror(const App& app, const PanelState& state, const RankingRows& ranking) {
  Mirror mirror;
  for (const Panel& panel : panels()) mirror.sections.push_back(make_section(app, panel));
  add_controls(mirror, app, state);
  mirror.controls.push_back(format_control(ranking));
  for (Reading& figure : headline_readings(app.report())) {
    mirror.headline.push_back(result_row(figure));
  }
  for (Reading& figure : readings(app.plan(), app.report())) {
    mirror.results.push_back(result_row(figure));
  }
  mirror.title = app.plan().title;
  const Problems& problems = app.report().problems;
  mirror.live = problems.empty()
                    ? live_words(mirror)
                    : "This plan cannot be worked out: expected " + problems.front().accepted;
  return mirror;
}

}  // namespace

Control* View::find(std::string_view id) {
  for (Control& control : mirror.controls) {
    if (control.id == id) return &control;
  }
  return nullptr;
}

void rebuild(View& view, const App& app, const PanelState& state) {
  RankingRows ranking = ranking_rows(app);
  Mirror next = make_mirror(app, state, ranking);
  for (Control& control : next.controls) {
    if (const Control* before = view.mirror.find(control.id)) {
      control.rect = before->rect;
      control.visible = before->visible;
    }
  }
  next.surfaces = std::move(view.mirror.surfaces);
  view.mirror = std::move(next);
  view.picture = picture_data(app);
  view.ranking = std::move(ranking);
  ++view.version;
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
