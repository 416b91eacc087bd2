// A lesson that was run, as a table for a terminal and as JSON for programs.
#pragma once

#include <string>

#include "core/lesson/lesson.h"
#include "core/lesson/lesson_run.h"

namespace widegate::cli {

/// Every step: its words, the control to move, and what the watched figures were and are.
[[nodiscard]] std::string lesson_table(const Lesson& lesson, const LessonRun& run);

/// The same as JSON, with the exact numbers beside those that people read.
[[nodiscard]] std::string lesson_json(const Lesson& lesson, const LessonRun& run);

}  // namespace widegate::cli
