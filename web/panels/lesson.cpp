// A prepared lesson for a class: what the step says, the working of its figure, the way on. The
// plan of the step is there to be played with.
#include <array>

#include "web/actions.h"
#include "web/draw_context.h"
#include "web/panels/list.h"
#include "web/widgets/parts.h"
#include "web/widgets/working.h"

namespace widegate {
namespace {

void draw_step(DrawContext& context) {
  const LessonText& lesson = context.view.mirror.lesson;
  if (lesson.title.empty()) return;
  const Palette& colour = context.theme.colour;
  draw_paragraph(context, TextStyle::strong, colour.accent, lesson.title, 1);
  draw_paragraph(context, TextStyle::title, colour.text, lesson.step, 2);
  draw_paragraph(context, TextStyle::body, colour.text, lesson.words, 4);
  if (!lesson.working.title.empty()) {
    draw_paragraph(context, TextStyle::strong, colour.text, lesson.working.title, 1);
    draw_working(context, lesson.working);
  }
  take_space(context, 2);
}

}  // namespace

Panel lesson_panel() {
  static constexpr auto kActions =
      std::to_array<std::string_view>({kLesson, kLessonNext, kLessonBack, kLessonLeave});
  return {.id = "lesson",
          .title = "Lessons",
          .question = "Prepared steps for a class; every step can be played with.",
          .has_verdict = false,
          .extra_controls = kActions,
          .draw_first = draw_step};
}

}  // namespace widegate
