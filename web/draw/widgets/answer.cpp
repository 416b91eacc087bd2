#include "web/draw/widgets/answer.h"

#include <algorithm>

#include "web/draw/widgets/parts.h"

namespace widegate {

void draw_answer(DrawContext& context, Control& control) {
  const Paint paint = context.paint();
  const Palette& colour = context.theme.colour;
  const float pad = context.theme.space(3);
  const float icon = 12 * context.theme.scale;
  const float width =
      std::max(1.0F, ImGui::GetContentRegionAvail().x - 2 * pad - icon - context.theme.space(2));
  const float words = paint.wrapped_height(TextStyle::strong, control.label, width);
  const float outcome =
      control.help.empty() ? 0 : paint.wrapped_height(TextStyle::caption, control.help, width);
  const float height = std::max(context.theme.touch(), words + outcome + context.theme.space(3));
  const RectPx box = take_row(height);
  ImGui::PushID(control.id.c_str());
  const Press press = pressable("answer", box);
  ImGui::PopID();
  const float radius = 10 * context.theme.scale;
  paint.fill(box, surface(context.theme, press), radius);
  paint.outline(box, colour.accent, context.theme.line_width, radius);
  const float top = centre(box).y - (words + outcome) / 2;
  paint.wrapped({box.x + pad, top, width, words}, TextStyle::strong, colour.text, control.label);
  paint.wrapped({box.x + pad, top + words, width, outcome}, TextStyle::caption, colour.quiet,
                control.help);
  paint.icon(Icon::onward, {right(box) - pad - icon / 2, centre(box).y}, icon, colour.accent);
  if (press.clicked) context.state.asked_action = control.id;
  note_rect(context, control, box);
  show_focus(context, control, box);
  take_space(context, 2);
}

void draw_short_verdict(DrawContext& context, const Section& section) {
  const Paint paint = context.paint();
  const float mark = 20 * context.theme.scale;
  const float left = mark + context.theme.space(2);
  const float width = std::max(1.0F, ImGui::GetContentRegionAvail().x - left);
  const float words = paint.wrapped_height(TextStyle::body, section.verdict, width);
  const RectPx row = take_row(std::max(words, mark));
  note_place(context, "verdict", section.id, row);
  paint.mark(section.severity, {row.x + mark / 2, centre(row).y}, mark);
  paint.wrapped({row.x + left, centre(row).y - words / 2, width, words}, TextStyle::body,
                context.theme.colour.text, section.verdict);
  take_space(context, 2);
}

}  // namespace widegate
