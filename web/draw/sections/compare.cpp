// Compare: the plan against another format, or against a plan that was kept.
#include <algorithm>
#include <array>
#include <string>

#include "web/draw/widgets/control_row.h"
#include "web/draw/widgets/parts.h"
#include "web/state/comparison_state.h"
#include "web/view/sections.h"

namespace widegate {
namespace {

/// Left edges of the columns, as shares of the row.
constexpr std::array<float, 4> kColumns = {0, 0.36F, 0.59F, 0.82F};

void draw_cells(const DrawContext& context, const RectPx& row, TextStyle style,
                const std::array<std::string, 4>& cells) {
  const Paint paint = context.paint();
  const Palette& colour = context.theme.colour;
  for (std::size_t i = 0; i < cells.size(); ++i) {
    const float end = i + 1 < cells.size() ? kColumns[i + 1] : 1;
    const RectPx box = {row.x + kColumns[i] * row.width, row.y, (end - kColumns[i]) * row.width - 4,
                        row.height};
    const bool value = i == 1 || i == 2;
    paint.text(box, i == 0 ? Align::left : Align::right, value ? style : TextStyle::caption,
               value ? colour.text : colour.quiet, cells[i]);
  }
  paint.line({row.x, bottom(row)}, {right(row), bottom(row)}, colour.line, 1);
}

void draw_table(DrawContext& context) {
  const Comparison& comparison = context.view.comparison;
  if (!comparison.there) return;
  const Paint paint = context.paint();
  const float line = paint.line_height(TextStyle::caption);
  const std::array<std::string, 2> names = {"This plan: " + comparison.first_name,
                                            "Compared: " + comparison.second_name};
  for (const std::string& words : names) {
    const float width = ImGui::GetContentRegionAvail().x;
    const RectPx row = take_row(paint.wrapped_height(TextStyle::caption, words, width));
    paint.wrapped(row, TextStyle::caption, context.theme.colour.quiet, words);
  }
  take_space(context, 1);
  draw_cells(context, take_row(line + context.theme.space(2)), TextStyle::caption,
             {"", "This plan", "Compared", ""});
  for (const Difference& each : comparison.rows) {
    const std::string label = std::string(each.label) + ", " + std::string(each.unit);
    draw_cells(context, take_row(line + context.theme.space(3)), TextStyle::strong,
               {label, each.first, each.second, each.change});
  }
  take_space(context, 4);
}

void draw_compare(DrawContext& context) {
  constexpr std::array kControls = {kCompareCamera, kCompareMode, kCompareRecording};
  constexpr std::array kBelow = {kUseCompared, kSideBySide, kKeepToCompare, kStopComparing};
  for (const std::string_view id : kControls) draw_usable(context, id);
  take_space(context, 1);
  draw_table(context);
  for (const std::string_view id : kBelow) draw_usable(context, id);
}

}  // namespace

Panel compare_panel() {
  return {.id = kCompareSection,
          .title = "Compare",
          .question = "How does another format differ?",
          .has_verdict = false,
          .draw_first = draw_compare,
          .comes_later = true,
          .draws_itself = true};
}

}  // namespace widegate
