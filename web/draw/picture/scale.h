// How large the picture is drawn: from millimetres on the sensor to CSS pixels of the screen. Pure
// functions of numbers; nothing is drawn here.
#pragma once

#include "imgui.h"
#include "web/state/screen_state.h"
#include "web/view/outlines.h"

namespace widegate {

/// An image circle up to this many times the mode's diagonal is shown whole.
inline constexpr double kWholeCircle = 1.6;

/// Millimetres on the sensor about the middle of the mode, on the screen.
struct PictureScale {
  ImVec2 origin{};  ///< Middle of the mode on the screen.
  double x = 1;     ///< CSS pixels for a millimetre; differs from y when de-squeezed.
  double y = 1;

  [[nodiscard]] ImVec2 at(double x_mm, double y_mm) const {
    return {origin.x + static_cast<float>(x * x_mm), origin.y + static_cast<float>(y * y_mm)};
  }
  [[nodiscard]] RectPx box(const Outline& outline) const {
    const ImVec2 low = at(outline.left_mm, outline.top_mm);
    return {low.x, low.y, static_cast<float>(x * outline.width_mm),
            static_cast<float>(y * outline.height_mm)};
  }
};

/// Half sizes of what is shown when nothing is zoomed, in mm about the middle of the mode.
struct PictureExtent {
  double x_mm = 1;
  double y_mm = 1;
};

/// All outlines; the image circle too unless it is more than kWholeCircle times as large as the
/// mode: then a little of what lies around the outlines, with the part of the circle that is there.
[[nodiscard]] PictureExtent picture_extent(const PictureData& data);

/// Only the outlines of areas, not the circle.
[[nodiscard]] PictureExtent area_extent(const PictureData& data);

/// Fits an extent into a box of the screen, widened by the de-squeeze, then zoomed and moved as the
/// state has it.
[[nodiscard]] PictureScale fit_picture(const PictureExtent& extent, double squeeze,
                                       const RectPx& area, const PictureState& state);

/// The part of the box that the extent takes up when nothing is zoomed, in the box's middle.
[[nodiscard]] RectPx used_area(const PictureExtent& extent, double squeeze, const RectPx& area,
                               const PictureState& state);

/// Zooms about a point of the screen; the whole picture is the least.
void zoom_picture(PictureState& state, const RectPx& box, float x, float y, float factor);

}  // namespace widegate
