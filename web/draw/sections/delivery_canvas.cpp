#include "web/draw/sections/delivery_canvas.h"

#include <algorithm>
#include <array>
#include <string>

#include "web/draw/picture/outline_paint.h"
#include "web/draw/widgets/parts.h"

namespace widegate {
namespace {

/// How a layer is drawn; the roles are those of the drawing of the sensor.
struct Stroke {
  std::string_view key;  ///< Of its figure.
  Colour Palette::*colour;
  float width = 1.5F;
  bool dashed = false;
};
constexpr auto kStrokes = std::to_array<Stroke>({
    {"delivery.canvas", &Palette::mode, 1.5F, false},
    {"delivery.effective", &Palette::circle, 1.5F, false},
    {"delivery.protection", &Palette::protection, 1.5F, true},
    {"delivery.framing", &Palette::frame, 2.5F, false},
});

const Stroke* stroke_of(std::string_view key) {
  for (const Stroke& stroke : kStrokes) {
    if (stroke.key == key) return &stroke;
  }
  return nullptr;
}

/// From pixels of the canvas to CSS pixels of the screen.
struct OnScreen {
  RectPx canvas;
  float across = 1, down = 1;

  [[nodiscard]] RectPx box(const fdl::Box& box) const {
    return {canvas.x + static_cast<float>(box.anchor.x) * across,
            canvas.y + static_cast<float>(box.anchor.y) * down,
            static_cast<float>(box.size.width) * across,
            static_cast<float>(box.size.height) * down};
  }
};

/// The canvas as large as the column and a part of the screen's height allow.
OnScreen place(const DrawContext& context, const fdl::AppliedTemplate& applied, const RectPx& room,
               float most_height) {
  const auto width = static_cast<float>(applied.layers.canvas.width);
  const auto height = static_cast<float>(applied.layers.canvas.height);
  const float squeeze = static_cast<float>(applied.squeeze);
  const float stretch = 1 + (squeeze - 1) * context.state.picture.desqueeze;
  const float scale = std::min(room.width / (width * stretch), most_height / height);
  OnScreen on{{}, scale * stretch, scale};
  on.canvas = {room.x + (room.width - width * on.across) / 2, room.y, width * on.across,
               height * on.down};
  return on;
}

/// Slanted lines over the whole canvas; the picture is laid over them afterwards.
void hatch(const Paint& paint, const RectPx& box, Colour colour) {
  constexpr float kStep = 7;
  ImDrawList& list = paint.list();
  list.PushClipRect({box.x, box.y}, {right(box), bottom(box)}, true);
  const int lines = static_cast<int>((box.width + box.height) / kStep) + 1;
  for (int i = 0; i < lines; ++i) {
    const float x = box.x - box.height + kStep * static_cast<float>(i);
    paint.line({x, bottom(box)}, {x + box.height, box.y}, colour, 1);
  }
  list.PopClipRect();
}

void draw_stroke(const Paint& paint, const RectPx& box, const Stroke& stroke) {
  const Palette& palette = paint.theme().colour;
  const float width = stroke.width * (paint.theme().line_width > 1 ? 1.4F : 1.0F);
  if (stroke.dashed) {
    dashed_box(paint, box, palette.*stroke.colour, width);
  } else {
    paint.outline(box, palette.*stroke.colour, width);
  }
}

void draw_swatch(const Paint& paint, const Stroke& stroke, const RectPx& box) {
  const Colour colour = paint.theme().colour.*stroke.colour;
  const float y = centre(box).y;
  const float width = stroke.width * (paint.theme().line_width > 1 ? 1.4F : 1.0F);
  if (!stroke.dashed) return paint.line({box.x, y}, {right(box), y}, colour, width);
  constexpr int kDashes = 3;
  const float gap = box.width / 4;
  for (int i = 0; i < kDashes; ++i) {
    const float x = box.x + 1.5F * gap * static_cast<float>(i);
    paint.line({x, y}, {std::min(right(box), x + gap), y}, colour, width);
  }
}

/// The figure with this key, or nullptr.
const fdl::DeliveryFigure* find_figure(const fdl::Delivery& delivery, std::string_view key) {
  for (const fdl::DeliveryFigure& figure : delivery.figures) {
    if (figure.key == key) return &figure;
  }
  return nullptr;
}

/// Two lines: name and value, and below what is said more about it.
void draw_row(DrawContext& context, const fdl::DeliveryFigure& figure, std::string_view more) {
  const Paint paint = context.paint();
  const Palette& colour = context.theme.colour;
  const float line = paint.line_height(TextStyle::strong);
  const float small = more.empty() ? 0 : paint.line_height(TextStyle::caption);
  const float pad = context.theme.space(1.5F);
  const RectPx row = take_row(line + small + 2 * pad);
  const float swatch = 20 * context.theme.scale;
  const float left = swatch + context.theme.space(2);
  const RectPx first = {row.x, row.y + pad, row.width, line};
  if (const Stroke* stroke = stroke_of(figure.key)) {
    draw_swatch(paint, *stroke, {first.x, first.y, swatch, line});
  } else if (figure.key == "delivery.padding") {
    const RectPx box = {first.x, first.y + 2, swatch, std::max(1.0F, line - 4)};
    hatch(paint, box, colour.edge);
    paint.outline(box, colour.edge, 1);
  }
  const float unit = figure.unit.empty()
                         ? 0
                         : paint.width(TextStyle::caption, figure.unit) + context.theme.space(1);
  const float value = std::min(row.width * 0.62F, paint.width(TextStyle::strong, figure.text) + 1);
  const float value_x = right(row) - unit - value;
  const bool wide = figure.key == "delivery.padding";
  const float label = (wide ? right(row) : value_x - context.theme.space(2)) - row.x - left;
  paint.text({first.x + left, first.y, std::max(0.0F, label), line}, Align::left, TextStyle::body,
             colour.quiet, figure.label);
  if (!wide) {
    paint.text({value_x, first.y, value, line}, Align::right, TextStyle::strong, colour.text,
               figure.text);
    paint.text({right(row) - unit, first.y + 1, unit, line}, Align::right, TextStyle::caption,
               colour.quiet, figure.unit);
  }
  const std::string below = wide ? figure.text + " px" : std::string(more);
  if (!below.empty()) {
    paint.text({first.x + left, first.y + line, std::max(0.0F, row.width - left), small},
               Align::left, TextStyle::caption, colour.quiet, below);
  }
  paint.line({row.x, bottom(row)}, {right(row), bottom(row)}, colour.line, 1);
}

}  // namespace

void draw_delivery_canvas(DrawContext& context, const fdl::Delivery& delivery) {
  const Paint paint = context.paint();
  const Palette& colour = context.theme.colour;
  const fdl::Layers& layers = delivery.applied.layers;
  const float margin = context.theme.space(3);
  const float most = std::clamp(context.layout.screen.height * 0.36F, 120.0F, 340.0F);
  const float width = ImGui::GetContentRegionAvail().x;
  const OnScreen measured =
      place(context, delivery.applied, {0, 0, std::max(1.0F, width - 2 * margin), 0}, most);
  const RectPx row = take_row(measured.canvas.height + 2 * margin);
  paint.fill(row, colour.picture, 12 * context.theme.scale);
  if (context.theme.line_width > 1) paint.outline(row, colour.edge, 1, 12 * context.theme.scale);
  const OnScreen on = place(context, delivery.applied,
                            {row.x + margin, row.y + margin, row.width - 2 * margin, 0}, most);
  hatch(paint, on.canvas, colour.edge);
  paint.fill(on.box(delivery.picture), colour.mode_fill);
  draw_stroke(paint, on.canvas, kStrokes[0]);
  draw_stroke(paint, on.box(layers.effective), kStrokes[1]);
  if (!fdl::absent(layers.protection.size)) {
    draw_stroke(paint, on.box(layers.protection), kStrokes[2]);
  }
  draw_stroke(paint, on.box(layers.framing), kStrokes[3]);
  take_space(context, 2);
}

void draw_delivery_figures(DrawContext& context, const fdl::Delivery& delivery) {
  for (const fdl::DeliveryFigure& figure : delivery.figures) {
    if (figure.key.ends_with(".at")) continue;
    const auto* at = find_figure(delivery, std::string(figure.key) + ".at");
    std::string more;
    if (at != nullptr) more = "from left, top: " + at->text + " px";
    if (figure.key == "delivery.padding") more = figure.text;
    draw_row(context, figure, more);
  }
  take_space(context, 3);
}

}  // namespace widegate
