#include "core/handover/chart/chart_png.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <vector>

#include "core/encode/png.h"
#include "core/encode/stroke_letters.h"

namespace widegate {
namespace {

constexpr std::int64_t kLongestSide = 65535;
constexpr double kLevels = 15;
constexpr double kCapitalShare = 0.7;   ///< Height of a capital over the size of the letters.
constexpr double kStrokeShare = 0.105;  ///< Width of a stroke over the size of the letters.

using Row = std::vector<std::uint8_t>;

/// A soft shape: how far a pixel's centre lies outside it decides its level.
struct Stroke {
  double x0 = 0, y0 = 0, x1 = 0, y1 = 0;  ///< Pixels.
  double half = 0;                        ///< Half its width.
  double stretch = 1;                     ///< Pixels across that look like one pixel down.
};

double distance_to(const Stroke& stroke, double x, double y) {
  const double dx = (stroke.x1 - stroke.x0) / stroke.stretch;
  const double dy = stroke.y1 - stroke.y0;
  const double px = (x - stroke.x0) / stroke.stretch;
  const double py = y - stroke.y0;
  const double length = dx * dx + dy * dy;
  const double along = length > 0 ? std::clamp((px * dx + py * dy) / length, 0.0, 1.0) : 0;
  return std::hypot(px - along * dx, py - along * dy);
}

/// Level of a pixel whose centre lies `outside` pixels outside a shape's edge.
std::uint8_t level(double outside) {
  return static_cast<std::uint8_t>(std::lround(kLevels * std::clamp(0.5 - outside, 0.0, 1.0)));
}

/// Calls paint(x, middle of the pixel) for the pixels of a row between two places.
template <class Level>
void soften(Row& row, double from, double to, Level level_at) {
  const auto last = static_cast<double>(row.size()) - 1;
  const auto begin = static_cast<std::size_t>(std::clamp(std::floor(from) - 1, 0.0, last));
  const auto end = static_cast<std::size_t>(std::clamp(std::ceil(to) + 1, 0.0, last));
  for (std::size_t x = begin; x <= end; ++x) {
    row[x] = std::max(row[x], level_at(static_cast<double>(x) + 0.5));
  }
}

std::vector<Stroke> label_strokes(const Chart& chart) {
  std::vector<Stroke> strokes;
  for (const ChartLabel& label : chart.labels) {
    const auto size = static_cast<double>(label.size);
    const double unit = size * kCapitalShare / kLetterHeight;
    const double across = unit * label.stretch;
    const double width = text_strokes_width(label.text) * across;
    const double left = static_cast<double>(label.left) - (label.centred ? width / 2 : 0);
    const double top = static_cast<double>(label.baseline) - kLetterHeight * unit;
    for (const LetterStroke& each : text_strokes(label.text)) {
      strokes.push_back({.x0 = left + each.x0 * across,
                         .y0 = top + each.y0 * unit,
                         .x1 = left + each.x1 * across,
                         .y1 = top + each.y1 * unit,
                         .half = size * kStrokeShare / 2,
                         .stretch = label.stretch});
    }
  }
  return strokes;
}

void draw_strokes(Row& row, const std::vector<Stroke>& strokes, double y) {
  for (const Stroke& stroke : strokes) {
    const double reach = stroke.half + 1;
    if (y < std::min(stroke.y0, stroke.y1) - reach) continue;
    if (y > std::max(stroke.y0, stroke.y1) + reach) continue;
    const double wide = reach * std::max(1.0, stroke.stretch);
    soften(row, std::min(stroke.x0, stroke.x1) - wide, std::max(stroke.x0, stroke.x1) + wide,
           [&](double x) { return level(distance_to(stroke, x, y) - stroke.half); });
  }
}

void draw_rings(Row& row, const std::vector<ChartRing>& rings, double y) {
  for (const ChartRing& ring : rings) {
    if (ring.radius_x <= 0 || std::abs(y - ring.centre_y) > ring.radius_y + ring.line) continue;
    const double stretch = ring.radius_x / ring.radius_y;
    const double reach = ring.radius_x + ring.line * std::max(1.0, stretch);
    soften(row, ring.centre_x - reach, ring.centre_x + reach, [&](double x) {
      const double from_centre = std::hypot((x - ring.centre_x) / stretch, y - ring.centre_y);
      return level(std::abs(from_centre - ring.radius_y) - ring.line / 2);
    });
  }
}

void draw_bars(Row& row, const std::vector<ChartBar>& bars, std::int64_t y) {
  const auto width = static_cast<std::int64_t>(row.size());
  for (const ChartBar& bar : bars) {
    if (y < bar.top || y >= bar.top + bar.height) continue;
    const auto from = static_cast<std::size_t>(std::clamp<std::int64_t>(bar.left, 0, width));
    const auto to =
        static_cast<std::size_t>(std::clamp<std::int64_t>(bar.left + bar.width, 0, width));
    for (std::size_t x = from; x < to; ++x) row[x] = static_cast<std::uint8_t>(kLevels);
  }
}

PngPalette palette_of(ChartGround ground) {
  PngPalette palette;
  for (std::size_t i = 0; i < palette.size(); ++i) {
    const auto shade = static_cast<std::uint8_t>(i * 17);
    const auto inverse = static_cast<std::uint8_t>(255 - shade);
    switch (ground) {
      case ChartGround::black:
        palette[i] = {shade, shade, shade, 255};
        break;
      case ChartGround::white:
        palette[i] = {inverse, inverse, inverse, 255};
        break;
      case ChartGround::transparent:
        palette[i] = {255, 255, 255, shade};
        break;
    }
  }
  return palette;
}

}  // namespace

std::string chart_png(const Chart& chart) {
  const std::int64_t width = chart.width_pixels;
  const std::int64_t height = chart.height_pixels;
  if (width < 1 || height < 1 || width > kLongestSide || height > kLongestSide) return {};
  PngWriter png(static_cast<std::uint32_t>(width), static_cast<std::uint32_t>(height),
                palette_of(chart.ground));
  const std::vector<Stroke> strokes = label_strokes(chart);
  Row row(static_cast<std::size_t>(width));
  for (std::int64_t y = 0; y < height; ++y) {
    std::fill(row.begin(), row.end(), std::uint8_t{0});
    const double middle = static_cast<double>(y) + 0.5;
    draw_strokes(row, strokes, middle);
    draw_rings(row, chart.rings, middle);
    draw_bars(row, chart.bars, y);
    png.add_row(row);
  }
  return png.finish();
}

}  // namespace widegate
