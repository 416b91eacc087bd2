// Lessons on the screen: what the picture shows in each step, the control to move, the way on.
#include <doctest/doctest.h>

#include <functional>
#include <string>
#include <vector>

#include "core/catalogue/catalogue_json.h"
#include "core/handover/link/link.h"
#include "core/lesson/built_in_lessons.h"
#include "core/lesson/lesson_json.h"
#include "core/lesson/lesson_link.h"
#include "core/plan/plan_json.h"
#include "tests/web/support/harness.h"
#include "web/act/handover_actions.h"
#include "web/state/comparison_state.h"
#include "web/view/picture_controls.h"
#include "web/view/screen_controls.h"

using namespace widegate;
using namespace widegate::test;

namespace {

const Device& phone() { return devices()[3]; }

void start(Screen& screen, std::string_view lesson) {
  screen.ui.set(kLesson, lesson);
  screen.settle();
}

void press(Screen& screen, std::string_view id) {
  screen.ui.activate(id);
  screen.settle();
}

struct NamedLesson {
  std::string id;
  Lesson lesson;
};

const std::vector<NamedLesson>& lessons() {
  static const std::vector<NamedLesson> kLessons = [] {
    const Catalogue library = built_in_catalogue().value();
    std::vector<NamedLesson> named;
    for (const std::string_view id : built_in_lesson_ids()) {
      named.push_back({std::string(id), built_in_lesson(id, library).value()});
    }
    return named;
  }();
  return kLessons;
}

/// What the picture's own controls say in a step.
struct Look {
  LessonPicture picture;
  std::string_view shows, desqueezed, magnified;
};
constexpr Look kLooks[] = {
    {LessonPicture::sensor, "sensor", "false", "false"},
    {LessonPicture::scene_recorded, "scene", "false", "false"},
    {LessonPicture::scene_desqueezed, "scene", "true", "false"},
    {LessonPicture::magnifier, "scene", "false", "true"},
    {LessonPicture::both_sensors, "compare", "false", "false"},
    {LessonPicture::both_scenes, "compare", "false", "false"},
};

void check_look(const Screen& screen, const LessonStep& step) {
  for (const Look& look : kLooks) {
    if (look.picture != step.picture) continue;
    CHECK(screen.control(kPicture).edit_text == look.shows);
    CHECK(screen.control(kDesqueeze).edit_text == look.desqueezed);
    CHECK(screen.control(kMagnifier).edit_text == look.magnified);
    const bool both = look.shows == "compare";
    CHECK((screen.control(kCompareCamera).edit_text == "kept") == both);
    const bool beside = screen.control(kSideBySide).edit_text == "true";
    CHECK(beside == (step.picture == LessonPicture::both_scenes));
  }
}

}  // namespace

TEST_CASE("every step of a lesson shows the picture it speaks of") {
  Screen screen(phone());
  screen.settle();
  for (const auto& [id, lesson] : lessons()) {
    const auto& at_id = id;
    CAPTURE(at_id);
    start(screen, id);
    for (const LessonStep& step : lesson.steps) {
      CAPTURE(step.title);
      check_look(screen, step);
      press(screen, kLessonNext);
    }
    press(screen, kLessonBack);
    check_look(screen, lesson.steps[lesson.steps.size() - 2]);
    press(screen, kLessonLeave);
    CHECK(screen.control(kPicture).edit_text == "sensor");
    CHECK(screen.control(kDesqueeze).edit_text == "false");
    CHECK(screen.control(kMagnifier).edit_text == "false");
    CHECK(screen.control(kCompareCamera).edit_text.empty());
  }
}

TEST_CASE("the lesson about the same view compares with the camera it began with") {
  Screen screen(phone());
  screen.settle();
  start(screen, "depth-and-view");
  press(screen, kLessonNext);
  press(screen, kLessonNext);
  std::string widths;
  for (const ResultRow& row : screen.ui.mirror().results) {
    if (row.key == "compare.mode.width_mm") widths = row.value_text;
  }
  CHECK(widths == "53.96 mm against 26.96");
}

TEST_CASE("what was compared before a lesson is compared again after it, also over a reload") {
  Screen screen(phone());
  screen.settle();
  screen.ui.set(kCompareCamera, "birch");
  screen.settle();
  start(screen, "depth-and-view");
  press(screen, kLessonNext);
  CHECK(screen.control(kCompareCamera).edit_text == "kept");
  Screen reloaded(phone(), screen.platform.kept);
  reloaded.settle();
  CHECK(reloaded.control(kCompareCamera).edit_text == "birch");
  start(screen, "squeeze");
  CHECK(screen.control(kCompareCamera).edit_text == "birch");
  start(screen, "");
  CHECK(screen.control(kCompareCamera).edit_text == "birch");
  start(screen, "no-such-lesson");
  CHECK(screen.ui.mirror().lesson.title.empty());
}

TEST_CASE("another plan from outside ends the lesson") {
  const auto link_comes = [](Screen& screen) {
    Plan linked;
    linked.lens.focal_mm = 21;
    screen.ui.fragment_changed(plan_to_link(linked));
  };
  const auto file_comes = [](Screen& screen) {
    screen.ui.file_opened(kPlanFile, "ferry.json", plan_to_json(Plan{}));
  };
  const auto fresh = [](Screen& screen) { screen.ui.activate(kStartAfresh); };
  for (const std::function<void(Screen&)>& act :
       std::vector<std::function<void(Screen&)>>{link_comes, file_comes, fresh}) {
    Screen screen(phone());
    screen.settle();
    start(screen, lessons().front().id);
    REQUIRE_FALSE(screen.ui.mirror().lesson.title.empty());
    act(screen);
    screen.settle();
    CHECK(screen.ui.mirror().lesson.title.empty());
  }
}

TEST_CASE("the control to move stands in the lesson, and nowhere else, and rests") {
  for (const Device& device : {devices()[3], devices()[4], devices()[6]}) {
    CAPTURE(device.name);
    Screen screen(device);
    screen.settle();
    for (const auto& [id, lesson] : lessons()) {
      start(screen, id);
      for (const LessonStep& step : lesson.steps) {
        const auto& at_id = id;
        CAPTURE(at_id);
        CAPTURE(step.title);
        screen.reveal(step.control);
        const Control& control = screen.control(step.control);
        CHECK(control.enabled);
        CHECK(control.visible);
        CHECK(control.rect.y > screen.control(kLessonNext).rect.y);
        CHECK(control.rect.y < screen.control(kLesson).rect.y);
        const auto rects = screen.ui.rect_version();
        for (int i = 0; i < 5; ++i) screen.frame();
        CHECK(screen.ui.rect_version() == rects);
        press(screen, kLessonNext);
      }
    }
    press(screen, kLessonLeave);
    screen.reveal("/lens/focal_mm");
    CHECK(screen.control("/lens/focal_mm").rect.y > screen.control("/format/camera").rect.y);
  }
}

TEST_CASE("a drag of the control in the lesson moves the plan") {
  Screen screen(phone());
  screen.settle();
  start(screen, "depth-and-view");
  screen.reveal("/lens/focal_mm");
  const RectPx box = screen.control("/lens/focal_mm").rect;
  const std::string before = screen.headline(0);
  const float y = box.y + box.height / 2;
  screen.drag(box.x + box.width / 2, y, box.x + box.width * 0.7F, y);
  CHECK(screen.headline(0) != before);
}

TEST_CASE("on a phone the way on is in sight in every step, back and next side by side") {
  for (const Device& device : {devices()[2], devices()[3], devices()[4]}) {
    CAPTURE(device.name);
    Screen screen(device);
    screen.settle();
    for (const auto& [id, lesson] : lessons()) {
      start(screen, id);
      for (const LessonStep& step : lesson.steps) {
        const auto& at_id = id;
        CAPTURE(at_id);
        CAPTURE(step.title);
        const Control& next = screen.control(kLessonNext);
        const Control& back = screen.control(kLessonBack);
        CHECK(next.visible);
        CHECK(next.rect.y == back.rect.y);
        CHECK(back.rect.x + back.rect.width < next.rect.x);
        CHECK(next.rect.height >= 44);
        // The rail of a phone held upright ends the column.
        const float rail = device.height > device.width ? 58 : 0;
        CHECK(next.rect.y + next.rect.height <= device.height - device.safe_area.bottom - rail);
        press(screen, kLessonNext);
      }
    }
  }
}

TEST_CASE("leaving a lesson gives back the person's own plan, and says so") {
  const auto by_button = [](Screen& screen) { press(screen, kLessonLeave); };
  const auto by_back = [](Screen& screen) {
    screen.ui.dismiss();
    screen.settle();
  };
  const auto by_choice = [](Screen& screen) { start(screen, ""); };
  for (const std::function<void(Screen&)>& leave :
       std::vector<std::function<void(Screen&)>>{by_button, by_back, by_choice}) {
    Screen screen(phone());
    screen.settle();
    screen.ui.set("/lens/focal_mm", "75");
    screen.ui.set("/title", "Mine");
    screen.settle();
    start(screen, "squeeze");
    press(screen, kLessonNext);
    start(screen, "data-and-cards");  // From one lesson into another: the plan is still one's own.
    CHECK(screen.value("/title") == "Frame rate, data and cards");
    screen.ui.dismiss();  // The message of the start, if any.
    if (screen.ui.mirror().lesson.title.empty()) start(screen, "data-and-cards");
    leave(screen);
    CHECK(screen.ui.mirror().lesson.title.empty());
    CHECK(screen.value("/title") == "Mine");
    CHECK(screen.value("/lens/focal_mm") == "75");
    CHECK(screen.ui.mirror().message == "The lesson is left. Your own plan is back as it was.");
  }
}

TEST_CASE("a page closed in a lesson comes back with the person's own plan") {
  Screen screen(phone());
  screen.settle();
  screen.ui.set("/title", "Mine");
  screen.settle();
  start(screen, "squeeze");
  press(screen, kLessonNext);
  Screen again(phone(), screen.platform.kept);
  again.settle();
  CHECK(again.value("/title") == "Mine");
}

TEST_CASE("a lesson's link opens it at its step on a fresh device, which keeps it") {
  const Catalogue library = built_in_catalogue().value();
  Lesson own = built_in_lesson("squeeze", library).value();
  own.title = "My own squeeze";
  const std::string link = lesson_to_link(own, 3, library).value();
  Screen screen(phone());
  screen.settle();
  screen.ui.fragment_changed(link);
  screen.settle();
  CHECK(screen.ui.mirror().lesson.title == "My own squeeze");
  CHECK(screen.ui.mirror().lesson.step.starts_with("3 of 4"));
  CHECK(screen.value("/format/mode") == "2x squeeze for 2.39:1");
  const Control& list = screen.control(kLesson);
  CHECK(list.choices.back().label == "My own squeeze");
  press(screen, kLessonLeave);
  // Kept: another visit has it in the list, and it is there once however often it is opened.
  Screen again(phone(), screen.platform.kept);
  again.settle();
  const std::size_t choices = again.control(kLesson).choices.size();
  CHECK(again.control(kLesson).choices.back().label == "My own squeeze");
  again.ui.fragment_changed(link);
  again.settle();
  CHECK(again.control(kLesson).choices.size() == choices);
  CHECK(again.ui.mirror().lesson.title == "My own squeeze");
  // A damaged one changes nothing and says why.
  const std::string before = again.value("/title");
  again.ui.fragment_changed(link.substr(0, link.size() - 4));
  again.settle();
  CHECK(again.ui.mirror().message.find("does not hold a lesson that can be read") !=
        std::string::npos);
  CHECK(again.value("/title") == before);
}

TEST_CASE("a lesson is opened from a file, handed on, and what is no lesson is told") {
  const Catalogue library = built_in_catalogue().value();
  Lesson own = built_in_lesson("room", library).value();
  own.title = "My own room";
  const std::string text = lesson_to_json(own);
  Screen screen(phone());
  screen.settle();
  screen.ui.file_opened(kPlanFile, "room.lesson.json", text);
  screen.settle();
  CHECK(screen.ui.mirror().lesson.title == "My own room");
  press(screen, kLessonNext);
  press(screen, kLessonSave);
  CHECK(screen.platform.saved.at("My-own-room.lesson.json") == text);
  press(screen, kLessonLink);
  CHECK(screen.platform.copied.find("#lesson-1.2.") != std::string::npos);
  CHECK(screen.ui.mirror().message.find("It opens this step, and has ") != std::string::npos);
  press(screen, kLessonPrint);
  CHECK(screen.platform.printed.find("Answers") != std::string::npos);
  const std::string title = screen.ui.mirror().lesson.title;
  screen.ui.file_opened(kPlanFile, "bad.json", R"({"widegate_lesson": 1})");
  screen.settle();
  CHECK(screen.ui.mirror().message.starts_with("bad.json is not a lesson: /"));
  CHECK(screen.ui.mirror().lesson.title == title);
}

TEST_CASE("a step shows its figures before and after, and they follow the control") {
  Screen screen(phone());
  screen.settle();
  start(screen, "pixels-in-the-file");
  press(screen, kLessonNext);
  const auto figure = [&](std::size_t at) { return screen.ui.mirror().lesson.figures.at(at); };
  CHECK(figure(0) == WatchedText{"Recorded width", "4096 px", "2048 px"});
  CHECK(figure(1) == WatchedText{"Counted", "9 437 184 photosites", "9 437 184 photosites"});
  screen.ui.set("/format/recording", "resample-3840");
  screen.settle();
  CHECK(figure(0) == WatchedText{"Recorded width", "4096 px", "3840 px"});
}
