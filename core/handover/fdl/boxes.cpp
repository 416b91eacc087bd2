// Order of operations: ASC FDL 2.0.1, section 7.4.1, and its implementer guide.
#include "core/handover/fdl/boxes.h"

#include <algorithm>
#include <cmath>

namespace widegate::fdl {
namespace {

Point measured_from(Point origin, Point anchor) {
  return {std::max(0.0, anchor.x - origin.x), std::max(0.0, anchor.y - origin.y)};
}

Box outermost(const Layers& layers) {
  for (const Layer layer : {Layer::canvas, Layer::effective, Layer::protection}) {
    const Box box = layer_box(layers, layer);
    if (!absent(box.size)) return box;
  }
  return layers.framing;
}

Size smaller(Size a, Size b) { return {std::min(a.width, b.width), std::min(a.height, b.height)}; }

double cut_side(double size, double exact_anchor, double anchor, double canvas) {
  const double visible = size - std::max(0.0, -exact_anchor);
  return std::max(0.0, std::min(visible, canvas - anchor));
}

Size cut(const Box& box, Point exact_anchor, Size canvas) {
  return {cut_side(box.size.width, exact_anchor.x, box.anchor.x, canvas.width),
          cut_side(box.size.height, exact_anchor.y, box.anchor.y, canvas.height)};
}

}  // namespace

WholeSize to_whole(Size size) {
  return {static_cast<std::int64_t>(std::llround(size.width)),
          static_cast<std::int64_t>(std::llround(size.height))};
}

Size to_size(WholeSize size) {
  return {static_cast<double>(size.width), static_cast<double>(size.height)};
}

bool absent(Size size) { return size.width == 0 && size.height == 0; }

Box layer_box(const Layers& layers, Layer layer) {
  switch (layer) {
    case Layer::canvas:
      return {{}, layers.canvas};
    case Layer::effective:
      return layers.effective;
    case Layer::protection:
      return layers.protection;
    case Layer::framing:
      break;
  }
  return layers.framing;
}

Layers fill_gaps(Layers layers, Point origin) {
  const Box outer = outermost(layers);
  if (absent(layers.canvas)) layers.canvas = outer.size;
  if (absent(layers.effective.size)) layers.effective = outer;
  for (Box* box : {&layers.effective, &layers.protection, &layers.framing}) {
    box->anchor = measured_from(origin, box->anchor);
  }
  return layers;
}

Layers scaled(const Layers& layers, double source_squeeze, Ratio scale, double target_squeeze) {
  const auto across = [&](double x) {
    return x * source_squeeze * scale.numerator / (scale.denominator * target_squeeze);
  };
  const auto down = [&](double y) { return y * scale.numerator / scale.denominator; };
  const auto box = [&](const Box& from) -> Box {
    return {{across(from.anchor.x), down(from.anchor.y)},
            {across(from.size.width), down(from.size.height)}};
  };
  return {{across(layers.canvas.width), down(layers.canvas.height)},
          box(layers.effective),
          box(layers.protection),
          box(layers.framing)};
}

ShiftedLayers shifted(Layers layers, Point offset) {
  const auto move = [&](Box& box) {
    const Point exact{box.anchor.x + offset.x, box.anchor.y + offset.y};
    box.anchor = measured_from({}, exact);
    return exact;
  };
  ShiftedLayers result;
  result.effective = move(layers.effective);
  result.protection = move(layers.protection);
  result.framing = move(layers.framing);
  result.layers = layers;
  return result;
}

Layers cropped(const ShiftedLayers& moved) {
  Layers result = moved.layers;
  const Size canvas = result.canvas;
  const bool protects = !absent(result.protection.size);
  result.effective.size = smaller(cut(result.effective, moved.effective, canvas), canvas);
  if (protects) {
    const Size inside = cut(result.protection, moved.protection, canvas);
    result.protection.size = smaller(inside, result.effective.size);
  }
  const Size parent = protects ? result.protection.size : result.effective.size;
  result.framing.size = smaller(cut(result.framing, moved.framing, canvas), parent);
  return result;
}

}  // namespace widegate::fdl
