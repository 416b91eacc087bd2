// A prepared lesson for a class: what the step says, the way on, the control to move and the
// working of its figure. The plan of the step is there to be played with.
#include <array>

#include "web/draw/widgets/control_row.h"
#include "web/draw/widgets/draw_context.h"
#include "web/draw/widgets/parts.h"
#include "web/draw/widgets/working.h"
#include "web/view/screen_controls.h"
#include "web/view/sections.h"

namespace widegate {
namespace {

bool under_way(const PanelState& state) { return !state.lesson.empty(); }

/// Back and on, side by side: always at the same place, so a thumb can stay there.
void draw_ways(DrawContext& context) {
  RectPx row = take_row(context.theme.touch());
  const float gap = context.theme.space(2);
  row.width = (row.width - gap) / 2;
  for (const std::string_view id : {kLessonBack, kLessonNext}) {
    Control* control = context.view.find(id);
    if (control == nullptr) continue;
    ImGui::PushID(id.data(), id.data() + id.size());
    draw_button(context, *control, row);
    ImGui::PopID();
    row.x = right(row) + gap;
  }
  take_space(context, 3);
}

/// What the figures were and are: the answer of the step, beside the control that moves them.
void draw_figures(DrawContext& context, const std::vector<WatchedText>& figures) {
  const Theme& theme = context.theme;
  for (const WatchedText& figure : figures) {
    const bool same = figure.before == figure.after;
    std::string line = figure.label + ": ";
    if (!figure.before.empty() && !same) line += figure.before + " → ";
    line += figure.after + (same ? ", the same" : "");
    const TextStyle style = theme.for_reading(same ? TextStyle::body : TextStyle::strong);
    draw_paragraph(context, style, same ? theme.colour.quiet : theme.colour.text, line, 1);
  }
  take_space(context, 2);
}

void draw_step(DrawContext& context) {
  const LessonText& lesson = context.view.mirror.lesson;
  const Palette& colour = context.theme.colour;
  const Theme& theme = context.theme;
  draw_paragraph(context, TextStyle::strong, colour.accent, lesson.title, 1);
  draw_paragraph(context, theme.for_reading(TextStyle::title), colour.text, lesson.step, 2);
  draw_paragraph(context, theme.for_reading(TextStyle::body), colour.text, lesson.words, 3);
  draw_ways(context);
  draw_control(context, lesson.control);
  draw_figures(context, lesson.figures);
  if (!lesson.working.title.empty()) {
    draw_paragraph(context, theme.for_reading(TextStyle::strong), colour.text, lesson.working.title,
                   1);
    draw_working(context, lesson.working);
  }
  take_space(context, 2);
}

/// Choosing another lesson comes last while one is under way.
void draw_lesson(DrawContext& context) {
  const bool running = under_way(context.state);
  if (running) draw_step(context);
  draw_control(context, kLesson);
  draw_control(context, kLessonOpen);
  if (!running) return;
  for (const std::string_view id :
       {kLessonLink, kLessonQr, kLessonPrint, kLessonSave, kLessonLeave}) {
    draw_control(context, id);
  }
}

}  // namespace

Panel lesson_panel() {
  static constexpr auto kActions =
      std::to_array<std::string_view>({kLesson, kLessonNext, kLessonBack, kLessonOpen, kLessonLink,
                                       kLessonQr, kLessonPrint, kLessonSave, kLessonLeave});
  return {.id = "lesson",
          .title = "Lessons",
          .question = "Prepared steps for a class; every step can be played with.",
          .has_verdict = false,
          .extra_controls = kActions,
          .draw_first = draw_lesson,
          .comes_later = true,
          .draws_itself = true,
          .heads_itself = under_way};
}

}  // namespace widegate
