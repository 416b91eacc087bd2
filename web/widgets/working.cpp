#include "web/widgets/working.h"

#include "web/widgets/parts.h"

namespace widegate {

void draw_paragraph(DrawContext& context, TextStyle style, Colour colour, std::string_view text,
                    float space_after) {
  if (text.empty()) return;
  const Paint paint = context.paint();
  const float width = ImGui::GetContentRegionAvail().x;
  const RectPx row = take_row(paint.wrapped_height(style, text, width));
  paint.wrapped(row, style, colour, text);
  take_space(context, space_after);
}

void draw_working(DrawContext& context, const WorkingText& working) {
  const Palette& colour = context.theme.colour;
  const bool wall = context.theme.wall;
  draw_paragraph(context, wall ? TextStyle::strong : TextStyle::body, colour.text, working.formula,
                 2);
  for (const std::string& line : working.numbers) {
    draw_paragraph(context, TextStyle::body, wall ? colour.text : colour.quiet, line, 2);
  }
  draw_paragraph(context, wall ? TextStyle::headline : TextStyle::title, colour.accent,
                 working.result, 2);
  draw_paragraph(context, TextStyle::caption, colour.quiet, working.source, 2);
}

}  // namespace widegate
