// The tables of every scalar value of a lesson, its steps and their figures: reading, writing,
// links and the schema walk them. Plans and lists are handled beside them, by name.
#pragma once

#include <span>

#include "core/field/field.h"
#include "core/lesson/lesson.h"

namespace widegate {

inline constexpr std::size_t kMaxLessonSteps = 24;
inline constexpr std::size_t kMaxLessonFigures = 12;  ///< Of one step.

[[nodiscard]] std::span<const Field<Lesson>> lesson_fields();
[[nodiscard]] std::span<const Field<LessonStep>> lesson_step_fields();
[[nodiscard]] std::span<const Field<LessonFigure>> lesson_figure_fields();

}  // namespace widegate
