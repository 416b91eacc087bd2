// The Show section: which plans are in it, its controls, what follows, and the calendar drawn.
#include <string>

#include "web/draw/sections/show_calendar.h"
#include "web/draw/widgets/control_row.h"
#include "web/draw/widgets/parts.h"
#include "web/draw/widgets/working.h"
#include "web/state/show_state.h"
#include "web/view/sections.h"

namespace widegate {
namespace {

/// Words on the left, what stands behind them below or on the right, whichever fits.
void draw_line(DrawContext& context, const ShowLine& line) {
  const Paint paint = context.paint();
  const Palette& colour = context.theme.colour;
  const float width = ImGui::GetContentRegionAvail().x;
  const float pad = context.theme.space(1);
  const float text = paint.width(TextStyle::strong, line.text) + 1;
  const float label = paint.width(TextStyle::body, line.label) + 1;
  if (text + label + context.theme.space(3) <= width) {
    const RectPx row = take_row(paint.line_height(TextStyle::strong) + 2 * pad);
    paint.text({row.x, row.y + pad, label, row.height - 2 * pad}, Align::left, TextStyle::body,
               colour.quiet, line.label);
    paint.text({right(row) - text, row.y + pad, text, row.height - 2 * pad}, Align::right,
               TextStyle::strong, colour.text, line.text);
    return;
  }
  const float first = paint.wrapped_height(TextStyle::body, line.label, width);
  const float second = paint.wrapped_height(TextStyle::strong, line.text, width);
  const RectPx row = take_row(first + second + 2 * pad);
  paint.wrapped({row.x, row.y + pad, width, first}, TextStyle::body, colour.quiet, line.label);
  paint.wrapped({row.x, row.y + pad + first, width, second}, TextStyle::strong, colour.text,
                line.text);
}

void draw_lines(DrawContext& context, std::string_view title, const std::vector<ShowLine>& lines) {
  if (lines.empty()) return;
  take_space(context, 2);
  draw_paragraph(context, TextStyle::strong, context.theme.colour.accent, title, 1);
  for (const ShowLine& line : lines) draw_line(context, line);
}

void draw_notes(DrawContext& context) {
  for (const Section& section : context.view.mirror.sections) {
    if (section.id != kShowSection) continue;
    for (const std::string& note : section.notes) {
      const bool fails = note.starts_with("Fails");
      draw_paragraph(context, TextStyle::caption,
                     fails ? context.theme.colour.fail : context.theme.colour.quiet, note, 1);
    }
  }
}

void draw_figures(DrawContext& context, const ShowView& view) {
  draw_lines(context, "The show in all", view.totals);
  draw_lines(context, "The parts", view.parts);
  take_space(context, 2);
  draw_show_calendar(context, view);
  draw_lines(context, "Money, as it was entered", view.money);
  draw_lines(context, "What a little more costs", view.more);
  take_space(context, 2);
  draw_notes(context);
  take_space(context, 2);
}

/// The figures stand where the controls of a show that is open begin.
void draw_show(DrawContext& context) {
  std::vector<std::string> ids;
  for (const Control& control : context.view.mirror.controls) {
    if (control.section == kShowSection) ids.push_back(control.id);
  }
  for (const std::string& id : ids) {
    if (id == kShowTitle) draw_figures(context, context.view.show);
    draw_control(context, id);
  }
}

}  // namespace

Panel show_panel() {
  return {.id = kShowSection,
          .title = "Show",
          .question = "What do several plans come to together?",
          .has_verdict = false,
          .draw_first = draw_show,
          .comes_later = true,
          .draws_itself = true};
}

}  // namespace widegate
