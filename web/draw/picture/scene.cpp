#include "web/draw/picture/scene.h"

namespace widegate {

SceneQuad scene_quad(const SceneView& scene, const RectPx& box, SceneKind kind) {
  SceneQuad quad;
  quad.box = box;
  quad.half_width_m = static_cast<float>(scene.half_width_m);
  quad.half_height_m = static_cast<float>(scene.half_height_m);
  quad.half_tangent_x = static_cast<float>(scene.half_tangent_x);
  quad.half_tangent_y = static_cast<float>(scene.half_tangent_y);
  quad.circle_x = static_cast<float>(scene.circle_x);
  quad.circle_y = static_cast<float>(scene.circle_y);
  quad.scene = kind;
  return quad;
}

void draw_scene_quad(const DrawContext& context, const SceneQuad& quad) {
  if (quad.box.width < 1 || quad.box.height < 1) return;
  if (context.draw_scene == nullptr) {
    context.paint().fill(quad.box, context.theme.colour.mode_fill);
    return;
  }
  SceneQuad copy = quad;
  ImDrawList& list = context.paint().list();
  list.AddCallback(context.draw_scene, &copy, sizeof copy);
  list.AddCallback(ImDrawCallback_ResetRenderState, nullptr);
}

PictureData scene_outlines(const PictureData& data) {
  PictureData lines = data;
  std::erase_if(lines.outlines, [](const Outline& outline) {
    return outline.kind == OutlineKind::sensor || outline.kind == OutlineKind::circle;
  });
  lines.circle_mm = 0;
  return lines;
}

}  // namespace widegate
