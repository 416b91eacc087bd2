#include "web/draw/picture/switch.h"

#include <algorithm>
#include <array>
#include <string_view>

#include "web/draw/widgets/control_row.h"
#include "web/draw/widgets/parts.h"
#include "web/state/comparison_state.h"
#include "web/view/picture_controls.h"

namespace widegate {
namespace {

/// A setting that is switched right on the picture.
struct Tool {
  std::string_view control;
  std::string_view words;  ///< Beside the icon where there is room.
  std::string_view word;   ///< Under it elsewhere.
  Icon icon;
  bool (*wanted)(const PictureState&);
  std::string_view on, off;  ///< Values it goes between.
};

bool not_compared(const PictureState& state) { return state.shows != PictureKind::comparison; }
bool compared(const PictureState& state) { return state.shows == PictureKind::comparison; }
bool scene_shown(const PictureState& state) { return state.shows == PictureKind::scene; }

constexpr std::array kTools = {
    Tool{kDesqueeze, "De-squeeze", "De-squeeze", Icon::whole, not_compared, "true", "false"},
    Tool{kScene, "Deck at dusk", "Deck", Icon::scene, scene_shown, kDeck, kChart},
    Tool{kSideBySide, "Side by side", "Beside", Icon::beside, compared, "true", "false"},
    Tool{kMagnifier, "Magnifier", "Magnify", Icon::magnifier, scene_shown, "true", "false"},
};

bool is_on(const Control& control, const Tool& tool) { return control.edit_text == tool.on; }

/// Width of a tool, with or without its words.
float tool_width(const DrawContext& context, const Tool& tool, bool words) {
  const float button = kTouchCssPx * context.theme.scale;
  if (!words) {
    const float word = context.paint().width(TextStyle::small, tool.word);
    return std::max(button, word + context.theme.space(4));
  }
  return button + context.paint().width(TextStyle::caption, tool.words) + context.theme.space(3);
}

bool available(DrawContext& context, const Tool& tool) {
  const Control* control = context.view.find(tool.control);
  return control != nullptr && control->enabled && tool.wanted(context.state.picture);
}

void draw_tool(DrawContext& context, const Tool& tool, const RectPx& box, bool words) {
  const Control& control = *context.view.find(tool.control);
  const Paint paint = context.paint();
  const Palette& colour = context.theme.colour;
  const bool on = is_on(control, tool);
  const Press press = pressable(tool.control, box);
  if (press.hovered && !words) {
    ImGui::SetItemTooltip("%.*s", static_cast<int>(tool.words.size()), tool.words.data());
  }
  const float radius = 10 * context.theme.scale;
  const RectPx face = inset(box, 3);
  if (on || press.held || press.hovered) {
    paint.fill(face, on ? colour.accent : surface(context.theme, press), radius);
  }
  if (context.theme.line_width > 1) paint.outline(face, colour.edge, 2, radius);
  const Colour tint = on ? colour.on_accent : colour.text;
  if (words) {
    const float side = std::min(box.width, kTouchCssPx * context.theme.scale);
    paint.icon(tool.icon, {box.x + side / 2, centre(box).y}, 20 * context.theme.scale, tint);
    paint.text({box.x + side - 4, box.y, box.width - side, box.height}, Align::left,
               TextStyle::caption, tint, tool.words);
  } else {
    const float line = paint.line_height(TextStyle::small);
    const float icon = 15 * context.theme.scale;
    const float top = centre(box).y - (icon + line) / 2;
    paint.icon(tool.icon, {centre(box).x, top + icon / 2}, icon, tint);
    paint.text({box.x, top + icon, box.width, line}, Align::centre, TextStyle::small, tint,
               tool.word);
  }
  if (press.clicked) set_control(context, control, on ? tool.off : tool.on, false);
}

void draw_tools(DrawContext& context, const RectPx& box) {
  bool words = true;
  float room = box.width;
  for (const Tool& tool : kTools) {
    if (available(context, tool)) room -= tool_width(context, tool, true);
  }
  if (room < 0) words = false;
  float x = right(box);
  for (std::size_t i = kTools.size(); i > 0; --i) {
    const Tool& tool = kTools[i - 1];
    if (!available(context, tool)) continue;
    x -= tool_width(context, tool, words);
    if (x < box.x - 0.5F) return;
    draw_tool(context, tool, {x, box.y, tool_width(context, tool, words), box.height}, words);
  }
}

/// Width of all tools that are there now, without their words.
float narrow_tools(DrawContext& context) {
  float width = 0;
  for (const Tool& tool : kTools) {
    if (available(context, tool)) width += tool_width(context, tool, false);
  }
  return width;
}

float segment_width(const DrawContext& context, const ChoiceItem& item, float air) {
  return std::max(kTouchCssPx * context.theme.scale,
                  context.paint().width(TextStyle::caption, item.label) + 2 * air);
}

float segments_width(const DrawContext& context, const Control& control, float air) {
  float width = 0;
  for (const ChoiceItem& item : control.choices) width += segment_width(context, item, air);
  return width;
}

/// On either side of a segment's word; less where the tools need the room.
float segment_air(DrawContext& context, const Control& control, float width) {
  const float roomy = context.theme.space(2.5F);
  const bool fits = segments_width(context, control, roomy) + narrow_tools(context) <= width;
  return fits ? roomy : context.theme.space(1.5F);
}

/// Which picture, as wide as its words need; returns where it ends.
float draw_segments(DrawContext& context, Control& control, const RectPx& box) {
  const Paint paint = context.paint();
  const Palette& colour = context.theme.colour;
  const float radius = 10 * context.theme.scale;
  const float air = segment_air(context, control, box.width);
  const float end = box.x + segments_width(context, control, air);
  const RectPx whole = {box.x, box.y, std::min(end, right(box)) - box.x, box.height};
  const RectPx face = {whole.x, whole.y + 3, whole.width, std::max(0.0F, whole.height - 6)};
  paint.fill(face, colour.panel, radius);
  const bool heavy = context.theme.line_width > 1;
  paint.outline(face, heavy ? colour.edge : colour.line, heavy ? 2 : 1, radius);
  float x = box.x;
  for (const ChoiceItem& item : control.choices) {
    const float width = segment_width(context, item, air);
    const RectPx each = {x, box.y, std::max(0.0F, std::min(width, right(whole) - x)), box.height};
    const bool chosen = item.value == control.edit_text;
    const Press press = pressable(item.value, each);
    const RectPx inner = {each.x + 3, face.y + 3, std::max(0.0F, each.width - 6),
                          std::max(0.0F, face.height - 6)};
    if (chosen || press.held || press.hovered) {
      paint.fill(inner, chosen ? colour.accent : colour.pressed, radius - 3);
    }
    paint.text(each, Align::centre, TextStyle::caption, chosen ? colour.on_accent : colour.text,
               item.label);
    if (press.clicked && !chosen) set_control(context, control, item.value, false);
    x += width;
  }
  note_rect(context, control, whole);
  show_focus(context, control, inset(whole, 4));
  return right(whole);
}

}  // namespace

void draw_picture_switch(DrawContext& context) {
  const RectPx& tools = context.layout.picture_tools;
  Control* control = context.view.find(kPicture);
  if (control == nullptr || tools.height < 16 || tools.width < 60) return;
  const float side = context.theme.space(2);
  const RectPx box = {tools.x + side, tools.y, std::max(0.0F, tools.width - 2 * side),
                      tools.height};
  const float end = draw_segments(context, *control, box);
  draw_tools(context, {end, box.y, std::max(0.0F, right(box) - end), box.height});
}

}  // namespace widegate
