// The lesson that is under way, as it was prepared. Plain data.
#pragma once

#include "core/lesson/lesson.h"
#include "core/lesson/lesson_run.h"

namespace widegate {

struct LessonShown {
  Lesson lesson;
  LessonRun run;  ///< Of all its steps.
};

}  // namespace widegate
