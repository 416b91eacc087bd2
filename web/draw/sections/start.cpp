// The first ten seconds: one sentence, examples to play with, the plans kept on this device.
#include <algorithm>
#include <vector>

#include "web/draw/widgets/control_row.h"
#include "web/draw/widgets/draw_context.h"
#include "web/draw/widgets/parts.h"
#include "web/draw/widgets/working.h"
#include "web/view/sections.h"
#include "web/view/start_controls.h"

namespace widegate {
namespace {

std::vector<Control*> controls_of(DrawContext& context) {
  std::vector<Control*> found;
  for (Control& control : context.view.mirror.controls) {
    if (control.section == kStartSection) found.push_back(&control);
  }
  return found;
}

/// Two beside one another where their words fit.
std::size_t columns_for(const DrawContext& context, const std::vector<Control*>& controls,
                        float width) {
  const Paint paint = context.paint();
  const float half = (width - context.theme.space(2)) / 2 - context.theme.space(4);
  const bool fits = std::all_of(controls.begin(), controls.end(), [&](const Control* each) {
    return paint.width(TextStyle::strong, each->label) <= half;
  });
  return fits && controls.size() > 1 ? 2 : 1;
}

void draw_buttons(DrawContext& context) {
  const std::vector<Control*> controls = controls_of(context);
  const float width = ImGui::GetContentRegionAvail().x;
  const std::size_t columns = columns_for(context, controls, width);
  const float gap = context.theme.space(2);
  const auto count = static_cast<float>(columns);
  const float each = (width - gap * (count - 1)) / count;
  for (std::size_t i = 0; i < controls.size(); i += columns) {
    const RectPx row = take_row(context.theme.touch());
    for (std::size_t j = i; j < std::min(i + columns, controls.size()); ++j) {
      const float x = row.x + static_cast<float>(j - i) * (each + gap);
      ImGui::PushID(controls[j]->id.c_str());
      draw_button(context, *controls[j], {x, row.y, each, row.height});
      ImGui::PopID();
    }
    take_space(context, 2);
  }
}

void draw_start(DrawContext& context) {
  const Palette& colour = context.theme.colour;
  if (context.state.first_visit) {
    draw_paragraph(context, TextStyle::body, colour.text, kWhatThisIs, 2);
  } else {
    draw_paragraph(context, TextStyle::caption, colour.quiet, "Your plans on this device", 1);
  }
  draw_buttons(context);
}

bool heads_itself(const PanelState&) { return true; }

}  // namespace

Panel start_panel() {
  return {.id = kStartSection,
          .title = "Begin",
          .question = kWhatThisIs,
          .has_verdict = false,
          .draw_first = draw_start,
          .draws_itself = true,
          .heads_itself = heads_itself};
}

}  // namespace widegate
