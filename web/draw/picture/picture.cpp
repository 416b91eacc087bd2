#include "web/draw/picture/picture.h"

#include <algorithm>
#include <string>

#include "web/draw/picture/compare.h"
#include "web/draw/picture/magnifier.h"
#include "web/draw/picture/outline_paint.h"
#include "web/draw/picture/scale.h"
#include "web/draw/picture/scene.h"
#include "web/draw/picture/switch.h"
#include "web/draw/widgets/parts.h"

namespace widegate {
namespace {

/// The box of the drawing that may hold outlines; the labels stand to its right.
RectPx drawing_area(const DrawContext& context, const RectPx& room, float labels) {
  RectPx box = inset(room, context.theme.space(2));
  box.width = std::max(0.0F, box.width - labels);
  return box;
}

float label_width(const DrawContext& context) {
  return std::min(context.theme.space(33), context.layout.drawing.width * 0.36F);
}

/// What is drawn may reach the edges of the glass, but not the labels or the row below.
void push_clip(const DrawContext& context, const RectPx& room, const RectPx& area) {
  ImGui::PushClipRect({context.layout.picture.x, room.y}, {right(area) + 4, bottom(room)}, true);
}

/// The innermost outline under a point; the circle only at its rim.
std::string outline_at(const PictureData& data, const PictureScale& scale, ImVec2 point) {
  std::string found;
  for (const Outline& outline : data.outlines) {
    if (outline.kind == OutlineKind::circle) continue;
    if (contains(scale.box(outline), point)) found = outline.key;
  }
  return found;
}

void follow_pointer(DrawContext& context, const PictureData& data, const PictureScale& scale,
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

/// The sensor with everything on it, to scale.
void draw_sensor(DrawContext& context) {
  const Paint paint = context.paint();
  const PictureData& data = context.view.picture;
  const float labels = label_width(context);
  const PictureExtent extent = picture_extent(data);
  const RectPx area =
      used_area(extent, data.squeeze, drawing_area(context, context.layout.drawing, labels),
                context.state.picture);
  const PictureScale scale = fit_picture(extent, data.squeeze, area, context.state.picture);
  follow_pointer(context, data, scale, area);
  push_clip(context, context.layout.drawing, area);
  for (const Outline& outline : data.outlines) {
    if (outline.kind != OutlineKind::mode) continue;
    const RectPx mode = scale.box(outline);
    paint.fill(mode, context.theme.colour.mode_fill);
    if (data.uncovered) hatch_uncovered(paint, data, scale, mode, area);
  }
  for (const Outline& outline : data.outlines) draw_outline(context, outline, scale);
  ImGui::PopClipRect();
  draw_labels(context, data, scale, context.layout.drawing, area, labels);
  draw_reading(context, data);
  context.view.mirror.surfaces = {area};
}

/// The scene through the lens, with the frame lines on it.
void draw_scene(DrawContext& context) {
  const PictureData data = scene_outlines(context.view.picture);
  if (data.outlines.empty()) return;
  RectPx room = context.layout.drawing;
  const RectPx magnifier = take_magnifier(context, room);
  const bool magnified = magnifier.width > 0;
  const float labels = label_width(context);
  const PictureExtent extent = area_extent(data);
  const RectPx area =
      used_area(extent, data.squeeze, drawing_area(context, room, labels), context.state.picture);
  const PictureScale scale = fit_picture(extent, data.squeeze, area, context.state.picture);
  const RectPx mode = scale.box(data.outlines.front());
  if (magnified) {
    follow_spot(context, area, mode);
  } else {
    follow_pointer(context, data, scale, area);
  }
  const SceneView scene = scene_view(context.app.report());
  push_clip(context, room, area);
  draw_scene_quad(context, scene_quad(scene, mode, context.state.picture.scene));
  for (const Outline& outline : data.outlines) draw_outline(context, outline, scale);
  if (magnified) draw_spot(context, mode);
  ImGui::PopClipRect();
  draw_labels(context, data, scale, room, area, labels);
  if (magnified) {
    draw_magnifier(context, scene, mode, magnifier);
  } else {
    draw_reading(context, data);
  }
  context.view.mirror.surfaces = {area};
}

}  // namespace

void draw_picture(DrawContext& context) {
  context.paint().fill(context.layout.picture, context.theme.colour.picture);
  draw_picture_switch(context);
  if (context.layout.drawing.width < 40 || context.layout.drawing.height < 24) {
    context.view.mirror.surfaces.clear();
    return;
  }
  if (context.view.picture.outlines.empty()) return draw_nothing(context);
  switch (context.state.picture.shows) {
    case PictureKind::sensor:
      return draw_sensor(context);
    case PictureKind::comparison:
      return draw_comparison(context);
    case PictureKind::scene:
      return draw_scene(context);
  }
}

bool has_second_part(const PanelState& state, const Comparison& comparison) {
  // A lesson needs the room for its words.
  if (!state.lesson.empty()) return false;
  switch (state.picture.shows) {
    case PictureKind::sensor:
      return false;
    case PictureKind::scene:
      return state.picture.magnified;
    case PictureKind::comparison:
      return comparison.there && state.comparison.side_by_side;
  }
  return false;
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
