#include "web/act/lesson_actions.h"

#include <algorithm>
#include <array>
#include <cstdint>
#include <utility>
#include <vector>

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

void show(const Lesson& lesson, std::size_t step, PanelState& state) {
  const LessonStep& wanted = lesson.steps[step];
  for (const LookRow& look : kLooks) {
    if (look.picture != wanted.picture) continue;
    look_at(look, state.picture);
    ComparisonState both = state.before_lesson;
    if (look.shows == PictureKind::comparison) {
      both.kept = lesson.steps[static_cast<std::size_t>(wanted.against) - 1].plan;
      both.side_by_side = look.side_by_side;
    }
    compare(both, state.comparison);
  }
}

}  // namespace

void leave_lesson(PanelState& state) {
  if (state.lesson.empty()) return;
  state.lesson.clear();
  state.lesson_shown.reset();
  look_at(kLooks.front(), state.picture);
  compare(state.before_lesson, state.comparison);
}

void end_lesson(PanelState& state, Commands& commands) {
  if (!state.lesson_shown) return;
  Plan before = state.lesson_shown->plan_before;
  const std::int64_t kept = state.lesson_shown->kept_before;
  leave_lesson(state);
  commands.emplace_back(ReplacePlan{std::move(before)});
  state.shelf.current = kept;
  ++state.shelf.revision;
  state.message = "The lesson is left. Your own plan is back as it was.";
  state.message_stays = true;
}

void show_lesson_step(std::size_t step, PanelState& state, Commands& commands) {
  if (!state.lesson_shown || step >= state.lesson_shown->lesson.steps.size()) return;
  const Lesson& lesson = state.lesson_shown->lesson;
  leave_shelf(state);
  state.lesson_step = step;
  state.frame_line = 0;
  state.jump = "lesson";
  show(lesson, step, state);
  commands.emplace_back(ReplacePlan{lesson.steps[step].plan});
}

}  // namespace widegate
