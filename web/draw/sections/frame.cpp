// Frame: where the frame line sits on the sensor mode and how much room is left around it.
#include <array>

#include "web/draw/widgets/control_row.h"
#include "web/draw/widgets/draw_context.h"
#include "web/view/frame_lines.h"
#include "web/view/sections.h"

namespace widegate {
namespace {

bool placed_freely(const Plan& plan, std::size_t line) {
  return plan.deliverable.frame_lines[line].anchor.kind == AnchorKind::free;
}

void draw_lines(DrawContext& context) { draw_control(context, kFrameLine); }

void draw_line_buttons(DrawContext& context) {
  draw_control(context, kAddFrameLine);
  draw_control(context, kRemoveFrameLine);
}

}  // namespace

Panel frame_panel() {
  static constexpr auto kFields = std::to_array<PanelField>({
      {"/deliverable/frame_lines/0/aspect"},
      {"/deliverable/frame_lines/0/protection"},
      {"/deliverable/frame_lines/0/anchor/kind", true},
      {"/deliverable/frame_lines/0/anchor/x", true, placed_freely},
      {"/deliverable/frame_lines/0/anchor/y", true, placed_freely},
      {"/deliverable/width_pixels", true},
      {"/deliverable/height_pixels", true},
      {"/deliverable/frame_lines/0/width_pixels", true},
      {"/deliverable/frame_lines/0/height_pixels", true},
      {"/deliverable/frame_lines/0/name", true},
  });
  return {.id = "frame",
          .title = "Frame",
          .question = "Where does the frame line sit?",
          .topic = Question::frame,
          .fields = kFields,
          .draw_first = draw_lines,
          .draw_extra = draw_line_buttons};
}

}  // namespace widegate
