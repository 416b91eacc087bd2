// Answers that can be pressed: beside the verdict, below what was set last, undone with a word; and
// the first ten seconds.
#include <algorithm>
#include <cmath>
#include <string>

#include "doctest/doctest.h"
#include "tests/web/support/harness.h"
#include "web/view/answer_controls.h"
#include "web/view/screen_controls.h"
#include "web/view/start_controls.h"

namespace widegate::test {
namespace {

Device phone() { return {"phone", 390, 844, 3, true, {}}; }

void press(Screen& screen, std::string_view id) {
  screen.ui.activate(id);
  screen.settle();
}

void set(Screen& screen, std::string_view id, std::string_view text) {
  REQUIRE(screen.ui.set(id, text));
  screen.settle();
}

std::size_t answers_in(const Screen& screen, std::string_view section) {
  const auto& controls = screen.ui.mirror().controls;
  return static_cast<std::size_t>(
      std::count_if(controls.begin(), controls.end(), [section](const Control& each) {
        return each.section == section && each.id.starts_with(kAnswerPrefix);
      }));
}

Severity severity_of(const Screen& screen, std::string_view section) {
  for (const Section& each : screen.ui.mirror().sections) {
    if (each.id == section) return each.severity;
  }
  return Severity::fail;
}

}  // namespace

TEST_CASE("an answer is pressed where it is shown, says what it did, and undo says what it undid") {
  Screen screen(phone());
  screen.settle();
  REQUIRE(answers_in(screen, "run") == 0);
  set(screen, "/run/shutter_angle_deg", "180");
  REQUIRE(answers_in(screen, "run") > 0);
  CHECK(severity_of(screen, "run") != Severity::ok);
  constexpr std::string_view id = "answer:run:0";
  CHECK(screen.control(id).label == "Shutter 172.8°");
  screen.reveal(id);
  const Control& answer = screen.control(id);
  REQUIRE(answer.visible);
  CHECK(answer.rect.height >= 44);
  // Beside what was set last, above or below it: the answer is where the thumb is.
  const RectPx entry = screen.control("/run/shutter_angle_deg").rect;
  CHECK(std::abs(answer.rect.y - entry.y) < 320);
  screen.tap(answer.rect.x + answer.rect.width / 2, answer.rect.y + answer.rect.height / 2);
  screen.settle();
  CHECK(screen.value("/run/shutter_angle_deg") == "172.8");
  CHECK(severity_of(screen, "run") == Severity::ok);
  CHECK(answers_in(screen, "run") == 0);
  CHECK(screen.ui.mirror().message == "Done: Shutter 172.8°.");
  press(screen, kUndo);
  CHECK(screen.value("/run/shutter_angle_deg") == "180");
  CHECK(screen.ui.mirror().message == "Undone. Shutter angle: 180°, was 172.8°.");
  press(screen, kRedo);
  CHECK(screen.value("/run/shutter_angle_deg") == "172.8");
}

TEST_CASE("the word after an answer has its own way back") {
  // The button stands left of the cross, at the lower end of the questions.
  bool undone = false;
  for (float y = 830; y > 560 && !undone; y -= 20) {
    Screen again(phone());
    again.settle();
    set(again, "/run/shutter_angle_deg", "180");
    press(again, answer_id("run", 0));
    again.tap(300, y);
    again.settle();
    undone = again.ui.mirror().message.starts_with("Undone. Shutter angle");
  }
  CHECK(undone);
}

TEST_CASE("a tap on the rail leads all the way to the section, from wherever the screen stands") {
  Screen screen(phone());
  screen.settle();
  const auto place = [&screen](std::string_view id) {
    for (const Place& each : screen.ui.mirror().places) {
      if (each.id == id) return each.rect;
    }
    return RectPx{};
  };
  for (const std::string section : {"cover", "store", "frame", "run"}) {
    CAPTURE(section);
    const RectPx mark = place("rail:" + section);
    screen.tap(mark.x + mark.width / 2, mark.y + mark.height / 2);
    screen.settle();
    const RectPx column = place("column:questions");
    const RectPx verdict = place("verdict:" + section);
    REQUIRE(verdict.height > 0);
    CHECK(verdict.y - column.y < 100);
  }
}

TEST_CASE("a wall: what is wanted, and the lens that shows it") {
  Screen screen(phone());
  screen.settle();
  set(screen, "/lens/wanted_width_m", "6");
  set(screen, "/lens/focus_m", "4");
  const std::string id = answer_id("see", 0);
  CHECK(screen.control(id).label == "Use the 14 mm");
  press(screen, id);
  CHECK(screen.value("/lens/focal_mm") == "14");
}

TEST_CASE("nothing comes or goes under the finger of a drag") {
  Screen screen(phone());
  screen.settle();
  screen.reveal("/run/shutter_angle_deg");
  const RectPx slider = screen.control("/run/shutter_angle_deg").rect;
  const float y = slider.y + slider.height * 0.75F;
  screen.move_to(slider.x + slider.width * 0.5F, y);
  screen.press();
  for (int i = 0; i < 12; ++i) {
    screen.move_to(slider.x + slider.width * (0.5F + 0.02F * static_cast<float>(i)), y);
    screen.frame();
    CHECK(answers_in(screen, "run") == 0);
  }
  screen.lift();
  screen.settle();
}

TEST_CASE("a first visit has three examples and one's own camera, a later one the kept plans") {
  Screen first(phone());
  first.settle();
  std::size_t examples = 0;
  for (const Control& each : first.ui.mirror().controls) {
    if (each.id.starts_with(kStartExample)) ++examples;
  }
  CHECK(examples == 3);
  const std::string before = first.headline(0);
  press(first, "start:example:anamorphic");
  CHECK(first.headline(0) != before);
  CHECK(first.value("/lens/set").find("Wye") != std::string::npos);
  press(first, "plans:add");
  press(first, kUndo);
  press(first, kStartCamera);
  CHECK(std::any_of(first.ui.mirror().controls.begin(), first.ui.mirror().controls.end(),
                    [](const Control& each) { return each.id == "library:keep"; }));
  Screen second(phone(), first.platform.kept);
  second.settle();
  for (const Control& each : second.ui.mirror().controls) {
    CHECK_FALSE(each.id.starts_with(kStartExample));
  }
}

}  // namespace widegate::test
