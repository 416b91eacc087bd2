#include "web/picture/picture.h"

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

#include "web/picture/label_places.h"
#include "web/widgets/parts.h"

namespace widegate {
namespace {

constexpr float kMostZoom = 12;

/// From millimetres on the sensor to CSS pixels.
struct Scale {
  ImVec2 origin{};  ///< Centre of the mode on the screen.
  double x = 1;     ///< CSS pixels for a millimetre; differs from y when de-squeezed.
  double y = 1;

  [[nodiscard]] ImVec2 at(double x_mm, double y_mm) const {
    return {origin.x + static_cast<float>(x * x_mm), origin.y + static_cast<float>(y * y_mm)};
  }
  [[nodiscard]] RectPx box(const Outline& outline) const {
    const ImVec2 low = at(outline.left_mm, outline.top_mm);
    return {low.x, low.y, static_cast<float>(x * outline.width_mm),
            static_cast<float>(y * outline.height_mm)};
  }
};

/// The box of the drawing that may hold outlines; the labels stand to its right.
RectPx drawing_area(const DrawContext& context, float labels) {
  RectPx box = inset(context.layout.drawing, context.theme.space(2));
  box.width = std::max(0.0F, box.width - labels);
  return box;
}

/// Everything but a far larger circle fits into the area; a small screen keeps the sensor large and
/// lets the circle be cut.
Scale fit(const PictureData& data, const RectPx& area, const PictureState& state, Shape shape) {
  double half_width = 1;
  double half_height = 1;
  for (const Outline& outline : data.outlines) {
    if (outline.kind == OutlineKind::circle) continue;
    half_width = std::max(half_width, outline.width_mm / 2);
    half_height = std::max(half_height, outline.height_mm / 2);
  }
  const double radius = data.circle_mm / 2;
  const double most = shape == Shape::portrait ? 1.12 : 2.6;
  const double widest = half_width * most;
  const double tallest = half_height * most;
  half_width = std::clamp(radius, half_width, widest);
  half_height = std::clamp(radius, half_height, tallest);
  const double stretch = 1 + (data.squeeze - 1) * state.desqueeze;
  const double scale =
      std::max(0.01, std::min(static_cast<double>(area.width) / (2 * half_width * stretch),
                              static_cast<double>(area.height) / (2 * half_height)));
  Scale result;
  result.origin = centre(area);
  result.origin.x += state.pan_x;
  result.origin.y += state.pan_y;
  result.y = scale * static_cast<double>(state.zoom);
  result.x = result.y * stretch;
  return result;
}

/// The part of the area that the outlines take up at the least zoom, moved so that they and their
/// labels together stand in the middle.
RectPx used_area(const PictureData& data, const RectPx& area, const PictureState& state,
                 Shape shape) {
  PictureState whole = state;
  whole.zoom = 1;
  whole.pan_x = whole.pan_y = 0;
  const Scale scale = fit(data, area, whole, shape);
  float width = 0;
  for (const Outline& outline : data.outlines) width = std::max(width, scale.box(outline).width);
  width = std::min(area.width, width + 12);
  return {area.x + (area.width - width) / 2, area.y, width, area.height};
}

Colour outline_colour(const Palette& palette, OutlineKind kind) {
  switch (kind) {
    case OutlineKind::sensor:
      return palette.sensor;
    case OutlineKind::mode:
      return palette.mode;
    case OutlineKind::protection:
      return palette.protection;
    case OutlineKind::frame:
    case OutlineKind::other_frame:
      return palette.frame;
    case OutlineKind::circle:
      return palette.circle;
  }
  return palette.mode;
}

float outline_width(const Theme& theme, OutlineKind kind, bool selected) {
  const float base = kind == OutlineKind::frame ? 2.5F : 1.5F;
  const float heavier = theme.line_width > 1 ? 1.4F : 1.0F;
  return base * heavier + (selected ? 1.5F : 0.0F);
}

/// Broken lines tell protection from the frame line without colour.
void dashed_box(const Paint& paint, const RectPx& box, Colour colour, float width) {
  const float dash = 7;
  const float gap = 5;
  for (float x = box.x; x < right(box); x += dash + gap) {
    const float end = std::min(x + dash, right(box));
    paint.line({x, box.y}, {end, box.y}, colour, width);
    paint.line({x, bottom(box)}, {end, bottom(box)}, colour, width);
  }
  for (float y = box.y; y < bottom(box); y += dash + gap) {
    const float end = std::min(y + dash, bottom(box));
    paint.line({box.x, y}, {box.x, end}, colour, width);
    paint.line({right(box), y}, {right(box), end}, colour, width);
  }
}

/// Level lines over what the circle leaves dark: a hatch needs no colour to be seen.
void hatch_uncovered(const Paint& paint, const PictureData& data, const Scale& scale,
                     const RectPx& mode, const RectPx& clip) {
  const Colour colour = paint.theme().colour.fail;
  const double radius = data.circle_mm / 2;
  const float step = 4;
  const float first = std::max(mode.y, clip.y);
  const float last = std::min(bottom(mode), bottom(clip));
  for (float y = first + step / 2; y < last; y += step) {
    const double y_mm = static_cast<double>(y - scale.origin.y) / scale.y;
    const double inside = radius * radius - y_mm * y_mm;
    const double half = inside > 0 ? std::sqrt(inside) : 0;
    const float left_end = std::min(right(mode), scale.at(-half, 0).x);
    const float right_start = std::max(mode.x, scale.at(half, 0).x);
    if (left_end > mode.x) paint.line({mode.x, y}, {left_end, y}, colour, 1.5F);
    if (right_start < right(mode)) paint.line({right_start, y}, {right(mode) - 1, y}, colour, 1.5F);
  }
}

void draw_outline(const DrawContext& context, const Outline& outline, const Scale& scale) {
  const Paint paint = context.paint();
  const Colour colour = outline_colour(context.theme.colour, outline.kind);
  const bool selected = context.state.picture.selected == outline.key;
  const float width = outline_width(context.theme, outline.kind, selected);
  const RectPx box = scale.box(outline);
  if (outline.kind == OutlineKind::circle) {
    paint.list().AddEllipse(centre(box), {box.width / 2, box.height / 2}, ink(colour), 0, 128,
                            width);
  } else if (outline.kind == OutlineKind::protection) {
    dashed_box(paint, box, colour, width);
  } else {
    paint.outline(box, colour, width, outline.kind == OutlineKind::sensor ? 2.0F : 0.0F);
  }
}

/// Where a leader may meet an outline, inside the drawing's box.
LabelTarget label_target(const Outline& outline, const Scale& scale, const RectPx& area) {
  const RectPx box = scale.box(outline);
  const float top = std::max(box.y, area.y);
  const float low = std::min(bottom(box), bottom(area));
  return {std::min(right(box), right(area)), std::min(top, low), std::max(top, low)};
}

float anchor_x(const Outline& outline, const Scale& scale, const LabelTarget& target, float y) {
  if (outline.kind != OutlineKind::circle) return target.x;
  const RectPx box = scale.box(outline);
  const float ry = box.height / 2;
  const float dy = std::clamp((y - centre(box).y) / std::max(1.0F, ry), -1.0F, 1.0F);
  return std::min(target.x, centre(box).x + box.width / 2 * std::sqrt(1 - dy * dy));
}

void draw_label(const DrawContext& context, const Outline& outline, const RectPx& box) {
  const Paint paint = context.paint();
  const Palette& colour = context.theme.colour;
  const float line = paint.line_height(TextStyle::caption);
  const float swatch = context.theme.space(4);
  const float y = centre(box).y;
  const bool two_lines = box.height >= 2 * line;
  const float first = two_lines ? y - line : y - line / 2;
  const bool selected = context.state.picture.selected == outline.key;
  paint.line({box.x, first + line / 2}, {box.x + swatch - 4, first + line / 2},
             outline_colour(colour, outline.kind),
             outline_width(context.theme, outline.kind, selected));
  const RectPx text = {box.x + swatch, first, std::max(0.0F, box.width - swatch), line};
  paint.text(text, Align::left, TextStyle::caption, colour.text, outline.label);
  if (!two_lines) return;
  paint.text({text.x, text.y + line, text.width, line}, Align::left, TextStyle::caption,
             colour.quiet, outline.detail);
}

/// Labels stand as high as the outlines are, or as high as they need.
std::pair<float, float> label_zone(const DrawContext& context,
                                   const std::vector<LabelTarget>& targets) {
  const RectPx room = inset(context.layout.drawing, context.theme.space(1));
  float top = bottom(room);
  float low = room.y;
  for (const LabelTarget& target : targets) {
    top = std::min(top, target.top);
    low = std::max(low, target.bottom);
  }
  const float needed =
      3.2F * context.paint().line_height(TextStyle::caption) * static_cast<float>(targets.size());
  const float half = std::min(room.height, std::max(needed, low - top)) / 2;
  const float middle = std::clamp((top + low) / 2, room.y + half, bottom(room) - half);
  return {middle - half, middle + half};
}

void draw_labels(DrawContext& context, const PictureData& data, const Scale& scale,
                 const RectPx& area, float labels) {
  const Paint paint = context.paint();
  std::vector<LabelTarget> targets;
  for (const Outline& outline : data.outlines) {
    targets.push_back(label_target(outline, scale, area));
  }
  const auto [top, low] = label_zone(context, targets);
  const auto places = place_labels(targets, top, low);
  const float gutter = right(area) + context.theme.space(1);
  const float label_x = right(area) + context.theme.space(4);
  const float height = (low - top) / static_cast<float>(std::max<std::size_t>(1, places.size()));
  for (std::size_t i = 0; i < places.size(); ++i) {
    const Outline& outline = data.outlines[i];
    const Colour colour = outline_colour(context.theme.colour, outline.kind);
    const LabelPlace& place = places[i];
    const RectPx box = {label_x, place.y - height / 2, labels - context.theme.space(4), height};
    const bool two_lines = height >= 2 * paint.line_height(TextStyle::caption);
    const float mark_y = two_lines ? place.y - paint.line_height(TextStyle::caption) / 2 : place.y;
    const float from = anchor_x(outline, scale, targets[i], place.anchor_y);
    // A circle that lies outside of the picture has nothing to lead to.
    if (outline.kind != OutlineKind::circle || from < targets[i].x) {
      paint.list().AddCircleFilled({from, place.anchor_y}, 2.5F, ink(colour));
      paint.line({from, place.anchor_y}, {gutter, place.anchor_y}, colour, 1);
      paint.line({gutter, place.anchor_y}, {label_x, mark_y}, colour, 1);
    }
    draw_label(context, outline, box);
    if (pressable(outline.key, box).clicked) context.state.picture.selected = outline.key;
  }
}

/// The innermost outline under a point; the circle only at its rim.
std::string outline_at(const PictureData& data, const Scale& scale, ImVec2 point) {
  std::string found;
  for (const Outline& outline : data.outlines) {
    if (outline.kind == OutlineKind::circle) continue;
    if (contains(scale.box(outline), point)) found = outline.key;
  }
  return found;
}

void follow_pointer(DrawContext& context, const PictureData& data, const Scale& scale,
                    const RectPx& area) {
  PictureState& state = context.state.picture;
  const Press press = pressable("drawing", area);
  const ImGuiIO& io = ImGui::GetIO();
  if (press.held && state.zoom > 1) {
    state.pan_x += io.MouseDelta.x;
    state.pan_y += io.MouseDelta.y;
    zoom_picture(state, area, io.MousePos.x, io.MousePos.y, 1);  // keeps it in sight
  }
  const bool moved = io.MouseDragMaxDistanceSqr[0] > 36;
  if (press.clicked && !moved) {
    const std::string found = outline_at(data, scale, io.MousePos);
    state.selected = found == state.selected ? std::string() : found;
  }
}

void draw_reading(const DrawContext& context, const PictureData& data) {
  for (const Outline& outline : data.outlines) {
    if (outline.key != context.state.picture.selected) continue;
    const Paint paint = context.paint();
    const RectPx& box = context.layout.drawing;
    const float width = box.width - context.theme.space(8);
    const float height =
        paint.wrapped_height(TextStyle::caption, outline.reading, width) + context.theme.space(3);
    const RectPx strip = {box.x + context.theme.space(2), bottom(box) - height,
                          std::max(0.0F, box.width - context.theme.space(4)), height};
    paint.fill(strip, context.theme.colour.panel, 8);
    paint.outline(strip, context.theme.colour.edge, 1, 8);
    paint.wrapped(
        {strip.x + context.theme.space(2), strip.y + context.theme.space(1.5F), width, height},
        TextStyle::caption, context.theme.colour.text, outline.reading);
  }
}

/// Shown instead of a drawing when the plan cannot be worked out.
void draw_nothing(const DrawContext& context) {
  const Paint paint = context.paint();
  const RectPx box = inset(context.layout.drawing, context.theme.space(6));
  std::string_view text = "There is nothing to draw.";
  const Problems& problems = context.app.report().problems;
  std::string words;
  if (!problems.empty()) {
    words = "This plan cannot be worked out yet. Expected " + problems.front().accepted +
            ". Change it below, or undo.";
    text = words;
  }
  const float size = 26 * context.theme.scale;
  paint.mark(Severity::fail, {box.x + size / 2, box.y + size / 2}, size);
  const float left = size + context.theme.space(3);
  paint.wrapped({box.x + left, box.y, std::max(1.0F, box.width - left), box.height},
                TextStyle::body, context.theme.colour.text, text);
}

}  // namespace

void draw_picture(DrawContext& context) {
  const Paint paint = context.paint();
  const PictureData& data = context.view.picture;
  const RectPx& whole = context.layout.picture;
  paint.fill(whole, context.theme.colour.picture);
  if (context.layout.drawing.width < 40 || context.layout.drawing.height < 24) return;
  if (data.outlines.empty()) return draw_nothing(context);
  const float labels = std::min(context.theme.space(33), context.layout.drawing.width * 0.36F);
  const RectPx area =
      used_area(data, drawing_area(context, labels), context.state.picture, context.layout.shape);
  const Scale scale = fit(data, area, context.state.picture, context.layout.shape);
  follow_pointer(context, data, scale, area);
  ImGui::PushClipRect({whole.x, context.layout.drawing.y}, {right(area) + 4, bottom(whole)}, true);
  for (const Outline& outline : data.outlines) {
    if (outline.kind != OutlineKind::mode) continue;
    const RectPx mode = scale.box(outline);
    paint.fill(mode, context.theme.colour.mode_fill);
    if (data.uncovered) hatch_uncovered(paint, data, scale, mode, area);
  }
  for (const Outline& outline : data.outlines) draw_outline(context, outline, scale);
  ImGui::PopClipRect();
  draw_labels(context, data, scale, area, labels);
  draw_reading(context, data);
  context.view.mirror.surfaces = {area};
}

void zoom_picture(PictureState& state, const RectPx& box, float x, float y, float factor) {
  if (!(factor > 0) || !std::isfinite(factor)) return;
  const float before = state.zoom;
  state.zoom = std::clamp(before * factor, 1.0F, kMostZoom);
  const float ratio = state.zoom / before;
  const ImVec2 middle = centre(box);
  state.pan_x = (x - middle.x) + (state.pan_x - (x - middle.x)) * ratio;
  state.pan_y = (y - middle.y) + (state.pan_y - (y - middle.y)) * ratio;
  const float room_x = box.width * (state.zoom - 1) / 2;
  const float room_y = box.height * (state.zoom - 1) / 2;
  state.pan_x = std::clamp(state.pan_x, -room_x, room_x);
  state.pan_y = std::clamp(state.pan_y, -room_y, room_y);
}

bool animate_picture(PictureState& state, float delta_s, bool reduced_motion) {
  constexpr float kSeconds = 0.45F;
  const float target = state.desqueezed ? 1.0F : 0.0F;
  if (state.desqueeze == target) return false;
  const float step = reduced_motion ? 1.0F : delta_s / kSeconds;
  state.desqueeze = state.desqueeze < target ? std::min(target, state.desqueeze + step)
                                             : std::max(target, state.desqueeze - step);
  return state.desqueeze != target;
}

}  // namespace widegate
