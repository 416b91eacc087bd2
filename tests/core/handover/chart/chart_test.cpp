// The frame-line chart as shapes and as a picture. What the pixels say to an image reader that is
// not ours is in tests/browser/chart.test.mjs.
#include "core/handover/chart/chart.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <string>

#include "core/catalogue/catalogue_json.h"
#include "core/encode/stroke_letters.h"
#include "core/handover/chart/chart_png.h"
#include "core/report/evaluate.h"

namespace widegate {
namespace {

std::uint32_t number_at(const std::string& file, std::size_t at) {
  std::uint32_t value = 0;
  for (std::size_t i = at; i < at + 4; ++i) {
    value = value << 8 | static_cast<unsigned char>(file[i]);
  }
  return value;
}

Report report_of(const Plan& plan) {
  const auto library = built_in_catalogue();
  REQUIRE(library);
  Report report = evaluate(plan, *library);
  REQUIRE(report.problems.empty());
  return report;
}

TEST_CASE("the chart has the recorded raster, and lines just inside the extracted pixels") {
  const Report report = report_of(Plan{});
  const Chart chart = frame_chart(report, {});
  CHECK(chart.width_pixels == report.resolve.recorded_width_pixels);
  CHECK(chart.height_pixels == report.resolve.recorded_height_pixels);
  const PixelRect& frame = report.frames.front().pixels;
  const auto edge = [&](const ChartBar& bar) {
    return bar.left == frame.even_left && bar.top == frame.even_top &&
           (bar.width == frame.even_width || bar.height == frame.even_height);
  };
  CHECK(std::count_if(chart.bars.begin(), chart.bars.end(), edge) == 2);
  for (const ChartBar& bar : chart.bars) {
    CHECK(bar.left >= 0);
    CHECK(bar.top >= 0);
    CHECK(bar.left + bar.width <= chart.width_pixels);
    CHECK(bar.top + bar.height <= chart.height_pixels);
  }
}

TEST_CASE("the picture's header states the chart's size; no pixels, no picture") {
  const Chart chart = frame_chart(report_of(Plan{}), {});
  const std::string png = chart_png(chart);
  CHECK(png.starts_with("\x89PNG\r\n\x1a\n"));
  CHECK(number_at(png, 16) == static_cast<std::uint32_t>(chart.width_pixels));
  CHECK(number_at(png, 20) == static_cast<std::uint32_t>(chart.height_pixels));
  CHECK(png.find("tRNS") == std::string::npos);
  CHECK(chart_png(frame_chart(report_of(Plan{}), {.ground = ChartGround::transparent}))
            .find("tRNS") != std::string::npos);
  CHECK(chart_png(Chart{}).empty());
  Chart too_wide;
  too_wide.width_pixels = 70000;
  too_wide.height_pixels = 10;
  CHECK(chart_png(too_wide).empty());
}

TEST_CASE("shapes beyond the raster are cut, whatever their size") {
  Chart chart;
  chart.width_pixels = 3;
  chart.height_pixels = 2;
  chart.bars = {{.left = -5, .top = -5, .width = 100, .height = 100}, {}};
  chart.labels = {{.left = 0, .baseline = 1, .size = 10, .stretch = 0.5, .text = "\xff\xc3 A"}};
  chart.rings = {{.centre_x = 50, .centre_y = 1, .radius_x = 3, .radius_y = 3, .line = 1}};
  CHECK_FALSE(chart_png(chart).empty());
}

TEST_CASE("every letter of a label has strokes inside its box; unknown ones are boxes") {
  for (char c = '!'; c <= '~'; ++c) {
    CAPTURE(c);
    const auto strokes = text_strokes(std::string(1, c));
    CHECK_FALSE(strokes.empty());
    for (const LetterStroke& each : strokes) {
      for (const double x : {each.x0, each.x1}) CHECK((x >= 0 && x <= 4));
      for (const double y : {each.y0, each.y1}) CHECK((y >= 0 && y <= 7));
    }
  }
  CHECK(text_strokes("ä").size() == 4);
  CHECK(text_strokes("a").size() == text_strokes("A").size());
  CHECK(text_strokes("").empty());
  CHECK(text_strokes_width("") == 0);
  CHECK(text_strokes_width("1 ä") == 2 * kLetterAdvance + 4);
}

}  // namespace
}  // namespace widegate
