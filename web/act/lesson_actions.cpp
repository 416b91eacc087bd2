#include "web/act/lesson_actions.h"

#include <algorithm>
#include <array>
#include <cstdint>
#include <utility>
#include <vector>

#include "core/lesson/lessons.h"
#include "web/act/kept_plan_actions.h"

namespace widegate {
namespace {

/// How the picture shows what a step looks at.
struct LookRow {
  LessonPicture picture;
  PictureKind shows;
  bool desqueezed, magnified, side_by_side;
};
constexpr std::array kLooks = {
    LookRow{LessonPicture::sensor, PictureKind::sensor, false, false, false},
    LookRow{LessonPicture::scene_recorded, PictureKind::scene, false, false, false},
    LookRow{LessonPicture::scene_desqueezed, PictureKind::scene, true, false, false},
    LookRow{LessonPicture::magnifier, PictureKind::scene, false, true, false},
    LookRow{LessonPicture::both_sensors, PictureKind::comparison, false, false, false},
    LookRow{LessonPicture::both_scenes, PictureKind::comparison, false, false, true},
};

/// A picture as it was never touched; the de-squeeze goes on from where it is.
void look_at(const LookRow& look, PictureState& picture) {
  const float desqueeze = picture.desqueeze;
  picture = {};
  picture.desqueeze = desqueeze;
  picture.desqueezed = look.desqueezed;
  picture.shows = look.shows;
  picture.magnified = look.magnified;
}

void compare(const ComparisonState& wanted, ComparisonState& comparison) {
  const std::uint64_t version = comparison.version + 1;
  comparison = wanted;
  comparison.version = version;
}

void show(const Lesson& lesson, std::size_t step, const App& app, PanelState& state) {
  const LessonStep& wanted = lesson.steps[step];
  for (const LookRow& look : kLooks) {
    if (look.picture != wanted.picture) continue;
    look_at(look, state.picture);
    ComparisonState both = state.before_lesson;
    if (look.shows == PictureKind::comparison) {
      if (auto other = lesson_plan(lesson, wanted.against, app.library())) {
        both.kept = std::move(*other);
      }
      both.side_by_side = look.side_by_side;
    }
    compare(both, state.comparison);
  }
}

}  // namespace

void leave_lesson(PanelState& state) {
  if (state.lesson.empty()) return;
  state.lesson.clear();
  look_at(kLooks.front(), state.picture);
  compare(state.before_lesson, state.comparison);
}

void show_lesson_step(std::size_t step, const App& app, PanelState& state, Commands& commands) {
  for (const Lesson& lesson : lessons()) {
    if (lesson.id != state.lesson || step >= lesson.steps.size()) continue;
    auto plan = lesson_plan(lesson, step, app.library());
    if (!plan) {
      leave_lesson(state);
      state.message = "This lesson needs the demo cameras of the library.";
      return;
    }
    leave_shelf(state);
    state.lesson_step = step;
    state.frame_line = 0;
    state.jump = "lesson";
    show(lesson, step, app, state);
    commands.emplace_back(ReplacePlan{std::move(*plan)});
  }
}

void start_lesson(std::string_view id, const App& app, PanelState& state, Commands& commands) {
  leave_lesson(state);
  const std::vector<Lesson> all = lessons();
  const auto same = [id](const Lesson& lesson) { return lesson.id == id; };
  if (std::none_of(all.begin(), all.end(), same)) return;
  state.before_lesson = state.comparison;
  state.lesson = id;
  show_lesson_step(0, app, state, commands);
}

}  // namespace widegate
