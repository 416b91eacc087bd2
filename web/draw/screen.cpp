#include "web/draw/screen.h"

#include <algorithm>

#include "web/draw/picture/picture.h"
#include "web/draw/sections/draw_section.h"
#include "web/draw/widgets/message.h"
#include "web/draw/widgets/overlay.h"
#include "web/draw/widgets/screen_bars.h"
#include "web/draw/widgets/typing_line.h"

namespace widegate {
namespace {

ImVec4 style_colour(Colour colour, float opacity = 1) {
  return ImGui::ColorConvertU32ToFloat4(ink(colour, opacity));
}

}  // namespace

void apply_style(const Theme& theme) {
  ImGuiStyle& style = ImGui::GetStyle();
  style = ImGuiStyle();
  style.FontSizeBase = theme.type(TextStyle::caption).px;
  style.WindowPadding = {0, 0};
  style.WindowBorderSize = 0;
  style.ChildBorderSize = 0;
  style.WindowMinSize = {1, 1};
  style.ItemSpacing = {0, 0};
  style.ItemInnerSpacing = {0, 0};
  style.FramePadding = {0, 0};
  style.ScrollbarSize = 8 * theme.scale;
  style.ScrollbarRounding = style.ScrollbarSize / 2;
  style.PopupRounding = 8 * theme.scale;
  style.PopupBorderSize = theme.line_width;
  const Palette& colour = theme.colour;
  style.Colors[ImGuiCol_WindowBg] = style_colour(colour.page);
  style.Colors[ImGuiCol_PopupBg] = style_colour(colour.panel);
  style.Colors[ImGuiCol_Text] = style_colour(colour.text);
  style.Colors[ImGuiCol_Border] = style_colour(colour.edge);
  style.Colors[ImGuiCol_ScrollbarBg] = style_colour(colour.page, 0);
  style.Colors[ImGuiCol_ScrollbarGrab] = style_colour(colour.edge, 0.6F);
  style.Colors[ImGuiCol_ScrollbarGrabHovered] = style_colour(colour.edge);
  style.Colors[ImGuiCol_ScrollbarGrabActive] = style_colour(colour.edge);
}

void draw_screen(DrawContext& context) {
  const RectPx& screen = context.layout.screen;
  context.view.mirror.places.clear();
  ImGui::SetNextWindowPos({0, 0});
  ImGui::SetNextWindowSize({std::max(1.0F, screen.width), std::max(1.0F, screen.height)});
  ImGui::Begin("screen", nullptr,
               ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoMove |
                   ImGuiWindowFlags_NoSavedSettings | ImGuiWindowFlags_NoBringToFrontOnFocus |
                   ImGuiWindowFlags_NoScrollWithMouse);
  draw_picture(context);
  draw_headline(context);
  draw_column(context);
  draw_message(context);
  draw_typing_line(context);
  draw_rail(context);
  draw_bar(context);
  ImGui::End();
  static_cast<void>(draw_sheet(context));
}

}  // namespace widegate
