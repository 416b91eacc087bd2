#include "web/draw/widgets/message.h"

#include <algorithm>

#include "web/draw/widgets/parts.h"
#include "web/view/screen_controls.h"

namespace widegate {
namespace {

constexpr std::string_view kUndoWord = "Undo";

/// Where the message lies over the questions.
struct MessagePlace {
  RectPx box;
  RectPx undo;      ///< Its button; empty when it has none.
  float width = 0;  ///< Of its lines.
  float words = 0;  ///< Height of its lines.
};

MessagePlace place_message(const DrawContext& context) {
  const RectPx& column = context.layout.column;
  const float side = context.theme.space(3);
  const float touch = kTouchCssPx * context.theme.scale;
  MessagePlace place;
  const bool undo =
      context.state.undo_offer == context.view.mirror.message && context.app.can_undo();
  const float button = undo ? context.paint().width(TextStyle::strong, kUndoWord) + 2 * side : 0;
  place.width = std::max(1.0F, column.width - 4 * side - touch - button);
  place.words =
      context.paint().wrapped_height(TextStyle::body, context.view.mirror.message, place.width);
  const float height = std::max(touch, place.words + context.theme.space(5));
  const float inset_low = context.layout.rail_upright ? context.layout.bottom_inset : 0;
  const float low = bottom(column) - context.theme.space(2) - inset_low;
  place.box = {column.x + side, low - height, std::max(1.0F, column.width - 2 * side), height};
  place.undo = {right(place.box) - touch - button, place.box.y, button, height};
  return place;
}

}  // namespace

float message_room(const DrawContext& context) {
  if (context.view.mirror.message.empty()) return 0;
  return bottom(context.layout.column) - place_message(context).box.y;
}

void draw_message(DrawContext& context) {
  const std::string& message = context.view.mirror.message;
  if (message.empty()) return;
  const auto [box, undo, width, words] = place_message(context);
  const float side = context.theme.space(3);
  const float touch = kTouchCssPx * context.theme.scale;
  ImGui::SetCursorScreenPos({box.x, box.y});
  ImGui::BeginChild("message", {box.width, box.height}, 0,
                    ImGuiWindowFlags_NoBackground | ImGuiWindowFlags_NoScrollbar |
                        ImGuiWindowFlags_NoScrollWithMouse);
  const Paint paint = context.paint();
  const Palette& colour = context.theme.colour;
  paint.fill(box, colour.text, 12 * context.theme.scale);
  paint.wrapped({box.x + side, centre(box).y - words / 2, width, words}, TextStyle::body,
                colour.page, message);
  paint.icon(Icon::close, {right(box) - touch / 2, centre(box).y}, 18 * context.theme.scale,
             colour.page);
  if (undo.width > 0) {
    paint.text(undo, Align::centre, TextStyle::strong, colour.page, kUndoWord);
    paint.line({undo.x, undo.y + side}, {undo.x, bottom(undo) - side}, colour.page, 1);
    if (pressable("undo", undo).clicked) context.state.asked_action = kUndo;
  }
  const RectPx rest = {right(undo), box.y, right(box) - right(undo), box.height};
  const RectPx close = undo.width > 0 ? rest : box;
  if (pressable("close message", close).clicked) context.state.message.clear();
  ImGui::EndChild();
}

}  // namespace widegate
