// Typing on a phone: a bad text changes nothing, and a keyboard hides neither the field nor what is
// said about it.
#include <doctest/doctest.h>

#include <array>
#include <string>
#include <string_view>
#include <utility>

#include "imgui.h"
#include "tests/web/support/harness.h"

using namespace widegate;
using namespace widegate::test;

namespace {

const Device& phone() { return devices()[3]; }
const Device& small_phone() { return devices()[2]; }
const Device& on_its_side() { return devices()[4]; }

constexpr std::string_view kFocal = "/lens/focal_mm";
constexpr std::string_view kAspect = "/deliverable/frame_lines/0/aspect";

/// Taps the value of a slider: it stands at the right end of the line above the track.
void tap_value(Screen& screen, std::string_view id) {
  screen.reveal(id);
  const RectPx track = screen.control(id).rect;
  screen.tap(track.x + track.width, track.y - 20);
  REQUIRE(screen.ui.text_request().has_value());
}

void type(Screen& screen, std::string_view id, std::string_view text) {
  for (std::size_t i = 1; i <= text.size(); ++i) {
    screen.ui.set(id, text.substr(0, i));
    screen.settle();
  }
}

}  // namespace

TEST_CASE("4000 does not become 400: leaving with a bad text keeps what was there, and says so") {
  Screen screen(phone());
  screen.settle();
  tap_value(screen, kFocal);
  type(screen, kFocal, "400");
  CHECK(screen.value(kFocal) == "400");
  type(screen, kFocal, "4000");
  CHECK(screen.value(kFocal) == "35");
  screen.ui.end_text(true);
  screen.settle();
  CHECK(screen.value(kFocal) == "35");
  const std::string& problem = screen.control(kFocal).problem;
  CHECK(problem.find("4000") != std::string::npos);
  CHECK(problem.find("1 to 3000") != std::string::npos);
  CHECK(problem.find("35 mm stays") != std::string::npos);
  CHECK_FALSE(screen.control("command:undo").enabled);
}

TEST_CASE("a field that was emptied and left has its old value") {
  Screen screen(phone());
  screen.settle();
  tap_value(screen, kFocal);
  screen.ui.set(kFocal, "5");
  screen.ui.set(kFocal, "");
  screen.ui.end_text(true);
  screen.settle();
  CHECK(screen.value(kFocal) == "35");
}

TEST_CASE("aspect ratios are typed as they are written, with their signs on the keyboard") {
  Screen screen(phone());
  screen.settle();
  tap_value(screen, kAspect);
  CHECK(screen.ui.text_request()->signs);
  screen.ui.end_text(true);
  constexpr std::array<std::pair<std::string_view, std::string_view>, 6> kTyped = {{
      {"9:16", "9/16"},
      {"16/9", "16/9"},
      {"1.85", "37/20"},
      {"2,39", "239/100"},
      {"2.39:1", "239/100"},
      {"2∶1", "2"},
  }};
  for (const auto& [typed, exact] : kTyped) {
    const auto& at_typed = typed;
    CAPTURE(at_typed);
    CHECK(screen.ui.set(kAspect, typed));
    CHECK(screen.control(kAspect).edit_text == exact);
  }
  tap_value(screen, kFocal);
  CHECK_FALSE(screen.ui.text_request()->signs);
}

TEST_CASE("a keyboard never hides the field that is typed into, and it stays where it is seen") {
  struct Held {
    const Device& device;
    float keyboard;
  };
  const std::array<Held, 3> cases = {{{phone(), 336}, {small_phone(), 280}, {on_its_side(), 210}}};
  constexpr std::array<std::string_view, 4> kFields = {kFocal, kAspect, "/store/drive_copies",
                                                       "/run/sensor_rate"};
  for (const Held& held : cases) {
    const auto& [device, keyboard] = held;
    for (const std::string_view id : kFields) {
      CAPTURE(held.device.name);
      CAPTURE(id);
      Screen screen(device);
      screen.settle();
      tap_value(screen, id);
      screen.input.keyboard = keyboard;
      screen.ui.touch();
      screen.settle();
      REQUIRE(screen.ui.text_request().has_value());
      const RectPx field = screen.ui.text_request()->rect;
      const float visible = device.height - keyboard;
      CHECK(field.y >= 0);
      // Below it there is room for the verdict and Done.
      CHECK(field.y + field.height <= visible - 44);
      CHECK(screen.control(id).visible);
      screen.ui.end_text(true);
      screen.input.keyboard = 0;
      screen.ui.touch();
      screen.settle();
      CHECK(screen.control(id).visible);
    }
  }
}

TEST_CASE("a tap on another value goes on there, a tap on Done just ends") {
  Screen screen(phone());
  screen.settle();
  tap_value(screen, kFocal);
  screen.input.keyboard = 300;
  screen.ui.set(kFocal, "50");
  screen.ui.touch();
  screen.settle();
  screen.tap(screen.input.width - 40, screen.input.height - 300 - 30);
  CHECK_FALSE(screen.ui.text_request().has_value());
  CHECK(screen.value(kFocal) == "50");
  screen.input.keyboard = 0;
  screen.ui.touch();
  screen.settle();
  tap_value(screen, "/lens/squeeze");
  const RectPx track = screen.control(kFocal).rect;
  REQUIRE(screen.control(kFocal).visible);
  screen.tap(track.x + track.width, track.y - 20);
  REQUIRE(screen.ui.text_request().has_value());
  CHECK(screen.ui.text_request()->id == kFocal);
}

TEST_CASE("Back ends the typing, then the list, then the lesson; never more than one at a time") {
  Screen screen(phone());
  screen.settle();
  CHECK(screen.ui.layers() == 0);
  screen.ui.set("view:lesson", screen.control("view:lesson").choices[1].value);
  screen.settle();
  CHECK(screen.ui.layers() == 1);
  screen.ui.show_working("headline/minutes_per_card");
  screen.settle();
  tap_value(screen, kFocal);
  CHECK(screen.ui.layers() >= 2);
  while (screen.ui.layers() > 0) {
    const int before = screen.ui.layers();
    screen.ui.dismiss();
    screen.settle();
    CHECK(screen.ui.layers() >= before - 1);
  }
  CHECK_FALSE(screen.ui.text_request().has_value());
  CHECK_FALSE(screen.ui.covered());
  CHECK(screen.ui.mirror().lesson.title.empty());
}
