#include "web/draw/picture/compare.h"

#include <algorithm>
#include <array>
#include <string>

#include "web/draw/picture/outline_paint.h"
#include "web/draw/picture/scene.h"
#include "web/draw/widgets/parts.h"
#include "web/state/comparison_state.h"

namespace widegate {
namespace {

/// A wide button with words, of the same make as the switch under the picture.
bool word_button(const DrawContext& context, std::string_view id, const RectPx& box,
                 std::string_view words) {
  const Paint paint = context.paint();
  const Press press = pressable(id, box);
  const Palette& colour = context.theme.colour;
  const float radius = 10 * context.theme.scale;
  const bool touched = press.held || press.hovered;
  paint.fill(box, touched ? surface(context.theme, press) : colour.panel, radius);
  const bool heavy = context.theme.line_width > 1;
  paint.outline(box, heavy ? colour.edge : colour.line, heavy ? 2 : 1, radius);
  paint.text(box, Align::centre, TextStyle::strong, colour.text, words);
  return press.clicked;
}

/// Nothing to compare with yet: says so, and offers both ways.
void draw_beginning(DrawContext& context) {
  const Paint paint = context.paint();
  const RectPx room = inset(context.layout.drawing, context.theme.space(4));
  constexpr std::string_view kWords = "Nothing to compare with yet.";
  const float line = paint.line_height(TextStyle::body) + context.theme.space(2);
  const float button = kTouchCssPx * context.theme.scale;
  const float gap = context.theme.space(2);
  const float width = std::min(room.width, 300 * context.theme.scale);
  const float x = room.x + (room.width - width) / 2;
  float y = room.y + std::max(0.0F, (room.height - line - 2 * button - gap) / 2);
  paint.text({x, y, width, line}, Align::centre, TextStyle::body, context.theme.colour.quiet,
             kWords);
  y += line;
  if (word_button(context, "keep", {x, y, width, button}, "Keep this plan to compare")) {
    context.state.asked_action = kKeepToCompare;
  }
  y += button + gap;
  if (word_button(context, "choose", {x, y, width, button}, "Choose another format")) {
    context.state.jump = kCompareSection;
  }
}

/// The circle of the compared lens has its own line only where it is another one.
bool adds_circle(const PictureData& all, const Outline& outline) {
  if (outline.kind != OutlineKind::circle) return false;
  for (const Outline& other : all.outlines) {
    if (other.kind == OutlineKind::circle && other.width_mm == outline.width_mm) return false;
  }
  return true;
}

/// Mode, circle and frame lines of one format as outlines of the comparison.
void add_lines(PictureData& all, const PictureData& one, bool second) {
  for (const Outline& outline : one.outlines) {
    const bool mode = outline.kind == OutlineKind::mode;
    const bool circle = outline.kind == OutlineKind::circle;
    if (!mode && outline.kind != OutlineKind::frame && !adds_circle(all, outline)) continue;
    Outline line = outline;
    line.key = (second ? "second-" : "first-") + outline.key;
    if (!circle || second) {
      line.label = std::string(second ? "Compared, " : "This plan, ") +
                   (mode ? "mode" : (circle ? "circle" : "frame"));
    }
    if (second && !circle) line.kind = mode ? OutlineKind::second_mode : OutlineKind::second_frame;
    all.outlines.push_back(std::move(line));
  }
}

void draw_overlay(DrawContext& context) {
  PictureData all;
  add_lines(all, context.view.picture, false);
  add_lines(all, context.view.comparison.second_picture, true);
  PictureState still;
  still.zoom = context.state.picture.zoom;
  still.pan_x = context.state.picture.pan_x;
  still.pan_y = context.state.picture.pan_y;
  const float labels = std::min(context.theme.space(36), context.layout.drawing.width * 0.4F);
  RectPx box = inset(context.layout.drawing, context.theme.space(2));
  box.width = std::max(0.0F, box.width - labels);
  all.circle_mm = context.view.picture.circle_mm;
  const PictureExtent extent = picture_extent(all);
  const RectPx area = used_area(extent, 1, box, still);
  const PictureScale scale = fit_picture(extent, 1, area, still);
  ImGui::PushClipRect({context.layout.picture.x, context.layout.drawing.y},
                      {right(area) + 4, bottom(context.layout.drawing)}, true);
  for (const Outline& outline : all.outlines) {
    if (outline.kind == OutlineKind::mode) {
      context.paint().fill(scale.box(outline), context.theme.colour.mode_fill);
    }
  }
  for (const Outline& outline : all.outlines) draw_outline(context, outline, scale);
  ImGui::PopClipRect();
  draw_labels(context, all, scale, context.layout.drawing, area, labels);
  context.view.mirror.surfaces = {area};
}

/// One of two scenes: which report, which lines, whose words.
struct Side {
  const Report* report;
  const PictureData* lines;
  std::string_view title;
  std::string_view name;  ///< Of the format.
  SceneView scene;
  double aspect = 1;  ///< Of the mode as it is drawn, with as much of the de-squeeze as there is.
};

Side make_side(const Report& report, const PictureData& lines, std::string_view title,
               std::string_view name, const PictureState& state) {
  Side side{&report, &lines, title, name, scene_view(report)};
  const double stretch = 1 + (report.mode.squeeze - 1) * static_cast<double>(state.desqueeze);
  side.aspect = report.mode.width_mm / report.mode.height_mm * stretch;
  return side;
}

/// Title and name in two lines; returns their height.
float draw_side_words(const DrawContext& context, const Side& side, const RectPx& column) {
  const Paint paint = context.paint();
  const float line = paint.line_height(TextStyle::caption);
  paint.text({column.x, column.y, column.width, line}, Align::left, TextStyle::caption,
             context.theme.colour.text, side.title);
  paint.text({column.x, column.y + line, column.width, line}, Align::left, TextStyle::caption,
             context.theme.colour.quiet, side.name);
  return 2 * line;
}

void draw_side(const DrawContext& context, const Side& side, const RectPx& column,
               double px_per_m) {
  const float line = draw_side_words(context, side, column);
  const auto height = static_cast<float>(2 * side.scene.half_height_m * px_per_m);
  const auto width = static_cast<float>(height * side.aspect);
  const RectPx box = {column.x + (column.width - width) / 2,
                      column.y + line + (column.height - line - height) / 2, width, height};
  draw_scene_quad(context, scene_quad(side.scene, box, context.state.picture.scene));
  PictureScale scale;
  scale.origin = centre(box);
  scale.y = static_cast<double>(height) / side.report->mode.height_mm;
  scale.x = static_cast<double>(width) / side.report->mode.width_mm;
  const PictureData lines = scene_outlines(*side.lines);
  for (const Outline& outline : lines.outlines) draw_outline(context, outline, scale);
}

/// Both scenes with the same number of pixels for a metre.
void draw_sides(DrawContext& context) {
  const PictureState& state = context.state.picture;
  const Comparison& comparison = context.view.comparison;
  const std::array<Side, 2> sides = {make_side(context.app.report(), context.view.picture,
                                               "This plan", comparison.first_name, state),
                                     make_side(comparison.second, comparison.second_picture,
                                               "Compared", comparison.second_name, state)};
  const RectPx room = inset(context.layout.drawing, context.theme.space(2));
  const float gap = context.theme.space(3);
  const float line = 2 * context.paint().line_height(TextStyle::caption) + 4;
  const bool stacked = room.height > 1.1F * room.width;
  const float width = stacked ? room.width : (room.width - gap) / 2;
  const float height = stacked ? (room.height - gap) / 2 : room.height;
  double px_per_m = 1e9;
  for (const Side& side : sides) {
    const double tall = 2 * std::max(1e-9, side.scene.half_height_m);
    px_per_m =
        std::min({px_per_m, std::max(1.0F, height - line) / tall, width / (tall * side.aspect)});
  }
  for (std::size_t i = 0; i < sides.size(); ++i) {
    const float step = i == 0 ? 0.0F : (stacked ? height : width) + gap;
    const RectPx column = {room.x + (stacked ? 0 : step), room.y + (stacked ? step : 0), width,
                           height};
    draw_side(context, sides[i], column, px_per_m);
  }
  context.view.mirror.surfaces.clear();
}

}  // namespace

void draw_comparison(DrawContext& context) {
  if (!context.view.comparison.there) {
    context.view.mirror.surfaces.clear();
    return draw_beginning(context);
  }
  if (context.state.comparison.side_by_side) {
    draw_sides(context);
  } else {
    draw_overlay(context);
  }
}

}  // namespace widegate
