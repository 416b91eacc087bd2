#include "core/handover/chart/chart.h"

#include <algorithm>
#include <cmath>

#include "core/base/number_text.h"
#include "core/encode/markup.h"

namespace widegate {
namespace {

constexpr std::int64_t kLinesPerHeight = 540;  ///< Line width is the height over this.
constexpr std::int64_t kLabelsPerHeight = 60;  ///< Letter size is the height over this.
constexpr std::int64_t kMarksPerHeight = 24;   ///< Size of marks is the height over this.
constexpr std::int64_t kDashLines = 8;         ///< Dashes are this many line widths long.

/// Collects shapes; horizontal positions and widths pass through `stretch` for a de-squeezed chart.
class Drafter {
 public:
  Drafter(const Report& report, const ChartOptions& options)
      : stretch_(options.desqueezed ? report.resolve.recorded_squeeze : 1),
        look_(options.desqueezed ? 1 : report.resolve.recorded_squeeze) {
    chart_.width_pixels = across(report.resolve.recorded_width_pixels);
    chart_.height_pixels = report.resolve.recorded_height_pixels;
    chart_.ground = options.ground;
    line_ = std::max<std::int64_t>(2, chart_.height_pixels / kLinesPerHeight);
    mark_ = std::max<std::int64_t>(8, chart_.height_pixels / kMarksPerHeight);
    label_ = std::max<std::int64_t>(10, chart_.height_pixels / kLabelsPerHeight);
  }

  [[nodiscard]] std::int64_t across(std::int64_t x) const {
    return std::llround(static_cast<double>(x) * stretch_);
  }
  /// Width of an upright line that looks as thick as a level one after de-squeeze.
  [[nodiscard]] std::int64_t upright() const {
    return std::max<std::int64_t>(1, std::llround(static_cast<double>(line_) / look_));
  }
  [[nodiscard]] ChartBar edges(const PixelRect& rect) const {
    const std::int64_t left = across(rect.even_left);
    const std::int64_t right = across(rect.even_left + rect.even_width);
    return {left, rect.even_top, right - left, rect.even_height};
  }

  void bar(const ChartBar& bar) {
    if (bar.width > 0 && bar.height > 0) chart_.bars.push_back(bar);
  }
  void solid(const ChartBar& box) {
    const std::int64_t wide = std::min(upright(), box.width);
    const std::int64_t high = std::min(line_, box.height);
    bar({box.left, box.top, box.width, high});
    bar({box.left, box.top + box.height - high, box.width, high});
    bar({box.left, box.top, wide, box.height});
    bar({box.left + box.width - wide, box.top, wide, box.height});
  }
  void dashed(const ChartBar& box) {
    const std::int64_t dash = kDashLines * line_;
    for (std::int64_t x = 0; x < box.width; x += 2 * dash) {
      const std::int64_t length = std::min(dash, box.width - x);
      bar({box.left + x, box.top, length, line_});
      bar({box.left + x, box.top + box.height - line_, length, line_});
    }
    for (std::int64_t y = 0; y < box.height; y += 2 * dash) {
      const std::int64_t length = std::min(dash, box.height - y);
      bar({box.left, box.top + y, upright(), length});
      bar({box.left + box.width - upright(), box.top + y, upright(), length});
    }
  }
  void centre_mark(const ChartBar& box) {
    const std::int64_t x = box.left + box.width / 2;
    const std::int64_t y = box.top + box.height / 2;
    const auto half = static_cast<std::int64_t>(std::llround(static_cast<double>(mark_) / look_));
    bar({x - half, y - line_ / 2, 2 * half, line_});
    bar({x - upright() / 2, y - mark_, upright(), 2 * mark_});
    chart_.rings.push_back({.centre_x = static_cast<double>(x),
                            .centre_y = static_cast<double>(y),
                            .radius_x = static_cast<double>(mark_) / 2 / look_,
                            .radius_y = static_cast<double>(mark_) / 2,
                            .line = static_cast<double>(line_) / 2});
  }
  /// Steps that point at the middle of a side from inside the raster.
  void side_marks() {
    const std::int64_t steps = std::max<std::int64_t>(1, mark_ / 2 / line_);
    const std::int64_t middle_x = chart_.width_pixels / 2;
    const std::int64_t middle_y = chart_.height_pixels / 2;
    for (std::int64_t i = 0; i < steps; ++i) {
      const std::int64_t half = i * line_ + line_;
      const std::int64_t far_y = chart_.height_pixels - (i + 1) * line_;
      const std::int64_t far_x = chart_.width_pixels - (i + 1) * upright();
      bar({middle_x - half, i * line_, 2 * half, line_});
      bar({middle_x - half, far_y, 2 * half, line_});
      bar({i * upright(), middle_y - half, upright(), 2 * half});
      bar({far_x, middle_y - half, upright(), 2 * half});
    }
  }
  void label(const FrameReport& frame, const ChartBar& box, std::size_t place) {
    const std::int64_t down = static_cast<std::int64_t>(place + 1) * (label_ + label_ / 2);
    chart_.labels.push_back({.left = box.left + box.width / 2,
                             .baseline = box.top + mark_ / 2 + down,
                             .size = label_,
                             .stretch = 1 / look_,
                             .centred = true,
                             .text = words(frame)});
  }
  [[nodiscard]] Chart take() { return std::move(chart_); }

 private:
  static std::string words(const FrameReport& frame) {
    const PixelRect& pixels = frame.pixels;
    return frame.name + "  " + print_fixed(frame.aspect, 2) + ":1  " +
           std::to_string(pixels.even_width) + " x " + std::to_string(pixels.even_height) + " at " +
           std::to_string(pixels.even_left) + ", " + std::to_string(pixels.even_top);
  }

  double stretch_;
  double look_;
  std::int64_t line_ = 2;
  std::int64_t mark_ = 8;
  std::int64_t label_ = 10;
  Chart chart_;
};

std::string_view line_colour(ChartGround ground) {
  return ground == ChartGround::white ? "#000" : "#fff";
}

void svg_shapes(Markup& svg, const Chart& chart) {
  for (const ChartBar& bar : chart.bars) {
    svg.empty("rect", {{"x", static_cast<double>(bar.left)},
                       {"y", static_cast<double>(bar.top)},
                       {"width", static_cast<double>(bar.width)},
                       {"height", static_cast<double>(bar.height)}});
  }
  for (const ChartRing& ring : chart.rings) {
    svg.empty("ellipse", {{"cx", ring.centre_x},
                          {"cy", ring.centre_y},
                          {"rx", ring.radius_x},
                          {"ry", ring.radius_y},
                          {"fill", "none"},
                          {"stroke", line_colour(chart.ground)},
                          {"stroke-width", ring.line},
                          {"shape-rendering", "auto"}});
  }
  for (const ChartLabel& label : chart.labels) {
    const std::string place = "translate(" + std::to_string(label.left) + " " +
                              std::to_string(label.baseline) + ") scale(" +
                              print_number(label.stretch) + " 1)";
    svg.element("text", label.text,
                {{"transform", place},
                 {"font-size", static_cast<double>(label.size)},
                 {"text-anchor", label.centred ? "middle" : "start"}});
  }
}

}  // namespace

Chart frame_chart(const Report& report, const ChartOptions& options) {
  Drafter drafter(report, options);
  drafter.side_marks();
  for (std::size_t i = 0; i < report.frames.size(); ++i) {
    const FrameReport& frame = report.frames[i];
    const ChartBar box = drafter.edges(frame.pixels);
    if (frame.protection > 0) drafter.dashed(drafter.edges(frame.protected_pixels));
    drafter.solid(box);
    drafter.centre_mark(box);
    drafter.label(frame, box, i);
  }
  return drafter.take();
}

std::string chart_svg(const Chart& chart) {
  const auto width = static_cast<double>(chart.width_pixels);
  const auto height = static_cast<double>(chart.height_pixels);
  Markup svg;
  svg.open("svg", {{"xmlns", "http://www.w3.org/2000/svg"},
                   {"width", width},
                   {"height", height},
                   {"viewBox", "0 0 " + std::to_string(chart.width_pixels) + " " +
                                   std::to_string(chart.height_pixels)},
                   {"font-family", "sans-serif"}});
  if (chart.ground != ChartGround::transparent) {
    const std::string_view ground = chart.ground == ChartGround::white ? "#fff" : "#000";
    svg.empty("rect", {{"width", width}, {"height", height}, {"fill", ground}});
  }
  svg.open("g", {{"fill", line_colour(chart.ground)}, {"shape-rendering", "crispEdges"}});
  svg_shapes(svg, chart);
  svg.close();
  svg.close();
  return svg.take();
}

}  // namespace widegate
