#include "web/draw/widgets/parts.h"

#include <cmath>

#include "imgui.h"
#include "imgui_internal.h"
#include "web/draw/widgets/message.h"

namespace widegate {

RectPx take_row(float height) {
  const ImVec2 at = ImGui::GetCursorScreenPos();
  const float width = ImGui::GetContentRegionAvail().x;
  // Whole pixels: ImGui cuts fractions towards zero, so rows would shift as they pass the top edge.
  ImGui::Dummy({width > 1 ? width : 1, std::ceil(height > 1 ? height : 1)});
  return {at.x, at.y, width > 0 ? width : 0, height};
}

void take_space(const DrawContext& context, float steps) {
  static_cast<void>(take_row(context.theme.space(steps)));
}

Press pressable(std::string_view id, const RectPx& box) {
  if (box.width < 1 || box.height < 1) return {};
  const ImVec2 before = ImGui::GetCursorScreenPos();
  ImGui::SetCursorScreenPos({box.x, box.y});
  const ImGuiID number = ImGui::GetID(id.data(), id.data() + id.size());
  ImGui::PushOverrideID(number);
  Press press;
  press.clicked = ImGui::InvisibleButton("##press", {box.width, box.height});
  press.held = ImGui::IsItemActive();
  press.hovered = ImGui::IsItemHovered();
  ImGui::PopID();
  ImGui::SetCursorScreenPos(before);
  // The extent of the window's content is that of its rows.
  ImGui::Dummy({0, 0});
  ImGui::SetCursorScreenPos(before);
  return press;
}

FigureWords figure_words(const ResultRow& row) {
  if (row.unit == "°") return {row.value_text + row.unit, {}};
  return {row.value_text, row.unit};
}

Colour surface(const Theme& theme, const Press& press) {
  return press.held ? theme.colour.pressed : theme.colour.raised;
}

bool icon_button(const DrawContext& context, std::string_view id, const RectPx& box, Icon icon,
                 bool enabled, std::string_view hint) {
  const Paint paint = context.paint();
  const Palette& colour = context.theme.colour;
  Press press;
  if (enabled) press = pressable(id, box);
  if (press.held || press.hovered) {
    paint.fill(box, press.held ? colour.pressed : colour.raised, 10 * context.theme.scale);
  }
  if (press.hovered && !hint.empty()) {
    ImGui::SetItemTooltip("%.*s", static_cast<int>(hint.size()), hint.data());
  }
  const Colour tint = enabled ? colour.text : colour.idle;
  paint.icon(icon, centre(box), 18 * context.theme.scale, tint);
  return press.clicked;
}

void note_rect(DrawContext& context, Control& control, const RectPx& box) {
  context.state.anchor.row(control.id, box.y, box.height);
  const ImRect clip = ImGui::GetCurrentWindow()->ClipRect;
  const bool visible = box.height > 0 && box.y + box.height > clip.Min.y && box.y < clip.Max.y &&
                       box.x + box.width > clip.Min.x && box.x < clip.Max.x;
  if (visible == control.visible && box == control.rect) return;
  control.visible = visible;
  control.rect = box;
  ++context.view.rect_version;
}

void note_place(DrawContext& context, std::string_view kind, std::string_view name,
                const RectPx& box) {
  if (!ImGui::IsRectVisible({box.x, box.y}, {right(box), bottom(box)})) return;
  context.view.mirror.places.push_back({std::string(kind) + ":" + std::string(name), box});
}

void show_focus(DrawContext& context, const Control& control, const RectPx& row) {
  if (context.state.focus != control.id || context.state.focus.empty()) return;
  context.paint().focus_ring(row);
  if (!context.state.reveal_focus) return;
  context.state.reveal_focus = false;
  const float margin = context.theme.space(4);
  ImGui::ScrollToRect(
      ImGui::GetCurrentWindow(),
      {{row.x, row.y - margin}, {row.x + row.width, bottom(row) + margin + message_room(context)}},
      ImGuiScrollFlags_KeepVisibleEdgeY);
}

}  // namespace widegate
