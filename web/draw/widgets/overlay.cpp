#include "web/draw/widgets/overlay.h"

#include <algorithm>
#include <string>

#include "imgui.h"
#include "web/draw/widgets/control_row.h"
#include "web/draw/widgets/parts.h"
#include "web/draw/widgets/working.h"

namespace widegate {
namespace {

constexpr float kPad = 4;  // Beside the text, steps of the spacing grid.

/// Least height of an entry of a list.
float entry_height(const DrawContext& context, bool detail) {
  const Paint paint = context.paint();
  const float words =
      paint.line_height(TextStyle::strong) + (detail ? paint.line_height(TextStyle::caption) : 0);
  return std::max(context.theme.touch() + 4, words + context.theme.space(4));
}

/// Of its text.
float sheet_width(const DrawContext& context) {
  const bool portrait = context.layout.shape == Shape::portrait;
  const float margin = portrait ? 0 : context.theme.space(6);
  const float width = portrait ? context.layout.screen.width : context.layout.column.width - margin;
  return std::max(1.0F, width - context.theme.space(2 * kPad));
}

RectPx sheet_box(const DrawContext& context, float wanted) {
  const RectPx& screen = context.layout.screen;
  const float most = screen.height * 0.78F;
  const float height = std::min(wanted, most);
  if (context.layout.shape == Shape::portrait) {
    return {0, screen.height - height, screen.width, height};
  }
  const RectPx& column = context.layout.column;
  const float margin = context.theme.space(3);
  const float width = sheet_width(context) + context.theme.space(2 * kPad);
  return {column.x + margin, std::max(margin, (screen.height - height) / 2), width, height};
}

void close(DrawContext& context) {
  context.state.open_choice.clear();
  context.state.open_working.clear();
}

/// Title and the cross; pressing outside closes too.
void draw_title(DrawContext& context, std::string_view title) {
  const Paint paint = context.paint();
  const float touch = kTouchCssPx * context.theme.scale;
  const RectPx row = take_row(touch);
  paint.text({row.x, row.y, std::max(0.0F, row.width - touch), touch}, Align::left,
             TextStyle::title, context.theme.colour.text, title);
  if (icon_button(context, "close", {right(row) - touch, row.y, touch, touch}, Icon::close)) {
    close(context);
  }
  take_space(context, 1);
}

void draw_entry(DrawContext& context, const Control& control, const ChoiceItem& item) {
  const Paint paint = context.paint();
  const Palette& colour = context.theme.colour;
  const bool chosen = item.value == control.edit_text;
  const RectPx row = take_row(entry_height(context, !item.detail.empty()));
  ImGui::PushID(item.value.data(), item.value.data() + item.value.size());
  const Press press = pressable("entry", row);
  ImGui::PopID();
  const float radius = 10 * context.theme.scale;
  if (chosen || press.held || press.hovered) {
    paint.fill(row, chosen ? colour.accent : surface(context.theme, press), radius);
  }
  const float pad = context.theme.space(3);
  const float icon = 18 * context.theme.scale;
  const float strong = paint.line_height(TextStyle::strong);
  const float caption = item.detail.empty() ? 0 : paint.line_height(TextStyle::caption);
  RectPx text = {row.x + pad, centre(row).y - (strong + caption) / 2,
                 std::max(0.0F, row.width - 3 * pad - icon), strong};
  paint.text(text, Align::left, TextStyle::strong, chosen ? colour.on_accent : colour.text,
             item.label);
  text.y += strong;
  text.height = caption;
  paint.text(text, Align::left, TextStyle::caption, chosen ? colour.on_accent : colour.quiet,
             item.detail);
  if (chosen) {
    paint.icon(Icon::tick, {right(row) - pad - icon / 2, centre(row).y}, icon, colour.on_accent);
    if (context.state.sheet_opened) ImGui::SetScrollHereY(0.5F);
  }
  if (!press.clicked) return;
  set_control(context, control, item.value, false);
  close(context);
}

/// The dimmed screen that a sheet lies on. Follow with begin_sheet() and End().
void begin_overlay(DrawContext& context) {
  const RectPx& screen = context.layout.screen;
  ImGui::SetNextWindowPos({0, 0});
  ImGui::SetNextWindowSize({std::max(1.0F, screen.width), std::max(1.0F, screen.height)});
  ImGui::SetNextWindowFocus();
  ImGui::Begin("sheet", nullptr,
               ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoMove |
                   ImGuiWindowFlags_NoSavedSettings | ImGuiWindowFlags_NoBackground |
                   ImGuiWindowFlags_NoScrollWithMouse);
  context.paint().fill(screen, rgb(0x000000), 0, 0.55F);
  if (pressable("outside", screen).clicked) close(context);
}

/// The sheet's own window inside the overlay, high enough for its title and `content` CSS pixels.
/// Follow with EndChild().
void begin_sheet(DrawContext& context, float content) {
  const Paint paint = context.paint();
  const float around = kTouchCssPx * context.theme.scale + context.theme.space(9);
  const RectPx box = sheet_box(context, around + content + context.layout.bottom_inset);
  const float radius = 18 * context.theme.scale;
  const bool at_edge = context.layout.shape == Shape::portrait;
  const RectPx drawn = {box.x, box.y, box.width, box.height + (at_edge ? radius : 0)};
  paint.fill(drawn, context.theme.colour.panel, radius);
  paint.outline(drawn, context.theme.colour.edge, context.theme.line_width, radius);
  ImGui::SetCursorScreenPos({box.x, box.y});
  ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding,
                      {context.theme.space(kPad), context.theme.space(3)});
  ImGui::BeginChild("sheet body", {std::max(1.0F, box.width), std::max(1.0F, box.height)},
                    ImGuiChildFlags_AlwaysUseWindowPadding, ImGuiWindowFlags_NoBackground);
  ImGui::PopStyleVar();
}

void draw_choice_sheet(DrawContext& context, const Control& control) {
  begin_overlay(context);
  float entries = 0;
  for (const ChoiceItem& item : control.choices) {
    entries += entry_height(context, !item.detail.empty());
  }
  begin_sheet(context, entries);
  draw_title(context, control.label);
  for (const ChoiceItem& item : control.choices) draw_entry(context, control, item);
  static_cast<void>(take_row(std::max(1.0F, context.layout.bottom_inset)));
  ImGui::EndChild();
  ImGui::End();
}

void draw_working_sheet(DrawContext& context, const WorkingText& working) {
  begin_overlay(context);
  begin_sheet(context, working_height(context, working, sheet_width(context)));
  draw_title(context, working.title);
  draw_working(context, working);
  static_cast<void>(take_row(std::max(1.0F, context.layout.bottom_inset)));
  ImGui::EndChild();
  ImGui::End();
}

}  // namespace

bool draw_sheet(DrawContext& context) {
  PanelState& state = context.state;
  const std::string open = state.open_choice + state.open_working;
  state.sheet_opened = open != state.sheet_before;
  state.sheet_before = open;
  if (const Control* control = context.view.find(state.open_choice)) {
    draw_choice_sheet(context, *control);
    return true;
  }
  if (context.view.mirror.working.title.empty()) return false;
  draw_working_sheet(context, context.view.mirror.working);
  return true;
}

}  // namespace widegate
