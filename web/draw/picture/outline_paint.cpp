#include "web/draw/picture/outline_paint.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>
#include <vector>

#include "web/draw/picture/label_places.h"
#include "web/draw/widgets/parts.h"

namespace widegate {
namespace {

/// Of the format that is compared: drawn in dots.
bool is_second(OutlineKind kind) {
  return kind == OutlineKind::second_mode || kind == OutlineKind::second_frame;
}

/// Where a leader may meet an outline, inside the drawing's box.
LabelTarget label_target(const Outline& outline, const PictureScale& scale, const RectPx& area) {
  const RectPx box = scale.box(outline);
  const float top = std::max(box.y, area.y);
  const float low = std::min(bottom(box), bottom(area));
  return {std::min(right(box), right(area)), std::min(top, low), std::max(top, low)};
}

float anchor_x(const Outline& outline, const PictureScale& scale, const LabelTarget& target,
               float y) {
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
  const float gap = is_second(outline.kind) ? 4.0F : 0.0F;
  const float dash = gap > 0 ? 4.0F : swatch - 4;
  const int dashes = 1 + static_cast<int>((swatch - 3 - dash) / (dash + gap));
  for (int i = 0; i < dashes; ++i) {
    const float x = box.x + (dash + gap) * static_cast<float>(i);
    paint.line({x, first + line / 2}, {x + dash, first + line / 2},
               outline_colour(colour, outline.kind),
               outline_width(context.theme, outline.kind, selected));
  }
  const RectPx text = {box.x + swatch, first, std::max(0.0F, box.width - swatch), line};
  paint.text(text, Align::left, TextStyle::caption, colour.text, outline.label);
  if (two_lines) {
    paint.text({text.x, text.y + line, text.width, line}, Align::left, TextStyle::caption,
               colour.quiet, outline.detail);
    return;
  }
  const float used = paint.width(TextStyle::caption, outline.label) + context.theme.space(2);
  if (used + paint.width(TextStyle::caption, outline.detail) > text.width) return;
  paint.text({text.x + used, text.y, text.width - used, line}, Align::left, TextStyle::caption,
             colour.quiet, outline.detail);
}

/// What has to have its words first where there is not room for all.
int label_rank(const Outline& outline, const PictureState& state) {
  if (outline.key == state.selected) return 0;
  switch (outline.kind) {
    case OutlineKind::mode:
    case OutlineKind::frame:
      return 1;
    case OutlineKind::circle:
    case OutlineKind::second_mode:
    case OutlineKind::second_frame:
      return 2;
    case OutlineKind::sensor:
    case OutlineKind::other_frame:
      return 3;
    case OutlineKind::protection:
      return 4;
  }
  return 4;
}

/// The outlines whose labels fit into the room, one line each, from the outside inwards.
std::vector<const Outline*> labelled(const DrawContext& context, const PictureData& data,
                                     const RectPx& room) {
  const float line = context.paint().line_height(TextStyle::caption);
  const auto fitting = static_cast<std::size_t>(std::max(1.0F, room.height / line - 1));
  std::vector<int> ranks;
  for (const Outline& outline : data.outlines) {
    ranks.push_back(label_rank(outline, context.state.picture));
  }
  std::vector<const Outline*> found;
  for (const std::size_t i : most_important(ranks, fitting)) found.push_back(&data.outlines[i]);
  return found;
}

/// How many outlines have no label, at the foot of the labels.
void draw_unlabelled(const DrawContext& context, std::size_t count, const RectPx& room,
                     float label_x, float width) {
  if (count == 0) return;
  const float line = context.paint().line_height(TextStyle::caption);
  const float swatch = context.theme.space(4);
  context.paint().text({label_x + swatch, bottom(room) - line, width - swatch, line}, Align::left,
                       TextStyle::caption, context.theme.colour.quiet,
                       std::to_string(count) + " more");
}

/// Labels stand as high as the outlines are, or as high as they need.
std::pair<float, float> label_zone(const DrawContext& context, const RectPx& box,
                                   const std::vector<LabelTarget>& targets) {
  const RectPx room = inset(box, context.theme.space(1));
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

}  // namespace

Colour outline_colour(const Palette& palette, OutlineKind kind) {
  switch (kind) {
    case OutlineKind::sensor:
      return palette.sensor;
    case OutlineKind::mode:
      return palette.mode;
    case OutlineKind::protection:
    case OutlineKind::second_mode:
    case OutlineKind::second_frame:
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
  const bool frame = kind == OutlineKind::frame || kind == OutlineKind::second_frame;
  const float base = frame ? 2.5F : 1.5F;
  const float heavier = theme.line_width > 1 ? 1.4F : 1.0F;
  return base * heavier + (selected ? 1.5F : 0.0F);
}

/// Broken lines tell protection from the frame line without colour.
void dashed_box(const Paint& paint, const RectPx& box, Colour colour, float width, float dash,
                float gap) {
  const float pitch = dash + gap;
  for (int i = 0; static_cast<float>(i) * pitch < box.width; ++i) {
    const float x = box.x + static_cast<float>(i) * pitch;
    const float end = std::min(x + dash, right(box));
    paint.line({x, box.y}, {end, box.y}, colour, width);
    paint.line({x, bottom(box)}, {end, bottom(box)}, colour, width);
  }
  for (int i = 0; static_cast<float>(i) * pitch < box.height; ++i) {
    const float y = box.y + static_cast<float>(i) * pitch;
    const float end = std::min(y + dash, bottom(box));
    paint.line({box.x, y}, {box.x, end}, colour, width);
    paint.line({right(box), y}, {right(box), end}, colour, width);
  }
}

/// Level lines over what the circle leaves dark: a hatch needs no colour to be seen.
void hatch_uncovered(const Paint& paint, const PictureData& data, const PictureScale& scale,
                     const RectPx& mode, const RectPx& clip) {
  const Colour colour = paint.theme().colour.fail;
  const double radius = data.circle_mm / 2;
  const float step = 4;
  const float first = std::max(mode.y, clip.y);
  const float last = std::min(bottom(mode), bottom(clip));
  const int lines = static_cast<int>(std::max(0.0F, (last - first) / step + 0.5F));
  for (int i = 0; i < lines; ++i) {
    const float y = first + (static_cast<float>(i) + 0.5F) * step;
    const double y_mm = static_cast<double>(y - scale.origin.y) / scale.y;
    const double inside = radius * radius - y_mm * y_mm;
    const double half = inside > 0 ? std::sqrt(inside) : 0;
    const float left_end = std::min(right(mode), scale.at(-half, 0).x);
    const float right_start = std::max(mode.x, scale.at(half, 0).x);
    if (left_end > mode.x) paint.line({mode.x, y}, {left_end, y}, colour, 1.5F);
    if (right_start < right(mode)) paint.line({right_start, y}, {right(mode) - 1, y}, colour, 1.5F);
  }
}

void draw_outline(const DrawContext& context, const Outline& outline, const PictureScale& scale) {
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
  } else if (is_second(outline.kind)) {
    dashed_box(paint, box, colour, width, 3, 4);
  } else {
    paint.outline(box, colour, width, outline.kind == OutlineKind::sensor ? 2.0F : 0.0F);
  }
}

void draw_labels(DrawContext& context, const PictureData& data, const PictureScale& scale,
                 const RectPx& room, const RectPx& area, float labels) {
  const Paint paint = context.paint();
  const std::vector<const Outline*> outlines = labelled(context, data, room);
  std::vector<LabelTarget> targets;
  for (const Outline* outline : outlines) targets.push_back(label_target(*outline, scale, area));
  const std::size_t left_out = data.outlines.size() - outlines.size();
  RectPx zone = room;
  if (left_out > 0) zone.height -= paint.line_height(TextStyle::caption);
  const auto [top, low] = label_zone(context, zone, targets);
  const auto places = place_labels(targets, top, low);
  const float gutter = right(area) + context.theme.space(1);
  const float label_x = right(area) + context.theme.space(4);
  const float height = (low - top) / static_cast<float>(std::max<std::size_t>(1, places.size()));
  for (std::size_t i = 0; i < places.size(); ++i) {
    const Outline& outline = *outlines[i];
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
  draw_unlabelled(context, left_out, room, label_x, labels - context.theme.space(4));
}

}  // namespace widegate
