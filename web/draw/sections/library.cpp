// Equipment of one's own: the list of it, or the form under way, from the controls of the view.
#include <algorithm>

#include "web/draw/widgets/control_row.h"
#include "web/draw/widgets/draw_context.h"
#include "web/draw/widgets/parts.h"
#include "web/draw/widgets/working.h"
#include "web/view/sections.h"

namespace widegate {
namespace {

constexpr float kFieldShare = 0.44F;

/// The lines of a text, each a paragraph.
void draw_lines(DrawContext& context, std::string_view text) {
  while (!text.empty()) {
    const auto end = std::min(text.find('\n'), text.size());
    draw_paragraph(context, TextStyle::body, context.theme.colour.quiet, text.substr(0, end), 1);
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  take_space(context, 1);
}

/// Label and field on one line: many of them fit on a phone.
void draw_form_field(DrawContext& context, Control& control) {
  const Paint paint = context.paint();
  const float touch = context.theme.touch();
  const RectPx row = take_row(touch);
  const float width = row.width * kFieldShare;
  const RectPx label = {row.x, row.y, std::max(0.0F, row.width - width - context.theme.space(2)),
                        touch};
  const float words = paint.wrapped_height(TextStyle::body, control.short_label, label.width);
  paint.wrapped({label.x, centre(label).y - words / 2, label.width, words}, TextStyle::body,
                context.theme.colour.text, control.short_label);
  const RectPx field = {right(row) - width, row.y, width, touch};
  ImGui::PushID(control.id.c_str());
  draw_value_field(context, control, field, Align::left);
  note_rect(context, control, field);
  show_focus(context, control, row);
  draw_problem(context, control);
  ImGui::PopID();
  take_space(context, 1);
}

void draw_library(DrawContext& context) {
  // By index: drawing may note rectangles in the very list.
  auto& controls = context.view.mirror.controls;
  for (Control& control : controls) {
    if (control.section != "library") continue;
    if (!control.heading.empty()) {
      take_space(context, 3);
      draw_paragraph(context, TextStyle::strong, context.theme.colour.text, control.heading, 2);
    }
    if (control.kind == ControlKind::text) {
      draw_form_field(context, control);
      continue;
    }
    if (control.kind == ControlKind::action && !control.help.empty()) {
      draw_lines(context, control.help);
    }
    draw_usable(context, control.id);
  }
}

}  // namespace

Panel library_panel() {
  return {.id = "library",
          .title = "Your own equipment",
          .question = "What is on the truck, or asked for, and not in the lists?",
          .has_verdict = false,
          .draw_first = draw_library,
          .comes_later = true};
}

}  // namespace widegate
