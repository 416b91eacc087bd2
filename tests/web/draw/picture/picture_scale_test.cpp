// How large the sensor picture is drawn, and that it answers fingers: the circle stays whole where
// it can, a tap reads an outline, pinch and wheel zoom about the point they are at.
#include <doctest/doctest.h>

#include <cmath>

#include "tests/web/support/harness.h"
#include "web/draw/picture/scale.h"

using namespace widegate;
using namespace widegate::test;

namespace {

/// A mode of 24 x 18 mm (diagonal 30) and a circle.
PictureData sample(double circle_mm) {
  PictureData data;
  Outline mode;
  mode.key = "mode";
  mode.left_mm = -12;
  mode.top_mm = -9;
  mode.width_mm = 24;
  mode.height_mm = 18;
  data.outlines.push_back(mode);
  data.circle_mm = circle_mm;
  return data;
}

Outline circle_outline(double diameter) {
  Outline outline;
  outline.kind = OutlineKind::circle;
  outline.left_mm = outline.top_mm = -diameter / 2;
  outline.width_mm = outline.height_mm = diameter;
  return outline;
}

bool inside(const RectPx& inner, const RectPx& outer) {
  constexpr float kRounding = 0.01F;
  return inner.x >= outer.x - kRounding && inner.y >= outer.y - kRounding &&
         inner.x + inner.width <= outer.x + outer.width + kRounding &&
         inner.y + inner.height <= outer.y + outer.height + kRounding;
}

const RectPx kAreas[] = {{8, 50, 240, 190}, {80, 50, 240, 180}, {270, 100, 560, 700}};

/// Share of the shown pixels that differ.
double difference(const Image& a, const Image& b) {
  REQUIRE(a.pixels.size() == b.pixels.size());
  std::size_t different = 0;
  for (std::size_t i = 0; i < a.pixels.size(); ++i) different += a.pixels[i] != b.pixels[i] ? 1 : 0;
  return static_cast<double>(different) / static_cast<double>(a.pixels.size());
}

}  // namespace

TEST_CASE("an image circle of up to 1.6 times the mode's diagonal is shown whole") {
  PictureState state;
  for (const RectPx& area : kAreas) {
    for (const double squeeze : {1.0, 1.5, 2.0}) {
      for (const float desqueeze : {0.0F, 0.4F, 1.0F}) {
        state.desqueeze = desqueeze;
        for (const double share : {0.8, 1.0, 1.05, 1.3, 1.599}) {
          const PictureData data = sample(30 * share);
          const PictureScale scale = fit_picture(picture_extent(data), squeeze, area, state);
          CAPTURE(share);
          CHECK(inside(scale.box(circle_outline(data.circle_mm)), area));
          CHECK(inside(scale.box(data.outlines[0]), area));
          CHECK(scale.x / scale.y == doctest::Approx(1 + (squeeze - 1) * desqueeze));
        }
      }
    }
  }
}

TEST_CASE("a far larger circle leaves the mode large") {
  const PictureState state;
  for (const RectPx& area : kAreas) {
    const PictureData data = sample(30 * 1.7);
    const PictureScale scale = fit_picture(picture_extent(data), 1, area, state);
    const RectPx mode = scale.box(data.outlines[0]);
    CHECK(inside(mode, area));
    const bool wide = mode.width > 0.85F * area.width;
    const bool tall = mode.height > 0.85F * area.height;
    CHECK((wide || tall));
    CHECK_FALSE(inside(scale.box(circle_outline(data.circle_mm)), area));
  }
}

TEST_CASE("without a circle the outlines fill the area") {
  const PictureScale scale =
      fit_picture(picture_extent(sample(0)), 1, {0, 0, 240, 1000}, PictureState{});
  CHECK(scale.x == doctest::Approx(10));
}

TEST_CASE("the built-in plan's circle is whole on every screen") {
  for (const Device& device : devices()) {
    if (device.width < 300) continue;
    CAPTURE(device.name);
    Screen screen(device);
    screen.settle();
    REQUIRE(screen.ui.mirror().surfaces.size() == 1);
    const RectPx& area = screen.ui.mirror().surfaces.front();
    CHECK(area.height >= 100);
    CHECK(area.width >= 100);
  }
}

TEST_CASE("zooming keeps the point under the fingers where it is") {
  const RectPx area{100, 50, 240, 200};
  PictureState state;
  const PictureExtent extent = picture_extent(sample(33));
  const auto at_finger = [&] {
    const PictureScale scale = fit_picture(extent, 1, area, state);
    return std::pair{(180 - static_cast<double>(scale.origin.x)) / scale.x,
                     (120 - static_cast<double>(scale.origin.y)) / scale.y};
  };
  const auto before = at_finger();
  zoom_picture(state, area, 180, 120, 3);
  CHECK(state.zoom == doctest::Approx(3));
  CHECK(at_finger().first == doctest::Approx(before.first));
  CHECK(at_finger().second == doctest::Approx(before.second));
  zoom_picture(state, area, 180, 120, 0.01F);
  CHECK(state.zoom == 1);
  CHECK(state.pan_x == 0);
  zoom_picture(state, area, 180, 120, 1e9F);
  CHECK(state.zoom == 12);
  zoom_picture(state, area, 180, 120, std::nanf(""));
  CHECK(state.zoom == 12);
}

TEST_CASE("a tap on an outline reads it, a second tap puts the words away") {
  for (const Device& device : {devices()[3], devices()[4], devices()[6]}) {
    CAPTURE(device.name);
    Screen screen(device);
    screen.settle();
    const RectPx area = screen.ui.mirror().surfaces.front();
    const float x = area.x + area.width / 2;
    const float y = area.y + area.height / 2;
    const Image before = screen.picture();
    screen.tap(x, y);
    screen.move_to(-100, -100);
    screen.settle();
    CHECK(difference(screen.picture(), before) > 0.001);
    CHECK(screen.ui.mirror().live.find("photosites") != std::string::npos);
    screen.tap(x, y);
    screen.move_to(-100, -100);
    screen.settle();
    CHECK(difference(screen.picture(), before) == 0);
  }
}

TEST_CASE("a zoomed picture is moved by a drag, and reads nothing then") {
  Screen screen(devices()[3]);
  screen.settle();
  const RectPx area = screen.ui.mirror().surfaces.front();
  const float x = area.x + area.width / 2;
  const float y = area.y + area.height / 2;
  screen.ui.zoom_at(x, y, 1.6F);
  screen.settle();
  const Image before = screen.picture();
  screen.drag(x, y, x + 40, y + 10);
  CHECK(difference(screen.picture(), before) > 0.001);
  CHECK(screen.ui.mirror().live.find("photosites,") == std::string::npos);
}
