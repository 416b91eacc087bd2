// Delivery: what post-production gets when a canvas template is applied to what was shot.
#include <string>

#include "web/draw/sections/delivery_canvas.h"
#include "web/draw/widgets/control_row.h"
#include "web/draw/widgets/parts.h"
#include "web/state/delivery_state.h"
#include "web/view/sections.h"

namespace widegate {
namespace {

void draw_caution(const DrawContext& context) {
  constexpr std::string_view kWords =
      "Compare the source canvas with the size of the files before trusting a frame line, and ask "
      "post-production which template they expect.";
  const Paint paint = context.paint();
  const float width = ImGui::GetContentRegionAvail().x;
  const RectPx row = take_row(paint.wrapped_height(TextStyle::caption, kWords, width));
  paint.wrapped(row, TextStyle::caption, context.theme.colour.quiet, kWords);
  take_space(context, 3);
}

/// What an opened list left behind, the template and its drawing, then the rest in the page's
/// order.
void draw_delivery(DrawContext& context) {
  draw_control(context, kClearImport);
  draw_control(context, kDeliveryTemplate);
  const auto& delivery = context.view.delivery;
  if (delivery && delivery->problems.empty()) {
    draw_delivery_canvas(context, *delivery);
    draw_delivery_figures(context, *delivery);
  }
  draw_caution(context);
  std::vector<std::string> ids;
  for (const Control& control : context.view.mirror.controls) {
    if (control.section == kDeliverySection) ids.push_back(control.id);
  }
  for (const std::string& id : ids) {
    if (id != kDeliveryTemplate && id != kClearImport) draw_control(context, id);
  }
}

}  // namespace

Panel delivery_panel() {
  return {.id = kDeliverySection,
          .title = "Delivery",
          .question = "What does post-production get from it?",
          .has_verdict = false,
          .draw_first = draw_delivery,
          .draws_itself = true};
}

}  // namespace widegate
