// The lesson that is under way, as it was prepared, and what it will give back. Plain data.
#pragma once

#include <cstdint>

#include "core/lesson/lesson.h"
#include "core/lesson/lesson_run.h"

namespace widegate {

struct LessonShown {
  Lesson lesson;
  LessonRun run;                 ///< Of all its steps.
  Plan plan_before;              ///< The person's own: it comes back when the lesson is left.
  std::int64_t kept_before = 0;  ///< Its number in the list of kept plans; 0 for none.
};

}  // namespace widegate
