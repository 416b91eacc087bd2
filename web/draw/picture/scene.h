// The scene through the lens inside its sensor mode, with the outlines on it. What is drawn
// here are boxes for the SceneDrawer; the magnifier over it is in magnifier.h.
#pragma once

#include "core/report/scene_view.h"
#include "web/draw/picture/scale.h"
#include "web/draw/widgets/draw_context.h"

namespace widegate {

/// The whole mode, without samples, in a box.
[[nodiscard]] SceneQuad scene_quad(const SceneView& scene, const RectPx& box, SceneKind kind);

/// Leaves the quad in the draw list, cut to the current clip rectangle.
void draw_scene_quad(const DrawContext& context, const SceneQuad& quad);

/// Outlines that are drawn over a scene: the mode and all frame lines.
[[nodiscard]] PictureData scene_outlines(const PictureData& data);

}  // namespace widegate
