#include "web/look/layout.h"

#include <algorithm>

namespace widegate {
namespace {

constexpr float kPhoneHeight = 560;  // Below it a screen on its side is a phone's.
constexpr float kColumnWidth = 432;
constexpr float kColumnOnWall = 560;

RectPx box(float left, float top, float right, float bottom) {
  return {left, top, std::max(0.0F, right - left), std::max(0.0F, bottom - top)};
}

void place_portrait(Layout& layout, const FrameInput& input, const Theme& theme) {
  const Insets& safe = input.safe_area;
  const float height = input.height;
  const float rail_top = height - safe.bottom - std::min(58 * theme.scale, height * 0.12F);
  layout.rail = box(0, rail_top, input.width, height);
  layout.rail_safe = box(safe.left, rail_top, input.width - safe.right, height - safe.bottom);
  // The questions keep at least half of the screen; the picture gives way first.
  const float drawing = std::clamp(height * 0.335F, std::min(110.0F, height * 0.2F), 420.0F);
  const float numbers = std::min(74 * theme.scale, height * 0.16F);
  layout.picture = box(0, 0, input.width, safe.top + drawing);
  const float bar = std::min(kTouchCssPx * theme.scale, drawing * 0.4F);
  layout.bar = box(safe.left, safe.top, input.width - safe.right, safe.top + bar);
  const float tools = std::min(kTouchCssPx * theme.scale, drawing * 0.25F);
  const float tools_top = safe.top + drawing - tools;
  layout.drawing = box(safe.left, safe.top + bar, input.width - safe.right, tools_top);
  layout.picture_tools = box(safe.left, tools_top, input.width - safe.right, safe.top + drawing);
  const float numbers_top = safe.top + drawing;
  layout.headline = box(safe.left, numbers_top, input.width - safe.right, numbers_top + numbers);
  layout.column = box(safe.left, numbers_top + numbers, input.width - safe.right, rail_top);
}

/// Takes the row of buttons off the lower end of the drawing.
void cut_tools(Layout& layout, float inset, const Theme& theme) {
  RectPx& drawing = layout.drawing;
  const float tools = std::min((kTouchCssPx + 4) * theme.scale, drawing.height * 0.25F);
  const float end = drawing.y + std::max(0.0F, drawing.height - inset - theme.space(1));
  const float start = std::max(drawing.y, end - tools);
  layout.picture_tools = box(drawing.x, start, drawing.x + drawing.width, end);
  drawing.height = start - drawing.y;
}

void place_sideways(Layout& layout, const FrameInput& input, const Theme& theme) {
  const Insets& safe = input.safe_area;
  const bool wide = layout.shape == Shape::wide;
  layout.rail_upright = true;
  // On a wall the room goes to the picture and to what is read aloud.
  layout.rail_verdicts = wide && !theme.wall && input.width >= 1180 * theme.scale;
  const float rail = layout.rail_verdicts ? 268 * theme.scale : 72 * theme.scale;
  const float rail_right = safe.left + std::min(rail, input.width * 0.2F);
  layout.rail = box(0, 0, rail_right, input.height);
  layout.rail_safe = box(safe.left, safe.top, rail_right, input.height - safe.bottom);
  const float usable = input.width - rail_right - safe.right;
  const float wanted = theme.wall ? kColumnOnWall : kColumnWidth;
  const float column = std::min(wanted * theme.scale, usable * 0.54F);
  const float column_left = input.width - safe.right - column;
  layout.column = box(column_left, safe.top, input.width - safe.right, input.height);
  const float numbers = std::min((wide ? 96.0F : 68.0F) * theme.scale, input.height * 0.3F);
  const float bottom = input.height - safe.bottom;
  if (wide) {
    layout.headline = box(rail_right, safe.top, column_left, safe.top + numbers);
    layout.picture = box(rail_right, safe.top + numbers, column_left, input.height);
  } else {
    layout.headline = box(rail_right, bottom - numbers, column_left, bottom);
    layout.picture = box(rail_right, safe.top, column_left, bottom - numbers);
  }
  const float bar_bottom = std::min(safe.top + 48 * theme.scale, bottom);
  if (layout.rail_verdicts) {
    layout.bar = box(safe.left, safe.top, rail_right, bar_bottom);
    layout.rail_safe = box(safe.left, bar_bottom, rail_right, bottom);
    layout.drawing = layout.picture;
    cut_tools(layout, safe.bottom, theme);
    return;
  }
  layout.bar = box(rail_right, layout.picture.y, column_left,
                   std::min(layout.picture.y + 48 * theme.scale, bottom));
  layout.drawing = box(rail_right, layout.bar.y + layout.bar.height, column_left,
                       layout.picture.y + layout.picture.height);
  cut_tools(layout, wide ? safe.bottom : 0, theme);
}

}  // namespace

Layout make_layout(const FrameInput& input, const Theme& theme) {
  Layout layout;
  const float width = std::max(0.0F, input.width);
  const float height = std::max(0.0F, input.height);
  layout.screen = {0, 0, width, height};
  layout.bottom_inset = std::max(0.0F, input.safe_area.bottom);
  const bool upright = width < 640 * theme.scale || width < height * 1.08F;
  if (upright) {
    layout.shape = Shape::portrait;
    place_portrait(layout, input, theme);
  } else {
    layout.shape = height < kPhoneHeight ? Shape::landscape : Shape::wide;
    place_sideways(layout, input, theme);
  }
  return layout;
}

}  // namespace widegate
