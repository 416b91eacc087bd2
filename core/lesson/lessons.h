// Prepared lessons for a class: each is a row of steps, each step a plan to play with and a claim
// about what its numbers do. Data only; showing them is the front end's business.
#pragma once

#include <cstddef>
#include <span>
#include <string_view>
#include <vector>

#include "core/base/problem.h"
#include "core/catalogue/catalogue.h"
#include "core/plan/plan.h"
#include "core/report/notes.h"

namespace widegate {

/// One change to the plan, as with_field() takes it.
struct LessonEdit {
  std::string_view pointer;
  std::string_view text;
};

/// What a figure does from the step before to this one; tests hold every step to its claims.
enum class LessonMove { same, rises, falls };
struct LessonClaim {
  std::string_view key;  ///< Of report_fields.h: "headline.minutes_per_card".
  LessonMove move;
};

/// What the class looks at in a step.
enum class LessonPicture {
  sensor,            ///< To scale, with circle and frame line.
  scene_recorded,    ///< Through the lens, squeezed as on the sensor.
  scene_desqueezed,  ///< As it will be seen.
  magnifier,         ///< The scene, and single photosites and pixels.
  both_sensors,      ///< This step's and another's over each other.
  both_scenes,       ///< This step's and another's side by side.
};

struct LessonStep {
  std::string_view title;
  std::string_view words;    ///< Two or three sentences for the wall.
  std::string_view figure;   ///< Key of the figure whose working is shown.
  std::string_view control;  ///< The one to move, as a pointer of plan_fields.h.
  LessonPicture picture = LessonPicture::sensor;
  std::size_t against = 0;  ///< Of `both_...`: the step whose plan is compared with, from 0.
  std::vector<LessonEdit> edits = {};    ///< On top of all earlier steps of the lesson.
  std::vector<LessonClaim> claims = {};  ///< Against the step before; none in a first step.
};

struct Lesson {
  std::string_view id;
  std::string_view title;
  std::string_view aim;  ///< One sentence: what the class knows afterwards.
  std::vector<LessonStep> steps;
};

/// All lessons, in teaching order.
[[nodiscard]] std::vector<Lesson> lessons();

/// The plan of a step: a new plan with the edits of all steps up to it.
/// @return problems when an edit does not fit the catalogue (one that lacks the demo cameras).
[[nodiscard]] Checked<Plan> lesson_plan(const Lesson& lesson, std::size_t step,
                                        const Catalogue& catalogue);

}  // namespace widegate
