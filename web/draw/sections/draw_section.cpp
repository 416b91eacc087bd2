#include "web/draw/sections/draw_section.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "core/plan/frame_line_pointer.h"
#include "web/draw/widgets/answer.h"
#include "web/draw/widgets/control_row.h"
#include "web/draw/widgets/message.h"
#include "web/draw/widgets/parts.h"
#include "web/draw/widgets/working.h"
#include "web/view/answer_controls.h"
#include "web/view/frame_lines.h"
#include "web/view/sections.h"

namespace widegate {
namespace {

const Section* find_section(const View& view, std::string_view id) {
  for (const Section& section : view.mirror.sections) {
    if (section.id == id) return &section;
  }
  return nullptr;
}

void draw_heading(DrawContext& context, const Section& section) {
  const Paint paint = context.paint();
  const Palette& colour = context.theme.colour;
  const RectPx title = take_row(paint.line_height(TextStyle::title));
  context.state.anchor.row(section.id, title.y, title.height);
  paint.text(title, Align::left, TextStyle::title, colour.text, section.title);
  const float width = ImGui::GetContentRegionAvail().x;
  const RectPx row = take_row(paint.wrapped_height(TextStyle::body, section.question, width));
  paint.wrapped(row, TextStyle::body, colour.quiet, section.question);
  take_space(context, 3);
}

void draw_verdict(DrawContext& context, const Section& section) {
  if (!section.has_verdict) return;
  const Paint paint = context.paint();
  const Palette& colour = context.theme.colour;
  const float pad = context.theme.space(3);
  const float mark = 24 * context.theme.scale;
  const float left = pad + mark + context.theme.space(2.5F);
  const float width = ImGui::GetContentRegionAvail().x - left - pad;
  const float words = paint.wrapped_height(TextStyle::strong, section.verdict, width);
  const RectPx row = take_row(std::max(words, mark) + 2 * pad);
  note_place(context, "verdict", section.id, row);
  paint.fill(row, colour.panel, 12 * context.theme.scale);
  const float edge = context.theme.line_width;
  paint.outline(row, severity_colour(colour, section.severity), edge + 0.5F,
                12 * context.theme.scale);
  paint.mark(section.severity, {row.x + pad + mark / 2, centre(row).y}, mark);
  paint.wrapped({row.x + left, centre(row).y - words / 2, width, words}, TextStyle::strong,
                colour.text, section.verdict);
  take_space(context, 4);
}

void draw_figure(DrawContext& context, const ResultRow& figure) {
  const Paint paint = context.paint();
  const Palette& colour = context.theme.colour;
  const RectPx row =
      take_row(std::max(context.theme.touch() - 4 * context.theme.scale, 30 * context.theme.scale));
  context.state.anchor.row(figure.key, row.y, row.height);
  Press press;
  if (!figure.working.empty()) press = pressable(figure.key, row);
  if (press.held || press.hovered) paint.fill(inset(row, -2), colour.raised, 6);
  if (press.clicked) context.state.open_working = figure.working;
  const FigureWords words = figure_words(figure);
  const float unit =
      words.unit.empty() ? 0 : paint.width(TextStyle::caption, words.unit) + context.theme.space(1);
  const float value = std::min(row.width * 0.62F, paint.width(TextStyle::strong, words.number) + 1);
  const float onward = 14 * context.theme.scale;
  const float end = right(row) - onward;
  const float value_x = end - unit - value;
  paint.text({row.x, row.y, std::max(0.0F, value_x - row.x - context.theme.space(2)), row.height},
             Align::left, TextStyle::body, colour.quiet, figure.label);
  paint.text({value_x, row.y, value, row.height}, Align::right, TextStyle::strong, colour.text,
             words.number);
  paint.text({end - unit, row.y + 1, unit, row.height}, Align::right, TextStyle::caption,
             colour.quiet, words.unit);
  // It leads to how the figure comes about.
  if (!figure.working.empty()) {
    paint.icon(Icon::onward, {right(row) - onward / 3, centre(row).y}, 11 * context.theme.scale,
               colour.quiet);
  }
  paint.line({row.x, bottom(row)}, {right(row), bottom(row)}, colour.line, 1);
}

bool draw_figures(DrawContext& context, std::string_view section, bool main) {
  bool any = false;
  for (const ResultRow& figure : context.view.mirror.results) {
    if (figure.section != section || figure.main != main) continue;
    draw_figure(context, figure);
    any = true;
  }
  if (any) take_space(context, 3);
  return any;
}

/// Everything that is not plainly fine; the rest is under "More".
void draw_notes(DrawContext& context, const Section& section, bool fine) {
  const Paint paint = context.paint();
  const float mark = 15 * context.theme.scale;
  const float left = mark + context.theme.space(2);
  for (const std::string& note : section.notes) {
    if (note.starts_with(kAlways)) continue;
    const Severity severity = note.starts_with("Fine")      ? Severity::ok
                              : note.starts_with("Caution") ? Severity::caution
                                                            : Severity::fail;
    if ((severity == Severity::ok) != fine) continue;
    // A warning that can save somebody's footage is reading text.
    const TextStyle style = fine ? TextStyle::caption : TextStyle::body;
    const Palette& colour = context.theme.colour;
    const float width = ImGui::GetContentRegionAvail().x - left;
    const float words = paint.wrapped_height(style, note, width);
    const RectPx row = take_row(words + context.theme.space(2));
    paint.mark(severity, {row.x + mark / 2, row.y + paint.line_height(style) / 2}, mark);
    paint.wrapped({row.x + left, row.y, width, words}, style, fine ? colour.quiet : colour.text,
                  note);
  }
}

/// Every answer to the section's question.
void draw_answers(DrawContext& context, const Section& section) {
  // By index: drawing may note rectangles in the very list.
  for (Control& control : context.view.mirror.controls) {
    const bool answers = control.section == section.id && control.id.starts_with(kAnswerPrefix);
    if (answers) draw_answer(context, control);
  }
}

bool has_answers(const DrawContext& context, const Section& section) {
  return context.view.mirror.find(answer_id(section.id, 0)) != nullptr;
}

/// Whether what was set last is drawn in this section: then its answer stands beside it.
bool answers_beside_entry(const DrawContext& context, const Panel& panel) {
  const std::string& entry = context.state.entry;
  if (panel.draws_itself || entry.empty() || entry == context.view.mirror.lesson.control) {
    return false;
  }
  const std::size_t line = picked_line(context.app.plan(), context.state);
  return std::any_of(panel.fields.begin(), panel.fields.end(), [&](const PanelField& field) {
    return on_line(field.pointer, line) == entry && context.view.mirror.find(entry) != nullptr &&
           (!field.further || context.state.shows_more(panel.id));
  });
}

/// What the value that was just set comes to, where the thumb is.
void draw_reply(DrawContext& context, const Section& section) {
  if (!section.has_verdict) return;
  if (section.severity == Severity::ok && !has_answers(context, section)) return;
  draw_short_verdict(context, section);
  draw_answers(context, section);
  take_space(context, 2);
}

/// Whether the reply stands above what was set: in the lower half of the column what stands below
/// would be out of sight. What was set does not move for it.
bool replies_above(DrawContext& context, std::string_view entry) {
  PanelState& state = context.state;
  const Control* control = context.view.find(entry);
  if (state.typing || control == nullptr || !control->visible) return state.reply_above == true;
  if (!state.reply_above) {
    state.reply_above = centre(control->rect).y > centre(context.layout.column).y;
  }
  return *state.reply_above;
}

/// A control that the lesson shows is there only: it has one place, for the eye and for the page.
void draw_controls(DrawContext& context, const Panel& panel, const Section& section, bool further) {
  const std::size_t line = picked_line(context.app.plan(), context.state);
  for (const PanelField& field : panel.fields) {
    const std::string pointer = on_line(field.pointer, line);
    if (field.further != further || pointer == context.view.mirror.lesson.control) continue;
    const bool replies = pointer == context.state.entry;
    const bool above = replies && replies_above(context, pointer);
    if (above) draw_reply(context, section);
    draw_control(context, pointer);
    if (replies && !above) draw_reply(context, section);
  }
  if (further) return;
  for (const std::string_view id : panel.extra_controls) draw_usable(context, id);
}

/// Whether there is anything behind "More".
bool has_more(const DrawContext& context, const Panel& panel) {
  const auto hidden_field = [](const PanelField& field) { return field.further; };
  const auto hidden_figure = [&panel](const ResultRow& row) {
    return row.section == panel.id && !row.main;
  };
  return std::any_of(panel.fields.begin(), panel.fields.end(), hidden_field) ||
         std::any_of(context.view.mirror.results.begin(), context.view.mirror.results.end(),
                     hidden_figure);
}

void toggle_more(PanelState& state, std::string_view id) {
  if (state.shows_more(id)) {
    std::erase(state.open_more, id);
  } else {
    state.open_more.emplace_back(id);
  }
}

void draw_more(DrawContext& context, const Panel& panel, const Section& section) {
  const bool all_shown = panel.draws_itself;
  if (all_shown) draw_notes(context, section, true);
  if (all_shown || !has_more(context, panel)) return;
  const Paint paint = context.paint();
  const Palette& colour = context.theme.colour;
  const bool open = context.state.shows_more(panel.id);
  take_space(context, 1);
  const RectPx row = take_row(context.theme.touch());
  context.state.anchor.row("more of " + std::string(panel.id), row.y, row.height);
  const Press press = pressable("more of it", row);
  const float radius = 10 * context.theme.scale;
  if (press.held || press.hovered) paint.fill(row, surface(context.theme, press), radius);
  paint.outline(row, colour.line, context.theme.line_width, radius);
  paint.text(row, Align::centre, TextStyle::strong, colour.accent,
             open ? "Show less" : "Show more");
  if (press.clicked) toggle_more(context.state, panel.id);
  take_space(context, 3);
  if (!open) return;
  draw_controls(context, panel, section, true);
  draw_figures(context, panel.id, false);
  draw_notes(context, section, true);
}

/// Everything below the heading.
void draw_whole(DrawContext& context, const Panel& panel, const Section& section) {
  draw_verdict(context, section);
  if (!answers_beside_entry(context, panel)) draw_answers(context, section);
  if (panel.draws_itself) draw_notes(context, section, false);
  if (panel.draw_first != nullptr) panel.draw_first(context);
  if (!panel.draws_itself) {
    draw_controls(context, panel, section, false);
    draw_figures(context, panel.id, true);
  }
  if (panel.draw_extra != nullptr) panel.draw_extra(context);
  if (!panel.draws_itself) draw_notes(context, section, false);
  draw_more(context, panel, section);
}

/// Remembers the section at the top of the column, for the rail.
void note_current(DrawContext& context, const Panel& panel, float top, float low) {
  const float line = context.layout.column.y + context.layout.column.height * 0.3F;
  if (top <= line && low > line) context.state.current = panel.id;
}

void note_height(PanelState& state, const Panel& panel, float height) {
  for (PanelHeight& each : state.heights) {
    if (each.id != panel.id) continue;
    each.height = height;
    return;
  }
  state.heights.push_back({panel.id, height});
}

/// While something is dragged, what nobody sees keeps the height it had: the drag gets the time,
/// and nothing above the finger moves what lies under it. Drawn afresh when the drag ends.
bool rests_out_of_sight(DrawContext& context, const Panel& panel, float top) {
  PanelState& state = context.state;
  if (!state.drag || state.reveal_focus || !state.jump.empty()) return false;
  for (const PanelHeight& each : state.heights) {
    if (each.id != panel.id) continue;
    const RectPx& column = context.layout.column;
    if (top + each.height > column.y && top < bottom(column)) return false;
    static_cast<void>(take_row(each.height));
    note_current(context, panel, top, top + each.height);
    return true;
  }
  return false;
}

/// Brings the section that was asked for to the top of the column. What stands above gives way in
/// the next layout, and then there is a little more to go.
void follow_jump(DrawContext& context, float top) {
  const float away = top - context.layout.column.y;
  // Its answers stand at its verdict: what was set before is out of sight.
  context.state.entry.clear();
  const bool at_end = away > 0 && ImGui::GetScrollY() >= ImGui::GetScrollMaxY();
  // Asked for also where it is already: what was touched before is left behind.
  ImGui::SetScrollFromPosY(top - ImGui::GetWindowPos().y, 0);
  if (std::abs(away) < 1 || at_end) context.state.jump.clear();
}

/// The cautions that hold for every plan, at the foot.
void draw_standing(DrawContext& context) {
  for (const Section& section : context.view.mirror.sections) {
    for (const std::string& note : section.notes) {
      if (!note.starts_with(kAlways)) continue;
      take_space(context, 4);
      draw_paragraph(context, TextStyle::caption, context.theme.colour.quiet, note, 0);
    }
  }
}

/// The control a person is at, though no finger is on it.
std::string_view held_control(const PanelState& state) {
  if (state.typing) return state.typing->id;
  return state.drag ? state.drag->id : state.focus;
}

}  // namespace

void draw_panel(DrawContext& context, const Panel& panel) {
  const Section* section = find_section(context.view, panel.id);
  if (section == nullptr) return;
  const float top = ImGui::GetCursorScreenPos().y;
  if (rests_out_of_sight(context, panel, top)) return;
  if (context.state.jump == panel.id) follow_jump(context, top);
  context.state.anchor.section(panel.id);
  ImGui::PushID(panel.id.data(), panel.id.data() + panel.id.size());
  take_space(context, 5);
  if (panel.heads_itself == nullptr || !panel.heads_itself(context.state)) {
    draw_heading(context, *section);
  }
  if (is_here(panel, context.state.rest)) {
    draw_whole(context, panel, *section);
  } else {
    draw_paragraph(context, TextStyle::body, context.theme.colour.text,
                   rest_words(context.state.rest), 1);
  }
  take_space(context, 5);
  ImGui::PopID();
  const float low = ImGui::GetCursorScreenPos().y;
  note_current(context, panel, top, low);
  note_height(context.state, panel, low - top);
  const RectPx& column = context.layout.column;
  context.paint().line({column.x, low}, {right(column), low}, context.theme.colour.line,
                       context.theme.line_width);
}

void draw_column(DrawContext& context) {
  const RectPx& box = context.layout.column;
  PanelState& state = context.state;
  ImGui::SetCursorScreenPos({box.x, box.y});
  note_place(context, "column", "questions", box);
  const float side = context.theme.space(4);
  const RectPx& screen = context.layout.screen;
  state.anchor.begin(box, {screen.width, screen.height, context.theme.scale, bottom(box)},
                     context.layout.collapsed);
  ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {side, 0});
  ImGui::BeginChild("column", {std::max(1.0F, box.width), std::max(1.0F, box.height)},
                    ImGuiChildFlags_AlwaysUseWindowPadding,
                    ImGuiWindowFlags_NoBackground |
                        // A finger drags the column itself; a bar would only take from its width.
                        (context.theme.coarse ? ImGuiWindowFlags_NoScrollbar : 0));
  ImGui::PopStyleVar();
  state.anchor.enter();
  // A lesson under way stands above everything it talks about.
  const Panel* lesson = context.state.lesson.empty() ? nullptr : find_panel("lesson");
  if (lesson != nullptr) draw_panel(context, *lesson);
  for (const Panel& panel : panels()) {
    if (&panel != lesson) draw_panel(context, panel);
  }
  draw_standing(context);
  take_space(context, 10);
  static_cast<void>(take_row(std::max(1.0F, message_room(context))));
  state.anchor.leave(held_control(state));
  ImGui::EndChild();
}

void open_for(PanelState& state, const Control& control) {
  if (control.further && !state.shows_more(control.section)) {
    state.open_more.push_back(control.section);
  }
}

}  // namespace widegate
