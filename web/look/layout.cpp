#include "web/look/layout.h"

#include <algorithm>

namespace widegate {
namespace {

constexpr float kPhoneHeight = 560;  // Below it a screen on its side is a phone's.
constexpr float kTypingHeight = 60;  // Two lines of a verdict, or a button.
constexpr float kFieldRoom = 108;    // A label with its value and the slider below.
constexpr float kLowScreen = 420;    // A desktop's window at 400 % zoom.
constexpr float kColumnWidth = 432;
constexpr float kColumnOnWall = 560;

RectPx box(float left, float top, float right, float bottom) {
  return {left, top, std::max(0.0F, right - left), std::max(0.0F, bottom - top)};
}

/// Heights of what stands above the questions on an upright screen.
struct Above {
  float drawing = 0, numbers = 0;
  float second = 0;  ///< The picture's second part.
};

Above above_at_rest(float height, const Theme& theme, bool second_part) {
  // The questions keep at least half of the screen; the picture gives way first.
  return {std::clamp(height * 0.335F, std::min(110.0F, height * 0.2F), 420.0F),
          std::min(74 * theme.scale, height * 0.16F),
          second_part && height >= kLowScreen ? std::min(height * 0.22F, 300.0F) : 0};
}

/// While somebody reads on below: a strip of the picture and one line of numbers; on the lowest
/// screens the numbers alone.
Above above_at_least(const Above& rest, float height, const Theme& theme) {
  const float strip = height < kLowScreen ? 0 : kTouchCssPx * theme.scale + height * 0.07F;
  return {std::min(rest.drawing, strip), std::min(rest.numbers, 48 * theme.scale), 0};
}

/// Sections along the lower edge; a screen too low for them has the list in the bar.
float rail_height(float height, const Theme& theme) {
  const float wanted = std::min(58 * theme.scale, height * 0.12F);
  return wanted < 36 ? 0 : wanted;
}

void place_portrait(Layout& layout, const FrameInput& input, const Theme& theme,
                    const LayoutWish& wish) {
  const Insets& safe = input.safe_area;
  const float height = input.height;
  const float rail_top = height - safe.bottom - rail_height(height, theme);
  layout.rail = box(0, rail_top, input.width, height);
  layout.rail_safe = box(safe.left, rail_top, input.width - safe.right, height - safe.bottom);
  const Above rest = above_at_rest(height, theme, wish.second_part);
  const Above least = above_at_least(rest, height, theme);
  const float gives = rest.drawing - least.drawing;
  layout.collapsed =
      std::clamp(wish.scrolled, 0.0F, rest.second + gives + rest.numbers - least.numbers);
  const float second = std::max(0.0F, rest.second - layout.collapsed);
  const float after_second = layout.collapsed - (rest.second - second);
  const float given = std::min(after_second, gives);
  const float drawing = rest.drawing - given;
  const float numbers = rest.numbers - (after_second - given);
  layout.picture = box(0, 0, input.width, safe.top + drawing + second);
  const float bar = std::min({kTouchCssPx * theme.scale, rest.drawing * 0.4F, drawing});
  layout.bar = box(safe.left, safe.top, input.width - safe.right, safe.top + bar);
  // The row of buttons is the first to go, before the picture itself is smaller.
  const float room_for_tools = std::min(kTouchCssPx * theme.scale, rest.drawing * 0.25F);
  const float whole_tools = room_for_tools < 32 ? 0 : room_for_tools;
  const float tools = std::max(0.0F, whole_tools - given);
  const float tools_top = safe.top + drawing - tools;
  layout.drawing = box(safe.left, safe.top + bar, input.width - safe.right, tools_top);
  const float shown_tools = given > 0 ? 0 : tools;
  layout.picture_tools =
      box(safe.left, tools_top, input.width - safe.right, tools_top + shown_tools);
  layout.second_part =
      box(safe.left, safe.top + drawing, input.width - safe.right, safe.top + drawing + second);
  const float numbers_top = safe.top + drawing + second;
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

/// A phone with its keyboard up, whichever way it is held: the numbers where there is room, the
/// questions, and the typing's own line. The picture comes back with the rest.
void place_typing(Layout& layout, const FrameInput& input, const Theme& theme) {
  const Insets& safe = input.safe_area;
  const float left = safe.left;
  const float right = input.width - safe.right;
  const float visible = std::max(0.0F, input.height - std::max(input.keyboard, safe.bottom));
  const float line = std::min(kTypingHeight * theme.scale, visible * 0.4F);
  const float most = visible - safe.top - line - kFieldRoom * theme.scale;
  const float numbers = most > 48 * theme.scale ? std::min(most, 62 * theme.scale) : 0;
  layout.picture = box(0, 0, input.width, safe.top);
  layout.drawing = layout.picture_tools = layout.bar = box(left, 0, right, 0);
  layout.headline = box(left, safe.top, right, safe.top + numbers);
  layout.typing = box(left, visible - line, right, visible);
  layout.column = box(left, safe.top + numbers, right, visible - line);
  layout.rail = layout.rail_safe = box(left, input.height, left, input.height);
  layout.rail_upright = layout.shape != Shape::portrait;
}

}  // namespace

Layout make_layout(const FrameInput& input, const Theme& theme, const LayoutWish& wish) {
  Layout layout;
  const float width = std::max(0.0F, input.width);
  const float height = std::max(0.0F, input.height);
  layout.screen = {0, 0, width, height};
  layout.visible_height = std::max(0.0F, height - std::max(0.0F, input.keyboard));
  layout.bottom_inset = std::max(0.0F, input.safe_area.bottom);
  const bool on_phone = theme.coarse && std::min(width, height) < kPhoneHeight;
  const bool upright = width < 640 * theme.scale || width < height * 1.08F;
  layout.shape = upright ? Shape::portrait : height < kPhoneHeight ? Shape::landscape : Shape::wide;
  if (wish.typing && on_phone) {
    place_typing(layout, input, theme);
  } else if (upright) {
    place_portrait(layout, input, theme, wish);
  } else {
    place_sideways(layout, input, theme);
  }
  return layout;
}

}  // namespace widegate
