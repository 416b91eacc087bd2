#include "web/draw/picture/magnifier.h"

#include <algorithm>
#include <array>
#include <string>

#include "core/report/figure_text.h"
#include "web/draw/widgets/parts.h"

namespace widegate {
namespace {

constexpr float kPhotositesAcross = 16;  // In one pane of the magnifier.

/// One stage on the way from the sensor to the file that is handed over.
struct Stage {
  std::string_view name;
  std::int64_t width, height;
  const SampleGrid* grid;
};

std::array<Stage, 3> stages(const Report& report, const SceneView& scene) {
  const ResolveReport& resolve = report.resolve;
  return {
      {{"Photosites", report.mode.width_photosites, report.mode.height_photosites,
        &scene.photosites},
       {"Recorded", resolve.recorded_width_pixels, resolve.recorded_height_pixels, &scene.recorded},
       {"Delivered", resolve.deliverable_width_pixels, resolve.deliverable_height_pixels,
        &scene.delivered}}};
}

/// How many times larger than in the picture the magnifier shows the scene.
double magnification_of(const SceneView& scene, const RectPx& mode, float pane) {
  const double photosite = static_cast<double>(mode.width) / scene.photosites.columns;
  return static_cast<double>(pane) / kPhotositesAcross / std::max(photosite, 1e-9);
}

void draw_pane(const DrawContext& context, const SceneView& scene, const Stage& stage,
               const RectPx& box, const RectPx& mode, double magnified) {
  const PictureState& state = context.state.picture;
  const Paint paint = context.paint();
  SceneQuad quad = scene_quad(scene, box, state.scene);
  quad.middle_x = state.spot_x;
  quad.middle_y = state.spot_y;
  quad.reach_x = static_cast<float>(box.width / (magnified * mode.width));
  quad.reach_y = static_cast<float>(box.height / (magnified * mode.height));
  quad.columns = static_cast<float>(stage.grid->columns);
  quad.rows = static_cast<float>(stage.grid->rows);
  quad.left = static_cast<float>(stage.grid->left);
  quad.top = static_cast<float>(stage.grid->top);
  draw_scene_quad(context, quad);
  paint.outline(box, context.theme.colour.edge, 1);
}

}  // namespace

RectPx take_magnifier(const DrawContext& context, RectPx& room) {
  if (!context.state.picture.magnified || room.height < 110 || room.width < 150) return {};
  const float gap = context.theme.space(1);
  const float height = std::clamp(room.height * 0.52F, 84.0F, 280.0F * context.theme.scale);
  const float width = std::min(room.width - 2 * gap, 3.4F * height);
  room.height -= height;
  return {room.x + (room.width - width) / 2, bottom(room), width, height - gap};
}

void follow_spot(DrawContext& context, const RectPx& area, const RectPx& mode) {
  constexpr float kFine = 0.25F;  // Of the finger's way: one photosite is far below a pixel.
  PictureState& state = context.state.picture;
  const Press press = pressable("spot", area);
  const ImGuiIO& io = ImGui::GetIO();
  const ImVec2 half = {std::max(1.0F, mode.width / 2), std::max(1.0F, mode.height / 2)};
  const bool moved = io.MouseDragMaxDistanceSqr[0] > 36;
  if (press.clicked && !moved) {
    state.spot_x = (io.MousePos.x - centre(mode).x) / half.x;
    state.spot_y = (io.MousePos.y - centre(mode).y) / half.y;
  } else if (press.held && moved) {
    state.spot_x += kFine * io.MouseDelta.x / half.x;
    state.spot_y += kFine * io.MouseDelta.y / half.y;
  }
  state.spot_x = std::clamp(state.spot_x, -1.0F, 1.0F);
  state.spot_y = std::clamp(state.spot_y, -1.0F, 1.0F);
}

void draw_spot(const DrawContext& context, const RectPx& mode) {
  const PictureState& state = context.state.picture;
  const Paint paint = context.paint();
  const ImVec2 at = {centre(mode).x + state.spot_x * mode.width / 2,
                     centre(mode).y + state.spot_y * mode.height / 2};
  const float radius = 9 * context.theme.scale;
  paint.list().AddCircle(at, radius + 1.5F, ink(context.theme.colour.page), 32, 4);
  paint.list().AddCircle(at, radius + 1.5F, ink(context.theme.colour.focus), 32, 2);
}

void draw_magnifier(const DrawContext& context, const SceneView& scene, const RectPx& mode,
                    const RectPx& box) {
  if (box.width < 60 || scene.photosites.columns <= 0) return;
  const Paint paint = context.paint();
  const Palette& colour = context.theme.colour;
  paint.fill(box, colour.panel, 8);
  paint.outline(box, colour.edge, context.theme.line_width, 8);
  const float gap = context.theme.space(1.5F);
  const float line = paint.line_height(TextStyle::caption);
  const RectPx inner = inset(box, gap);
  const float pane = (inner.width - 2 * gap) / 3;
  const double magnified = magnification_of(scene, mode, pane);
  paint.text(
      {inner.x, inner.y, inner.width, line}, Align::left, TextStyle::caption, colour.quiet,
      "Magnified " + short_number(magnified, magnified < 10 ? 1 : 0) + " times; drag in the scene");
  const bool two_lines = inner.height > 6 * line;
  const float captions = two_lines ? 2 * line : line;
  float x = inner.x;
  for (const Stage& stage : stages(context.app.report(), scene)) {
    const RectPx view = {x, inner.y + line, pane, std::max(1.0F, inner.height - line - captions)};
    draw_pane(context, scene, stage, view, mode, magnified);
    const std::string name(stage.name);
    paint.text({x, bottom(view), pane, line}, Align::left, TextStyle::caption, colour.text,
               two_lines ? name : name + " " + std::to_string(stage.width));
    if (two_lines) {
      paint.text({x, bottom(view) + line, pane, line}, Align::left, TextStyle::caption,
                 colour.quiet, std::to_string(stage.width) + " × " + std::to_string(stage.height));
    }
    x += pane + gap;
  }
}

}  // namespace widegate
