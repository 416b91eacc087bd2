// Room for the questions on small screens: what stands above them gives way while they are
// scrolled, the sections stay readable, and the smallest windows can still be worked.
#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

#include "imgui.h"
#include "tests/web/support/harness.h"
#include "web/look/layout.h"
#include "web/look/theme.h"
#include "web/ui/touch.h"

using namespace widegate;
using namespace widegate::test;

namespace {

FrameInput screen_of(float width, float height, float root_font_px = 16) {
  FrameInput input;
  input.width = width;
  input.height = height;
  input.root_font_px = root_font_px;
  input.coarse_pointer = true;
  return input;
}

Layout layout_of(const FrameInput& input, float scrolled) {
  return make_layout(input, make_theme(ThemeChoice::dark, input), {false, scrolled, false});
}

}  // namespace

TEST_CASE("scrolled on, the questions have two thirds of a small phone") {
  const FrameInput input = screen_of(360, 640);
  CHECK(layout_of(input, 0).column.height >= 0.45F * 640);
  const Layout scrolled = layout_of(input, 1000);
  CHECK(scrolled.column.height >= 0.66F * 640);
  // Something of the picture and the numbers is always in sight.
  CHECK(scrolled.drawing.height >= 24);
  CHECK(scrolled.headline.height >= 40);
}

TEST_CASE("what stands above gives way by as much as was scrolled, and by no more than it has") {
  for (const auto& [width, height] :
       std::array<std::pair<float, float>, 4>{{{360, 640}, {390, 844}, {768, 1024}, {360, 225}}}) {
    const FrameInput input = screen_of(width, height);
    CAPTURE(input.height);
    const Layout rest = layout_of(input, 0);
    for (float scrolled = 0; scrolled < 400; scrolled += 7) {
      const Layout now = layout_of(input, scrolled);
      CHECK(now.collapsed <= scrolled);
      CHECK(rest.column.y - now.column.y == doctest::Approx(now.collapsed));
      CHECK(now.column.y + now.column.height ==
            doctest::Approx(rest.column.y + rest.column.height));
      CHECK(now.headline.y + now.headline.height == doctest::Approx(now.column.y));
    }
  }
}

TEST_CASE("the smallest window, a desktop's at 400 %, can be worked") {
  Screen screen({"400 %", 360, 225, 4, false});
  screen.settle();
  for (const std::string_view id : {"/lens/focal_mm", "/format/codec", "/store/card", "/title"}) {
    CAPTURE(id);
    screen.reveal(id);
    const Control& control = screen.control(id);
    CHECK(control.visible);
    CHECK(control.rect.y >= 0);
    CHECK(control.rect.y + control.rect.height <= 225);
  }
  CHECK(layout_of(screen_of(360, 225), 1000).column.height >= 0.6F * 225);
}

TEST_CASE(
    "a finger that scrolls moves the rows by as much as it moves, while the picture shrinks") {
  Screen screen(devices()[2]);
  screen.settle();
  TouchLayer touch;
  double now = 10;
  const auto send = [&](PointerPhase phase, float y) {
    now += 0.016;
    touch.pointer({PointerKind::touch, phase, 1, 0, {180, y}, now});
    touch.update(now);
    screen.ui.touch();
    screen.frame();
  };
  send(PointerPhase::down, 500);
  send(PointerPhase::move, 488);
  const float row = screen.control("/format/mode").rect.y;
  for (int step = 1; step <= 20; ++step) {
    const float y = 488 - 9 * static_cast<float>(step);
    send(PointerPhase::move, y);
    const Control& control = screen.control("/format/mode");
    if (control.visible) CHECK(std::abs(control.rect.y - (row + y - 488)) <= 1.5F);
  }
  for (int step = 19; step >= 0; --step) {
    const float y = 488 - 9 * static_cast<float>(step);
    send(PointerPhase::move, y);
  }
  CHECK(std::abs(screen.control("/format/mode").rect.y - row) <= 1.5F);
}
