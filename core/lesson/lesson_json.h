// A Lesson as a JSON document (docs/schema/lesson.schema.json) and back.
#pragma once

#include <string>
#include <string_view>

#include "core/base/problem.h"
#include "core/catalogue/catalogue.h"
#include "core/lesson/lesson.h"

namespace widegate {

/// Reads a lesson document. A step's plan is a whole plan document, or the difference to the step
/// before (to a new plan in the first). Problems are unknown keys, wrong types, values out of
/// limits, plans that check_plan() refuses, a control that is no value of the step's plan, a figure
/// that the step's report has not, a claim that does not fit its figure, and a step number that is
/// not that of an earlier step. Whether claims hold is not looked at: lesson_run.h.
[[nodiscard]] Checked<Lesson> lesson_from_json(std::string_view text, const Catalogue& catalogue);

/// The lesson as a document: every plan as the difference to the step before, keys in a fixed
/// order, what equals its default left out; equal lessons give equal text.
[[nodiscard]] std::string lesson_to_json(const Lesson& lesson);

/// What lesson_from_json() finds in a lesson that came another way (a link); `steps` have passed
/// check_plan().
[[nodiscard]] Problems check_lesson(const Lesson& lesson, const Catalogue& catalogue);

}  // namespace widegate
