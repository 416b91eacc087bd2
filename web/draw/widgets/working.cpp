#include "web/draw/widgets/working.h"

#include <cmath>
#include <string>
#include <vector>

#include "web/draw/widgets/parts.h"

namespace widegate {
namespace {

constexpr float kAfterLine = 2;  // Steps of the spacing grid.

struct Line {
  TextStyle style;
  Colour colour;
  std::string_view text;
};

/// From the formula to the source.
std::vector<Line> working_lines(const Theme& theme, const WorkingText& working) {
  const Palette& colour = theme.colour;
  std::vector<Line> lines = {{TextStyle::body, colour.text, working.formula}};
  for (const std::string& text : working.numbers) {
    lines.push_back({TextStyle::body, theme.wall ? colour.text : colour.quiet, text});
  }
  lines.push_back({TextStyle::title, colour.accent, working.result});
  lines.push_back({TextStyle::caption, colour.quiet, working.source});
  std::erase_if(lines, [](const Line& line) { return line.text.empty(); });
  for (Line& line : lines) line.style = theme.for_reading(line.style);
  return lines;
}

}  // namespace

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
  for (const Line& line : working_lines(context.theme, working)) {
    draw_paragraph(context, line.style, line.colour, line.text, kAfterLine);
  }
}

float working_height(const DrawContext& context, const WorkingText& working, float width) {
  float height = 0;
  for (const Line& line : working_lines(context.theme, working)) {
    height += std::ceil(context.paint().wrapped_height(line.style, line.text, width)) +
              std::ceil(context.theme.space(kAfterLine));
  }
  return height;
}

}  // namespace widegate
