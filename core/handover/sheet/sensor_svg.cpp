#include "core/handover/sheet/sensor_svg.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/base/number_text.h"
#include "core/encode/markup.h"

namespace widegate {
namespace {

/// How a rectangle is drawn; widths and dashes are shares of the picture's width.
struct LineStyle {
  double width;
  double dash;  ///< 0: solid.
  std::string_view colour;
};
constexpr LineStyle kSensorLine{0.003, 0.03, "#777"};
constexpr LineStyle kModeLine{0.004, 0, "#000"};
constexpr LineStyle kProtectedLine{0.003, 0.012, "#000"};
constexpr LineStyle kFrameLine{0.007, 0, "#000"};
constexpr LineStyle kCircleLine{0.004, 0.006, "#000"};
constexpr double kTextSize = 0.04;
constexpr double kMargin = 0.03;

constexpr double kKeyScale = 320;  ///< Of the line samples in the key.

std::string dash_text(const LineStyle& style, double scale) {
  return style.dash == 0 ? "none" : print_number(style.dash * scale);
}

/// Half extents of everything drawn, in mm about the optical axis.
struct Extent {
  double x = 0;
  double y = 0;
  [[nodiscard]] double width() const { return 2 * x; }
};

Extent extent_of(const Report& report, const Camera& camera) {
  const double circle = report.cover.known ? report.cover.image_circle_mm / 2 : 0;
  const double x = std::max({camera.width_mm / 2, report.mode.width_mm / 2, circle});
  const double y = std::max({camera.height_mm / 2, report.mode.height_mm / 2, circle});
  return {.x = x + kMargin * 2 * x, .y = y + kMargin * 2 * x};
}

class Drawing {
 public:
  explicit Drawing(const Extent& extent) : unit_(extent.width()) {}

  void rect(const CoverFigures& edges, const LineStyle& style) {
    rect(edges.left_mm, edges.top_mm, edges.right_mm - edges.left_mm,
         edges.bottom_mm - edges.top_mm, style);
  }
  void rect(double x, double y, double width, double height, const LineStyle& style) {
    svg.empty("rect", {{"x", x},
                       {"y", y},
                       {"width", width},
                       {"height", height},
                       {"fill", "none"},
                       {"stroke", style.colour},
                       {"stroke-width", style.width * unit_},
                       {"stroke-dasharray", dash(style)}});
  }
  void circle(double radius) {
    svg.empty("circle", {{"r", radius},
                         {"fill", "none"},
                         {"stroke", kCircleLine.colour},
                         {"stroke-width", kCircleLine.width * unit_},
                         {"stroke-dasharray", dash(kCircleLine)}});
  }
  /// The mode less the circle, hatched.
  void dark_corners(const CoverFigures& mode, double radius) {
    const std::string r = print_number(radius);
    svg.open("defs");
    svg.open("pattern", {{"id", "dark"},
                         {"width", unit_ * 0.012},
                         {"height", unit_ * 0.012},
                         {"patternUnits", "userSpaceOnUse"},
                         {"patternTransform", "rotate(45)"}});
    svg.empty("rect", {{"width", unit_ * 0.004}, {"height", unit_ * 0.012}, {"fill", "#000"}});
    svg.close();
    svg.close();
    const auto at = [](double x, double y) { return print_number(x) + " " + print_number(y); };
    const std::string rectangle = "M" + at(mode.left_mm, mode.top_mm) + "H" +
                                  print_number(mode.right_mm) + "V" + print_number(mode.bottom_mm) +
                                  "H" + print_number(mode.left_mm) + "Z";
    svg.open("clipPath", {{"id", "mode"}});
    svg.empty("path", {{"d", rectangle}});
    svg.close();
    const std::string ring = "M-" + r + " 0A" + r + " " + r + " 0 1 0 " + r + " 0A" + r + " " + r +
                             " 0 1 0 -" + r + " 0Z";
    svg.empty("path", {{"d", rectangle + ring},
                       {"fill", "url(#dark)"},
                       {"fill-rule", "evenodd"},
                       {"clip-path", "url(#mode)"}});
  }
  void label(double x, double y, std::string_view text) {
    svg.element("text", text, {{"x", x}, {"y", y}, {"font-size", kTextSize * unit_}});
  }
  [[nodiscard]] double text_height() const { return kTextSize * unit_; }

  Markup svg;

 private:
  [[nodiscard]] std::string dash(const LineStyle& style) const { return dash_text(style, unit_); }
  double unit_;
};

/// The frame lines beyond the main one, from their photosites.
void draw_other_frames(Drawing& drawing, const Report& report) {
  const double x_mm = report.mode.width_mm / static_cast<double>(report.mode.width_photosites);
  const double y_mm = report.mode.height_mm / static_cast<double>(report.mode.height_photosites);
  for (std::size_t i = 1; i < report.frames.size(); ++i) {
    const FrameReport& frame = report.frames[i];
    const double left = frame.photosites.left.to_double() * x_mm - report.mode.width_mm / 2;
    const double top = frame.photosites.top.to_double() * y_mm - report.mode.height_mm / 2;
    drawing.rect(left, top, frame.width_mm, frame.height_mm, kModeLine);
    drawing.label(left + drawing.text_height() / 3, top + 1.1 * drawing.text_height(), frame.name);
  }
}

void draw_labels(Drawing& drawing, const Report& report) {
  const CoverFigures& frame = report.cover.frame;
  const double gap = drawing.text_height() / 3;
  const FrameReport& main = report.frames.front();
  const std::string aspect = print_fixed(main.aspect, 2);
  const std::string name = main.name == aspect ? "" : main.name + ", ";
  drawing.label(frame.left_mm + 2 * gap, frame.bottom_mm - 2 * gap, name + aspect + ":1");
  drawing.label(
      report.cover.mode.left_mm, report.cover.mode.top_mm - gap,
      print_fixed(report.mode.width_mm, 2) + " × " + print_fixed(report.mode.height_mm, 2) + " mm");
}

}  // namespace

std::string sensor_svg(const Report& report, const Camera& camera) {
  const Extent extent = extent_of(report, camera);
  Drawing drawing(extent);
  const std::string box = print_number(-extent.x) + " " + print_number(-extent.y) + " " +
                          print_number(2 * extent.x) + " " + print_number(2 * extent.y);
  drawing.svg.open("svg", {{"xmlns", "http://www.w3.org/2000/svg"},
                           {"viewBox", box},
                           {"role", "img"},
                           {"font-family", "sans-serif"}});
  drawing.svg.element("title", "Sensor, mode, frame lines and image circle to scale");
  if (report.cover.known && !report.cover.mode.covered) {
    drawing.dark_corners(report.cover.mode, report.cover.image_circle_mm / 2);
  }
  drawing.rect(-camera.width_mm / 2, -camera.height_mm / 2, camera.width_mm, camera.height_mm,
               kSensorLine);
  drawing.rect(report.cover.mode, kModeLine);
  drawing.rect(report.cover.protected_area, kProtectedLine);
  draw_other_frames(drawing, report);
  drawing.rect(report.cover.frame, kFrameLine);
  if (report.cover.known) drawing.circle(report.cover.image_circle_mm / 2);
  draw_labels(drawing, report);
  drawing.svg.close();
  return drawing.svg.take();
}

std::string sensor_svg_key(const Report& report) {
  struct Row {
    std::string_view words;
    const LineStyle& style;
    bool shown;
  };
  const bool protection = report.frames.front().protection > 0;
  const std::array<Row, 5> rows = {{{"frame line", kFrameLine, true},
                                    {"protected area", kProtectedLine, protection},
                                    {"sensor mode", kModeLine, true},
                                    {"whole sensor", kSensorLine, true},
                                    {"image circle", kCircleLine, report.cover.known}}};
  Markup html;
  html.open("div", {{"class", "key"}});
  for (const Row& row : rows) {
    if (!row.shown) continue;
    html.open("span");
    html.open("svg", {{"viewBox", "0 0 24 7"}, {"aria-hidden", "true"}});
    html.empty("path", {{"d", "M0 3.5H24"},
                        {"stroke", row.style.colour},
                        {"stroke-width", row.style.width * kKeyScale},
                        {"stroke-dasharray", dash_text(row.style, kKeyScale)}});
    html.close();
    html.text(row.words);
    html.close();
  }
  html.close();
  return html.take();
}

}  // namespace widegate
