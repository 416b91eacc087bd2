// Whole screens on every device: nothing breaks, everything has its twin, nothing moves at rest.
#include <doctest/doctest.h>

#include <algorithm>
#include <random>
#include <set>
#include <string>

#include "core/plan/plan_fields.h"
#include "tests/web/support/harness.h"
#include "web/view/sections.h"

using namespace widegate;
using namespace widegate::test;

namespace {

/// Opens everything that can be opened.
void open_all(Screen& screen) {
  for (const Control& control : screen.ui.mirror().controls) {
    const std::string id = control.id;
    screen.ui.focus(id);
    screen.settle();
  }
  screen.ui.focus("");
  screen.settle();
}

const Device& phone() { return devices()[3]; }
const Device& laptop() { return devices()[6]; }

struct Edit {
  const char* id;
  const char* text;
};

/// Plans at the edges of what can be asked, and faulty ones that must not be taken.
const std::vector<std::vector<Edit>>& plans() {
  static const std::vector<std::vector<Edit>> kPlans = {
      {},
      {{"/lens/focal_mm", "1"}, {"/lens/focus_m", "0.05"}, {"/lens/f_number", "64"}},
      {{"/lens/focal_mm", "3000"}, {"/lens/image_circle_mm", "1"}, {"/lens/squeeze", "4"}},
      {{"/lens/image_circle_mm", "500"}, {"/format/camera", "dogwood"}},
      {{"/deliverable/frame_lines/0/aspect", "10"},
       {"/deliverable/frame_lines/0/protection", "49.9"}},
      {{"/deliverable/frame_lines/0/aspect", "0.1"},
       {"/deliverable/frame_lines/0/anchor/kind", "free"},
       {"/deliverable/frame_lines/0/anchor/y", "1"}},
      {{"/run/sensor_rate", "1/100"}, {"/run/shutter_kind", "time"}},
      {{"/shooting/days", "10000"},
       {"/shooting/units", "100"},
       {"/shooting/cameras_per_unit", "100"}},
      {{"/lens/focal_mm", "nonsense"}, {"/run/sensor_rate", "0/0"}, {"/title", "\x01"}},
      {{"/lens/set", ""},
       {"/title", "Ä very long title that fits no phone at all, but is allowed"}},
  };
  return kPlans;
}

}  // namespace

TEST_CASE("every panel draws at every size with usual, extreme and faulty plans") {
  for (const Device& device : devices()) {
    CAPTURE(device.name);
    for (const auto& edits : plans()) {
      Screen screen(device);
      screen.settle();
      for (const Edit& edit : edits) screen.ui.set(edit.id, edit.text);
      open_all(screen);
      CHECK(screen.ui.frame_count() > 0);
    }
  }
}

TEST_CASE("at rest nothing asks for a frame") {
  for (const Device& device : devices()) {
    CAPTURE(device.name);
    Screen screen(device);
    CHECK(screen.settle() < 12);
    CHECK(screen.ui.seconds_to_next_frame() < 0);
  }
}

TEST_CASE("the page knows every value of the plan, whatever the screen shows") {
  Screen screen(phone());
  screen.settle();
  std::set<std::string> ids;
  for (const Control& control : screen.ui.mirror().controls) {
    CAPTURE(control.id);
    CHECK_FALSE(control.label.empty());
    CHECK(ids.insert(control.id).second);
    const auto& sections = screen.ui.mirror().sections;
    CHECK(std::any_of(sections.begin(), sections.end(),
                      [&](const Section& section) { return section.id == control.section; }));
  }
  // Values that mean nothing for a new plan: shown once their condition holds.
  const std::set<std::string> conditional = {"/deliverable/frame_lines/0/anchor/x",
                                             "/deliverable/frame_lines/0/anchor/y",
                                             "/run/shutter_time_s",
                                             "/run/pulses_hz",
                                             "/shooting/script_minutes",
                                             "/shooting/shooting_ratio",
                                             "/choose/fastest_rate"};
  for (const FieldInfo& field : plan_fields()) {
    const std::string pointer = pointer_of(field, 0);
    CAPTURE(pointer);
    CHECK((ids.count(pointer) == 1) != (conditional.count(pointer) == 1));
  }
}

TEST_CASE("every control of the page is drawn on the canvas, large enough for a thumb") {
  for (const Device& device : {devices()[2], devices()[3], devices()[4], devices()[6]}) {
    CAPTURE(device.name);
    Screen screen(device);
    screen.settle();
    open_all(screen);
    const float least = device.touch ? 44.0F : 24.0F;
    std::vector<std::string> ids;
    for (const Control& control : screen.ui.mirror().controls) ids.push_back(control.id);
    for (const std::string& id : ids) {
      CAPTURE(id);
      screen.ui.focus(id);
      screen.settle();
      const Control& control = screen.control(id);
      if (!control.enabled) continue;
      CHECK(control.visible);
      CHECK(control.rect.height >= least);
      CHECK(control.rect.width >= least);
      CHECK(control.rect.x >= device.safe_area.left);
      CHECK(control.rect.x + control.rect.width <= device.width - device.safe_area.right + 0.5F);
    }
  }
}

TEST_CASE("panels are listed once, and each has controls") {
  std::set<std::string_view> ids;
  for (const Panel& panel : panels()) {
    CHECK(ids.insert(panel.id).second);
    CHECK_FALSE((panel.fields.empty() && panel.extra_controls.empty() && !panel.draws_itself &&
                 panel.draw_first == nullptr));
    CHECK(find_panel(panel.id) != nullptr);
  }
  CHECK(ids.size() == 17);
  CHECK(find_panel("nothing") == nullptr);
}

TEST_CASE("the text size of the browser is respected and nothing is lost") {
  for (const float root : {12.0F, 24.0F, 32.0F}) {
    CAPTURE(root);
    Screen screen(phone());
    screen.input.root_font_px = root;
    open_all(screen);
    CHECK(screen.control("/lens/focal_mm").rect.height >= 44 * std::max(1.0F, root / 16) * 0.99F);
  }
}

TEST_CASE("a monkey with many fingers finds nothing to break") {
  std::mt19937 random(4711);
  const auto below = [&random](std::uint32_t count) { return random() % count; };
  for (const Device& device : {phone(), laptop()}) {
    Screen screen(device);
    screen.settle();
    for (int step = 0; step < 1500; ++step) {
      const auto x = static_cast<float>(below(static_cast<std::uint32_t>(device.width)));
      const auto y = static_cast<float>(below(static_cast<std::uint32_t>(device.height)));
      const auto& controls = screen.ui.mirror().controls;
      const std::string id = controls[below(static_cast<std::uint32_t>(controls.size()))].id;
      switch (below(12)) {
        case 0:
          screen.tap(x, y);
          break;
        case 1:
          screen.drag(x, y, x + 60, y, 3);
          break;
        case 2:
          screen.wheel(static_cast<float>(below(7)) - 3);
          break;
        case 3:
          screen.ui.step(id, below(2) == 0 ? 1 : -1);
          break;
        case 4:
          screen.ui.activate(id);
          break;
        case 5:
          screen.ui.focus(id);
          break;
        case 6:
          screen.ui.reset(id);
          break;
        case 7:
          screen.ui.zoom_at(x, y, below(2) == 0 ? 1.4F : 0.6F);
          break;
        case 8:
          screen.ui.end_text(below(2) == 0);
          break;
        case 9: {
          const auto& choices = screen.control(id).choices;
          if (choices.empty()) break;
          const std::string value =
              choices[below(static_cast<std::uint32_t>(choices.size()))].value;
          screen.ui.set(id, value);
          break;
        }
        case 10:
          screen.input.width = static_cast<float>(below(1600));
          screen.input.height = static_cast<float>(below(1000));
          screen.input.root_font_px = static_cast<float>(10 + below(30));
          screen.ui.touch();
          break;
        default:
          screen.ui.set(id, below(2) == 0 ? "17" : "zzz");
          break;
      }
      screen.frame();
    }
    screen.lift();
    CHECK(screen.settle() < 40);
  }
}
