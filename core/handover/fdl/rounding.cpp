// Tie rules and half-shifts are those of the vectors published beside the standard (ascmitc/fdl).
#include "core/handover/fdl/rounding.h"

#include <algorithm>
#include <cmath>

namespace widegate::fdl {
namespace {

double nearest(double magnitude, Parity parity) {
  if (parity == Parity::even) return 2 * std::floor(magnitude / 2 + 0.5);
  return std::nearbyint(magnitude);
}

/// One axis of one box, so that both axes share one formula.
struct Span {
  double anchor = 0;
  double size = 0;
};

struct AxisLayers {
  double canvas = 0;
  Span effective, protection, framing;
};

AxisLayers across(const Layers& l) {
  return {l.canvas.width,
          {l.effective.anchor.x, l.effective.size.width},
          {l.protection.anchor.x, l.protection.size.width},
          {l.framing.anchor.x, l.framing.size.width}};
}

AxisLayers down(const Layers& l) {
  return {l.canvas.height,
          {l.effective.anchor.y, l.effective.size.height},
          {l.protection.anchor.y, l.protection.size.height},
          {l.framing.anchor.y, l.framing.size.height}};
}

Box joined(Span x, Span y) { return {{x.anchor, y.anchor}, {x.size, y.size}}; }

double rounded_canvas(double exact, RoundRule rule, AxisLimit limit) {
  if (limit.fixed) return exact;
  const double whole = round_value(exact, rule);
  return limit.maximum > 0 ? std::min(whole, limit.maximum) : whole;
}

/// The anchor wins, the size shrinks.
Span kept_inside(Span span, double canvas, double effective) {
  span.anchor = std::clamp(span.anchor, 0.0, canvas);
  span.size = std::min({span.size, canvas - span.anchor, effective});
  return span;
}

/// Rounds one axis in place; returns how far the picture moved.
double round_axis(AxisLayers& axis, RoundRule rule, AxisLimit limit) {
  const double exact = snapped(axis.canvas);
  const double canvas = rounded_canvas(exact, rule, limit);
  const double shift = (canvas - exact) / 2;
  const double wanted = snapped(axis.effective.size);
  const double whole = std::ceil(wanted);
  const double effective = std::min(whole, canvas);
  const double anchor = axis.effective.anchor + shift - (whole - wanted) / 2;
  axis.canvas = canvas;
  axis.effective = {std::clamp(anchor, 0.0, canvas - effective), effective};
  axis.protection.anchor += shift;
  axis.framing.anchor += shift;
  axis.protection = kept_inside(axis.protection, canvas, effective);
  axis.framing = kept_inside(axis.framing, canvas, effective);
  return shift;
}

}  // namespace

double snapped(double value) {
  const double whole = std::nearbyint(value);
  return std::fabs(value - whole) <= kSnapPixels ? whole : value;
}

double round_value(double value, RoundRule rule) {
  const double unit = rule.parity == Parity::even ? 2 : 1;
  const double magnitude = snapped(std::fabs(value));
  double result = 0;
  switch (rule.mode) {
    case RoundMode::up:
      result = unit * std::ceil(magnitude / unit);
      break;
    case RoundMode::down:
      result = unit * std::floor(magnitude / unit);
      break;
    case RoundMode::round:
      result = nearest(magnitude, rule.parity);
      break;
  }
  return result == 0 ? 0 : std::copysign(result, value);
}

RoundedLayers rounded(const Layers& layers, RoundRule rule, AxisLimit across_limit,
                      AxisLimit down_limit) {
  AxisLayers x = across(layers);
  AxisLayers y = down(layers);
  RoundedLayers result;
  result.shift.x = round_axis(x, rule, across_limit);
  result.shift.y = round_axis(y, rule, down_limit);
  result.layers.canvas = {x.canvas, y.canvas};
  result.layers.effective = joined(x.effective, y.effective);
  // A missing protection keeps no anchor: it must stay missing.
  if (!absent(layers.protection.size))
    result.layers.protection = joined(x.protection, y.protection);
  result.layers.framing = joined(x.framing, y.framing);
  return result;
}

}  // namespace widegate::fdl
