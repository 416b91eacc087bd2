// Nothing moves under the finger: what was touched stays where it was on the screen, whatever
// grows, shrinks, comes or goes around it; and when the screen turns.
#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <string>
#include <string_view>
#include <utility>

#include "imgui.h"
#include "tests/web/support/harness.h"
#include "web/view/ranking_controls.h"
#include "web/view/screen_controls.h"

using namespace widegate;
using namespace widegate::test;

namespace {

const Device& phone() { return devices()[3]; }
const Device& small_phone() { return devices()[2]; }
const Device& on_its_side() { return devices()[4]; }

float middle_y(const RectPx& rect) { return rect.y + rect.height / 2; }

/// Taps the middle of a control and says how far it moved on the screen.
float moved_by_tap(Screen& screen, std::string_view id) {
  screen.reveal(id);
  const RectPx before = screen.control(id).rect;
  screen.tap(before.x + before.width / 2, middle_y(before));
  return std::abs(screen.control(id).rect.y - before.y);
}

/// An own camera with two modes, in its form.
void open_form_with_two_modes(Screen& screen) {
  screen.ui.set("library:new", "cameras");
  screen.ui.set("library:from", "alder");
  screen.settle();
}

std::string last_take_out(const Screen& screen) {
  std::string id;
  for (const Control& control : screen.ui.mirror().controls) {
    if (control.id.starts_with("library:press:/modes/") && control.id.ends_with("/-") &&
        control.id.find("recordings") == std::string::npos) {
      id = control.id;
    }
  }
  return id;
}

bool in_sight(const Screen& screen, std::string_view id) {
  const Control& control = screen.control(id);
  return control.visible && control.rect.y >= 0 &&
         control.rect.y + control.rect.height <= screen.input.height;
}

}  // namespace

TEST_CASE("taking a mode out of the form stays in the form") {
  for (const Device& device : {phone(), small_phone(), on_its_side()}) {
    CAPTURE(device.name);
    Screen screen(device);
    screen.settle();
    open_form_with_two_modes(screen);
    const std::string id = last_take_out(screen);
    REQUIRE_FALSE(id.empty());
    screen.reveal(id);
    const RectPx button = screen.control(id).rect;
    screen.tap(button.x + button.width / 2, middle_y(button));
    REQUIRE(screen.ui.mirror().find(id) == nullptr);
    bool form_in_sight = false;
    for (const Control& control : screen.ui.mirror().controls) {
      form_in_sight = form_in_sight || (control.section == "library" && control.visible);
    }
    CHECK(form_in_sight);
  }
}

TEST_CASE("keeping a camera leads to where it is used, not to what happens to follow the form") {
  for (const Device& device : {phone(), small_phone(), on_its_side()}) {
    CAPTURE(device.name);
    Screen screen(device);
    screen.settle();
    open_form_with_two_modes(screen);
    screen.ui.set("library:/name", "Hazel");
    screen.settle();
    screen.reveal("library:keep");
    const RectPx button = screen.control("library:keep").rect;
    screen.tap(button.x + button.width / 2, middle_y(button));
    REQUIRE(screen.ui.mirror().find("library:use") != nullptr);
    CHECK(in_sight(screen, "library:use"));
  }
}

TEST_CASE("a tapped format stays under the finger, whatever its words become") {
  Screen screen(phone());
  screen.settle();
  screen.reveal(kRankingListing);
  // Up, so that the rows below it are in sight.
  screen.move_to(screen.input.width / 2, screen.input.height * 0.6F);
  screen.wheel(-3);
  const RectPx part = screen.control(kRankingListing).rect;
  const std::string before = screen.value("/format/camera") + screen.value("/format/mode") +
                             screen.value("/format/recording");
  // The first row begins below the legend.
  screen.tap(part.x + part.width / 2, part.y + part.height + 64);
  CHECK(before != screen.value("/format/camera") + screen.value("/format/mode") +
                      screen.value("/format/recording"));
  CHECK(std::abs(screen.control(kRankingListing).rect.y - part.y) <= 1);
}

TEST_CASE("choosing from a list leaves its row where it was, for every entry of it") {
  for (const std::string_view id : {"/format/codec", "/format/camera", "/lens/set"}) {
    CAPTURE(id);
    Screen screen(small_phone());
    screen.settle();
    screen.reveal(id);
    const std::size_t count = screen.control(id).choices.size();
    for (std::size_t i = 0; i < count && i < screen.control(id).choices.size(); ++i) {
      const RectPx before = screen.control(id).rect;
      screen.tap(before.x + 40, middle_y(before));
      REQUIRE(screen.ui.covered());
      screen.ui.set(id, screen.control(id).choices[i].value);
      screen.ui.dismiss();
      screen.settle();
      CHECK(std::abs(screen.control(id).rect.y - before.y) <= 1);
    }
  }
}

TEST_CASE("a slider stays under the finger through a whole drag, in every frame") {
  constexpr std::array<std::string_view, 4> kSliders = {"/lens/focal_mm",
                                                        "/deliverable/frame_lines/0/protection",
                                                        "/run/sensor_rate", "/lens/focus_m"};
  for (const std::string_view id : kSliders) {
    CAPTURE(id);
    Screen screen(small_phone());
    screen.settle();
    screen.reveal(id);
    const RectPx track = screen.control(id).rect;
    screen.move_to(track.x + track.width / 2, middle_y(track));
    screen.settle();
    screen.press();
    screen.settle();
    const std::string start = screen.value(id);
    bool changed = false;
    for (int step = -40; step <= 40; ++step) {
      screen.move_to(track.x + track.width * (0.5F + 0.0125F * static_cast<float>(step)),
                     middle_y(track));
      screen.frame();
      changed = changed || screen.value(id) != start;
      CHECK(std::abs(screen.control(id).rect.y - track.y) <= 1);
    }
    screen.lift();
    screen.settle();
    CHECK(changed);
    CHECK(std::abs(screen.control(id).rect.y - track.y) <= 1);
  }
}

TEST_CASE("turning the phone in a drag ends the drag and keeps the value") {
  Screen screen(phone());
  screen.settle();
  screen.reveal("/lens/focal_mm");
  const RectPx track = screen.control("/lens/focal_mm").rect;
  screen.move_to(track.x + track.width / 2, middle_y(track));
  screen.settle();
  screen.press();
  screen.settle();
  screen.move_to(track.x + track.width * 0.6F, middle_y(track));
  screen.frame();
  const std::string dragged = screen.value("/lens/focal_mm");
  REQUIRE(dragged != "35");
  std::swap(screen.input.width, screen.input.height);
  screen.input.safe_area = on_its_side().safe_area;
  screen.ui.touch();
  screen.settle();
  screen.move_to(screen.input.width - 4, middle_y(track));
  screen.frame();
  CHECK(screen.value("/lens/focal_mm") == dragged);
  screen.lift();
  screen.settle();
  CHECK(screen.value("/lens/focal_mm") == dragged);
  CHECK(in_sight(screen, "/lens/focal_mm"));
  screen.ui.activate(kUndo);
  screen.settle();
  CHECK(screen.value("/lens/focal_mm") == "35");
}

TEST_CASE("what was in sight is in sight after a turn and with larger text") {
  Screen screen(phone());
  screen.settle();
  CHECK(moved_by_tap(screen, "/store/card") <= 1);
  screen.ui.dismiss();
  std::swap(screen.input.width, screen.input.height);
  screen.ui.touch();
  screen.settle();
  CHECK(in_sight(screen, "/store/card"));
  screen.input.root_font_px = 32;
  screen.ui.touch();
  screen.settle();
  CHECK(in_sight(screen, "/store/card"));
  std::swap(screen.input.width, screen.input.height);
  screen.ui.touch();
  screen.settle();
  CHECK(in_sight(screen, "/store/card"));
}
