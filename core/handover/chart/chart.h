// The frame-line chart: every frame line and protected area of a plan at the pixels of the recorded
// raster, for monitors and for a line-up chart. Here it is a list of shapes on whole pixels;
// drawing them is the business of chart_svg() and of whoever makes a bitmap.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "core/report/report.h"

namespace widegate {

/// What the chart is drawn on.
enum class ChartGround {
  transparent,  ///< White lines, to lay over a picture.
  black,        ///< White lines, for a monitor.
  white,        ///< Black lines, to print and shoot.
};

struct ChartOptions {
  ChartGround ground = ChartGround::black;
  /// Draw for the eye: the raster widened by the squeeze that is left in the file.
  bool desqueezed = false;
};

/// A filled rectangle on whole pixels.
struct ChartBar {
  std::int64_t left = 0, top = 0, width = 0, height = 0;
  friend bool operator==(const ChartBar&, const ChartBar&) = default;
};

/// One line of text; `baseline` and `left` are pixels, `size` the height of the letters' box.
/// `stretch` widens (above 1) or narrows the letters so that they look right after de-squeeze.
struct ChartLabel {
  std::int64_t left = 0, baseline = 0, size = 0;
  double stretch = 1;
  bool centred = false;  ///< `left` is the middle of the text.
  std::string text;
};

/// A ring around a point: round in the picture, an ellipse in a squeezed file.
struct ChartRing {
  double centre_x = 0, centre_y = 0, radius_x = 0, radius_y = 0, line = 1;
};

struct Chart {
  std::int64_t width_pixels = 0;
  std::int64_t height_pixels = 0;
  ChartGround ground = ChartGround::black;
  std::vector<ChartBar> bars;
  std::vector<ChartLabel> labels;
  std::vector<ChartRing> rings;
};

/// Frame lines are solid, drawn just inside the pixels that are extracted (the even rectangle);
/// protected areas are dashed; a cross and a ring mark the middle of each frame line, triangles of
/// steps the middle of the raster's sides.
/// @param report  a valid report.
[[nodiscard]] Chart frame_chart(const Report& report, const ChartOptions& options);

/// The chart as an SVG document of exactly its pixels, sharp at scale 1.
[[nodiscard]] std::string chart_svg(const Chart& chart);

}  // namespace widegate
