// A lesson for a class: a row of steps, each a plan to play with, words for the wall, and the
// figures that prove the words. Data only; reading is lesson_json.h's, running lesson_run.h's.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/plan/plan.h"

namespace widegate {

/// What a figure does from an earlier step to this one.
enum class LessonMove { rises, falls, unchanged };

/// A figure to watch in a step, and what the words say it does. Without any claim it is only shown.
struct LessonFigure {
  std::string key;                  ///< Of the report: "headline.minutes_per_card".
  std::optional<LessonMove> does;   ///< Against the step `since`.
  std::optional<double> times;      ///< As a multiple of what it was in the step `since`.
  std::optional<double> value;      ///< The number itself; both ends of a range.
  std::optional<std::string> says;  ///< What is no number: "true", "card".
  double within = 0;                ///< How far `times` and `value` may be off; a rounding always.
  std::int64_t since = 0;           ///< The step compared with, from 1; 0 for the step before.

  friend bool operator==(const LessonFigure&, const LessonFigure&) = default;
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

/// In words, question and answer "{key}" stands for a figure of the step's plan, "{2:key}" for one
/// of the second step's, "{#key}" one without its unit: what depends on the plan is never typed
/// (lesson_run.h tells it).
struct LessonStep {
  std::string title;
  std::string words;  ///< Two or three sentences for the wall.
  Plan plan;
  std::string control;  ///< The one to move, as a pointer of plan_fields.h.
  LessonPicture picture = LessonPicture::sensor;
  std::int64_t against = 0;  ///< Of `both_...`: the step whose plan is compared with, from 1.
  std::vector<LessonFigure> figures;  ///< The working of the first is shown.
  std::string question;               ///< For the handout; empty for none.
  std::string answer;

  friend bool operator==(const LessonStep&, const LessonStep&) = default;
};

struct Lesson {
  std::string title;
  std::string aim;  ///< One sentence: what the class knows afterwards.
  std::vector<LessonStep> steps;

  friend bool operator==(const Lesson&, const Lesson&) = default;
};

}  // namespace widegate
