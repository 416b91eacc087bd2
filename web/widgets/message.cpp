#include "web/widgets/message.h"

#include <algorithm>

#include "web/widgets/parts.h"

namespace widegate {

void draw_message(DrawContext& context) {
  const std::string& message = context.view.mirror.message;
  if (message.empty()) return;
  const RectPx& column = context.layout.column;
  const float side = context.theme.space(3);
  const float touch = kTouchCssPx * context.theme.scale;
  const float width = std::max(1.0F, column.width - 4 * side - touch);
  const float words = context.paint().wrapped_height(TextStyle::body, message, width);
  const float height = std::max(touch, words + context.theme.space(5));
  const float inset_low = context.layout.rail_upright ? context.layout.bottom_inset : 0;
  const float low = bottom(column) - context.theme.space(2) - inset_low;
  const RectPx box = {column.x + side, low - height, std::max(1.0F, column.width - 2 * side),
                      height};
  ImGui::SetCursorScreenPos({box.x, box.y});
  ImGui::BeginChild("message", {box.width, box.height}, 0, ImGuiWindowFlags_NoBackground);
  const Paint paint = context.paint();
  const Palette& colour = context.theme.colour;
  paint.fill(box, colour.text, 12 * context.theme.scale);
  paint.wrapped({box.x + side, centre(box).y - words / 2, width, words}, TextStyle::body,
                colour.page, message);
  paint.icon(Icon::close, {right(box) - touch / 2, centre(box).y}, 18 * context.theme.scale,
             colour.page);
  if (pressable("close message", box).clicked) context.state.message.clear();
  ImGui::EndChild();
}

}  // namespace widegate
