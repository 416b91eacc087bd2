#include "web/view/view.h"

#include <algorithm>
#include <array>
#include <cstdint>
#include <utility>

#include "core/base/number_text.h"
#include "core/lesson/lesson_run.h"
#include "core/report/figure_text.h"
#include "core/report/notes.h"
#include "core/report/requirement_lines.h"
#include "core/report/told_figure.h"
#include "core/report/verdict.h"
#include "core/report/working.h"
#include "web/view/delivery.h"
#include "web/view/frame_lines.h"
#include "web/view/kept_plan_controls.h"
#include "web/view/screen_controls.h"
#include "web/view/sections.h"
#include "web/view/see_rows.h"
#include "web/view/start_controls.h"

namespace widegate {
namespace {

/// The last section: what holds for every plan stands below all others.
constexpr std::string_view kFootSection = "plan";

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

/// What is asked of the plan's own format, line by line.
void add_requirements(Section& section, const Report& report) {
  for (const RequirementLine& line : requirement_lines(report)) {
    section.notes.push_back(severity_word(line.severity) + line.label + " " + line.text);
  }
}

/// What the device does with what it is given, while that is not as it should be.
void add_memory_notes(Section& section, const MemoryState& memory) {
  if (memory.refused) section.notes.push_back("Caution: " + std::string(kKeepsNothing));
  if (memory.set_aside) {
    section.notes.emplace_back(
        "Caution: something kept on this device could not be read and lies aside, whole. It can be "
        "saved as a file.");
  }
}

Section make_section(const App& app, const Panel& panel, const PanelState& state) {
  const RestOfProgram rest = state.rest;
  Section section;
  section.id = panel.id;
  section.title = panel.title;
  section.question = panel.question;
  if (!is_here(panel, rest)) {
    section.notes.emplace_back(rest_words(rest));
    return section;
  }
  section.has_verdict = panel.has_verdict;
  if (panel.id == kFootSection) {
    std::string standing = standing_text(app.report().notes);
    if (!standing.empty()) section.notes.push_back(std::string(kAlways) + standing);
    add_memory_notes(section, state.memory);
  }
  if (!panel.has_verdict) return section;
  Verdict words = verdict(app.plan(), app.report(), panel.topic);
  section.severity = words.severity;
  section.verdict = std::move(words.text);
  for (const Note& note : app.report().notes) {
    if (topic_question(note.topic) != panel.topic || topic_standing(note.topic)) continue;
    section.notes.push_back(severity_word(note.severity) + note_text(note));
  }
  if (panel.topic == Question::choose) add_requirements(section, app.report());
  return section;
}

ResultRow result_row(Reading& figure) {
  return {.section = std::string(figure.section),
          .key = std::string(figure.key),
          .label = std::string(figure.label),
          .value_text = std::move(figure.text),
          .unit = std::string(figure.unit),
          .working = std::string(working_key(figure.key)),
          .main = figure.main};
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

WorkingText working_text(const App& app, std::string_view key) {
  WorkingText text;
  if (key.empty() || !app.report().problems.empty()) return text;
  auto working = working_of(app.report(), key);
  if (!working) return text;
  text.key = key;
  text.title = std::move(working->title);
  text.formula = std::move(working->formula);
  if (!working->symbols.empty()) text.numbers.push_back(std::move(working->symbols));
  for (std::string& line : working->substituted) text.numbers.push_back(std::move(line));
  for (const std::string& step : working->because) text.numbers.push_back("because " + step);
  for (const std::string& each : working->told) {
    text.result += (text.result.empty() ? "" : "–") + each;
  }
  text.source = std::move(working->source);
  return text;
}

/// The result as it is read everywhere else; all its digits stand above it.
void round_result(WorkingText& text, const Mirror& mirror) {
  const auto same = [&text](const ResultRow& row) {
    return row.working == text.key && !row.working.empty();
  };
  const ResultRow* row = nullptr;
  for (const std::vector<ResultRow>* rows : {&mirror.results, &mirror.headline}) {
    const auto found = std::find_if(rows->begin(), rows->end(), same);
    if (row == nullptr && found != rows->end()) row = &*found;
  }
  // A pair of numbers is not this one number.
  if (row == nullptr || !parse_decimal(row->value_text)) return;
  const std::string rounded =
      row->value_text + (row->unit.empty() || row->unit == "°" ? "" : " ") + row->unit;
  if (rounded == text.result) return;
  text.numbers.push_back("= " + text.result);
  text.result = rounded;
}

LessonText lesson_text(const App& app, const PanelState& state, const Mirror& mirror) {
  LessonText text;
  if (!state.lesson_shown || state.lesson_step >= state.lesson_shown->run.steps.size()) return text;
  const Lesson& lesson = state.lesson_shown->lesson;
  const LessonRun& run = state.lesson_shown->run;
  const LessonStep& step = lesson.steps[state.lesson_step];
  const StepRun& told = run.steps[state.lesson_step];
  text.title = lesson.title;
  text.step = std::to_string(state.lesson_step + 1) + " of " + std::to_string(run.steps.size()) +
              ": " + told.title;
  text.words = told.words;
  for (const WatchedFigure& figure : told.figures) {
    const auto now = told_figure(app.plan(), app.report(), figure.key);
    text.figures.push_back(
        {figure.label, figure.before, now ? with_unit(now->text, now->unit) : "–"});
  }
  text.working = working_text(app, step.figures.front().key);
  round_result(text.working, mirror);
  text.control = step.control;
  return text;
}

/// Every figure; the section about frame lines has those of the line whose fields it shows.
void add_figures(Mirror& mirror, const App& app, const PanelState& state) {
  const std::size_t line = picked_line(app.plan(), state);
  std::vector<Reading> figures = readings(app.plan(), app.report());
  if (line > 0 && line < app.report().frames.size()) {
    Report about = app.report();
    std::swap(about.frames.front(), about.frames[line]);
    const auto of_line = readings(app.plan(), about);
    for (std::size_t i = 0; i < figures.size() && i < of_line.size(); ++i) {
      if (figures[i].section == "frame" && of_line[i].key == figures[i].key)
        figures[i] = of_line[i];
    }
  }
  for (Reading& figure : figures) mirror.results.push_back(result_row(figure));
}

/// What the section adds that comes from no report.
void add_delivery(Mirror& mirror, const std::optional<fdl::Delivery>& delivery,
                  const PanelState& state) {
  for (ResultRow& row : delivery_rows(delivery)) mirror.results.push_back(std::move(row));
  for (Section& section : mirror.sections) {
    if (section.id == kDeliverySection) section.notes = delivery_notes(delivery, state.delivery);
  }
}

/// What the section of the show adds, which is of no one plan.
void add_show(Mirror& mirror, const ShowView& view, const PanelState& state) {
  for (ResultRow& row : show_rows(view)) mirror.results.push_back(std::move(row));
  for (Section& section : mirror.sections) {
    if (section.id == kShowSection) section.notes = show_notes_of(state);
  }
}

/// What the selected outline of the drawing says; empty for none.
std::string_view selected_words(const PictureData& picture, const PictureState& state) {
  for (const Outline& outline : picture.outlines) {
    if (outline.key == state.selected) return outline.reading;
  }
  return {};
}

Mirror make_mirror(const App& app, const PanelState& state, const View& view) {
  Mirror mirror;
  for (const Panel& panel : panels()) {
    if (panel.id == kStartSection && !shows_start(state)) continue;
    mirror.sections.push_back(make_section(app, panel, state));
  }
  mirror.controls = make_controls(app, state, view.ranking, view.answers);
  for (Reading& figure : headline_readings(app.report())) {
    mirror.headline.push_back(result_row(figure));
  }
  add_figures(mirror, app, state);
  for (ResultRow& row : lens_cover_rows(app.report())) mirror.results.push_back(std::move(row));
  for (ResultRow& row : same_view_rows(app, state.same_view_camera)) {
    mirror.results.push_back(std::move(row));
  }
  if (state.rest == RestOfProgram::here) {
    mirror.working = working_text(app, state.open_working);
    round_result(mirror.working, mirror);
  }
  mirror.lesson = lesson_text(app, state, mirror);
  mirror.message = state.message;
  mirror.title = app.plan().title;
  const Problems& problems = app.report().problems;
  if (!mirror.message.empty()) {
    mirror.live = mirror.message;
  } else {
    const std::string_view selected = selected_words(view.picture, state.picture);
    mirror.live = !selected.empty() ? std::string(selected)
                  : problems.empty()
                      ? live_words(mirror)
                      : "This plan cannot be worked out: expected " + problems.front().accepted;
  }
  return mirror;
}

/// Controls stay where they were drawn until they are drawn again. Nearly always the list is as
/// long as it was, and each control at its old place in it.
void keep_rects(std::vector<Control>& controls, const Mirror& before) {
  for (std::size_t i = 0; i < controls.size(); ++i) {
    Control& control = controls[i];
    const bool same_place = i < before.controls.size() && before.controls[i].id == control.id;
    const Control* found = same_place ? &before.controls[i] : before.find(control.id);
    if (found == nullptr) continue;
    control.rect = found->rect;
    control.visible = found->visible;
  }
}

}  // namespace

bool delivers_now(const PanelState& state) {
  return !state.drag || state.current == kDeliverySection;
}

bool ranks_now(const PanelState& state) { return !state.drag || state.current == "choose"; }

Control* View::find(std::string_view id) {
  for (Control& control : mirror.controls) {
    if (control.id == id) return &control;
  }
  return nullptr;
}

void rebuild(View& view, const App& app, const PanelState& state) {
  const bool whole = state.rest == RestOfProgram::here;
  // Ranking takes longer than everything else: while something is dragged only whoever looks at it
  // sees it move.
  if (whole && ranks_now(state)) {
    view.ranking = ranking_rows(app, state);
  }
  // During a drag they stay as they were: nothing comes or goes under the finger.
  if (whole && !state.drag && view.answers_revision != app.revision()) {
    view.answers = answers(app.plan(), app.report(), app.library());
    view.answers_revision = app.revision();
  }
  if (whole && delivers_now(state)) view.delivery = make_delivery(app, state.delivery);
  view.picture = picture_data(app);
  if (whole) view.comparison = make_comparison(app, state.comparison);
  if (whole) view.show = show_view(state);
  Mirror next = make_mirror(app, state, view);
  if (whole) {
    add_delivery(next, view.delivery, state);
    for (ResultRow& row : comparison_rows(view.comparison)) next.results.push_back(std::move(row));
    add_show(next, view.show, state);
  }
  keep_rects(next.controls, view.mirror);
  next.surfaces = std::move(view.mirror.surfaces);
  next.places = std::move(view.mirror.places);
  view.mirror = std::move(next);
  ++view.version;
}

}  // namespace widegate
