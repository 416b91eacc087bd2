#include "web/draw/widgets/typing_line.h"

#include <algorithm>
#include <string_view>

#include "imgui.h"
#include "web/draw/widgets/parts.h"

namespace widegate {
namespace {

/// What is said about the typed value, and how grave it is.
struct Said {
  Severity severity = Severity::ok;
  std::string_view words;
};

Said said_about(const Mirror& mirror, const Control& control) {
  if (!control.problem.empty()) return {Severity::fail, control.problem};
  for (const Section& section : mirror.sections) {
    if (section.id == control.section && section.has_verdict) {
      return {section.severity, section.verdict};
    }
  }
  return {Severity::ok, control.label};
}

void draw_done(DrawContext& context, const RectPx& box) {
  const Paint paint = context.paint();
  const Palette& colour = context.theme.colour;
  // Any press beside the field ends the typing; this one does nothing else.
  static_cast<void>(pressable("done", box));
  paint.fill(box, colour.accent, 10 * context.theme.scale);
  paint.text(box, Align::centre, TextStyle::strong, colour.on_accent, "Done");
}

}  // namespace

void draw_typing_line(DrawContext& context) {
  const RectPx& box = context.layout.typing;
  if (!context.state.typing || box.height < 1) return;
  const Control* control = context.view.find(context.state.typing->id);
  if (control == nullptr) return;
  ImGui::SetCursorScreenPos({box.x, box.y});
  ImGui::BeginChild("typing", {box.width, box.height}, 0,
                    ImGuiWindowFlags_NoBackground | ImGuiWindowFlags_NoScrollbar |
                        ImGuiWindowFlags_NoScrollWithMouse);
  const Paint paint = context.paint();
  const Palette& colour = context.theme.colour;
  const float pad = context.theme.space(3);
  paint.fill(box, colour.panel);
  paint.line({box.x, box.y}, {right(box), box.y}, colour.line, context.theme.line_width);
  const float done = std::max(kTouchCssPx, 72.0F) * context.theme.scale;
  const float touch = std::min(kTouchCssPx * context.theme.scale, box.height - 4);
  draw_done(context, {right(box) - pad - done, centre(box).y - touch / 2, done, touch});
  const Said said = said_about(context.view.mirror, *control);
  const float mark = 20 * context.theme.scale;
  const float left = box.x + pad + mark + context.theme.space(2);
  const float width = std::max(1.0F, right(box) - 2 * pad - done - left);
  paint.mark(said.severity, {box.x + pad + mark / 2, centre(box).y}, mark);
  const float words = paint.wrapped_height(TextStyle::caption, said.words, width);
  paint.wrapped({left, std::max(box.y + 2, centre(box).y - words / 2), width, words},
                TextStyle::caption, colour.text, said.words);
  ImGui::EndChild();
}

}  // namespace widegate
