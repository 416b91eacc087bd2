#include "web/draw/picture/scale.h"

#include <algorithm>
#include <cmath>

namespace widegate {
namespace {

constexpr float kMostZoom = 12;
constexpr double kAroundOutlines = 1.12;  // With a circle that is too large to be shown.

double stretch(double squeeze, const PictureState& state) {
  return 1 + (squeeze - 1) * static_cast<double>(state.desqueeze);
}

/// Diameter that the sensor mode asks for, in mm.
double mode_diagonal(const PictureData& data) {
  for (const Outline& outline : data.outlines) {
    if (outline.kind == OutlineKind::mode) return std::hypot(outline.width_mm, outline.height_mm);
  }
  return 0;
}

}  // namespace

PictureExtent area_extent(const PictureData& data) {
  PictureExtent extent;
  for (const Outline& outline : data.outlines) {
    if (outline.kind == OutlineKind::circle) continue;
    extent.x_mm = std::max(extent.x_mm, outline.width_mm / 2);
    extent.y_mm = std::max(extent.y_mm, outline.height_mm / 2);
  }
  return extent;
}

PictureExtent picture_extent(const PictureData& data) {
  PictureExtent extent = area_extent(data);
  const double radius = data.circle_mm / 2;
  const bool whole = data.circle_mm <= kWholeCircle * mode_diagonal(data);
  const double most = whole ? radius : kAroundOutlines;
  extent.x_mm = std::max(extent.x_mm, whole ? most : most * extent.x_mm);
  extent.y_mm = std::max(extent.y_mm, whole ? most : most * extent.y_mm);
  return extent;
}

PictureScale fit_picture(const PictureExtent& extent, double squeeze, const RectPx& area,
                         const PictureState& state) {
  const double wide = stretch(squeeze, state);
  const double scale = std::max(
      0.01, std::min(area.width / (2 * extent.x_mm * wide), area.height / (2 * extent.y_mm)));
  PictureScale result;
  result.origin = {area.x + area.width / 2 + state.pan_x, area.y + area.height / 2 + state.pan_y};
  result.y = scale * static_cast<double>(state.zoom);
  result.x = result.y * wide;
  return result;
}

RectPx used_area(const PictureExtent& extent, double squeeze, const RectPx& area,
                 const PictureState& state) {
  PictureState whole = state;
  whole.zoom = 1;
  whole.pan_x = whole.pan_y = 0;
  const double reach = 2 * extent.x_mm * fit_picture(extent, squeeze, area, whole).x;
  const float width = std::min(area.width, static_cast<float>(reach) + 12);
  return {area.x + (area.width - width) / 2, area.y, width, area.height};
}

void zoom_picture(PictureState& state, const RectPx& box, float x, float y, float factor) {
  if (!(factor > 0) || !std::isfinite(factor)) return;
  const float before = state.zoom;
  state.zoom = std::clamp(before * factor, 1.0F, kMostZoom);
  const float ratio = state.zoom / before;
  const float from_x = x - (box.x + box.width / 2);
  const float from_y = y - (box.y + box.height / 2);
  state.pan_x = from_x + (state.pan_x - from_x) * ratio;
  state.pan_y = from_y + (state.pan_y - from_y) * ratio;
  const float room_x = box.width * (state.zoom - 1) / 2;
  const float room_y = box.height * (state.zoom - 1) / 2;
  state.pan_x = std::clamp(state.pan_x, -room_x, room_x);
  state.pan_y = std::clamp(state.pan_y, -room_y, room_y);
}

}  // namespace widegate
