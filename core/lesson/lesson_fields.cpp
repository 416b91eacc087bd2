#include "core/lesson/lesson_fields.h"

#include <array>

namespace widegate {
namespace {

constexpr auto kMoves = std::to_array<ChoiceName>({
    {"rises", "Rises"},
    {"falls", "Falls"},
    {"unchanged", "Unchanged"},
});
constexpr auto kPictures = std::to_array<ChoiceName>({
    {"sensor", "The sensor, to scale"},
    {"scene_recorded", "The scene as recorded"},
    {"scene_desqueezed", "The scene de-squeezed"},
    {"magnifier", "The scene, magnified"},
    {"both_sensors", "Both sensors"},
    {"both_scenes", "Both scenes"},
});

/// Text on one line; `shortest` 1 where it may not be left out.
constexpr FieldSpec text_spec(std::string_view pointer, std::string_view label, int shortest,
                              int longest) {
  return {.pointer = pointer, .label = label, .low = shortest, .high = longest};
}

constexpr FieldSpec number_spec(std::string_view pointer, std::string_view label, Rational low) {
  return {.pointer = pointer, .label = label, .low = low, .high = 1'000'000'000'000'000};
}

constexpr FieldSpec step_spec(std::string_view pointer, std::string_view label) {
  return {.pointer = pointer, .label = label, .low = 0, .high = kMaxLessonSteps};
}

constexpr auto kLessonFields = std::to_array<Field<Lesson>>({
    field<&Lesson::title>(text_spec("/title", "Title", 1, 120)),
    field<&Lesson::aim>(text_spec("/aim", "What the class knows afterwards", 0, 240)),
});

constexpr auto kStepFields = std::to_array<Field<LessonStep>>({
    field<&LessonStep::title>(text_spec("/title", "Title of the step", 1, 120)),
    field<&LessonStep::words>(text_spec("/words", "Words of the step", 1, 700)),
    field<&LessonStep::control>(text_spec("/control", "The control to move", 1, 80)),
    field<&LessonStep::picture>({.pointer = "/picture", .label = "Picture", .choices = kPictures}),
    field<&LessonStep::against>(step_spec("/against", "Step to compare with")),
    field<&LessonStep::question>(text_spec("/question", "Question of the handout", 0, 400)),
    field<&LessonStep::answer>(text_spec("/answer", "Its answer", 0, 400)),
});

constexpr Rational kLowest = -1'000'000'000'000'000;
constexpr auto kFigureFields = std::to_array<Field<LessonFigure>>({
    field<&LessonFigure::key>(text_spec("/figure", "Figure of the report", 1, 100)),
    field<&LessonFigure::does>({.pointer = "/does", .label = "What it does", .choices = kMoves}),
    field<&LessonFigure::times>(number_spec("/times", "Times what it was", kLowest)),
    field<&LessonFigure::value>(number_spec("/value", "What it is", kLowest)),
    field<&LessonFigure::says>(text_spec("/says", "What it says", 0, 80)),
    field<&LessonFigure::within>(number_spec("/within", "How far it may be off", 0)),
    field<&LessonFigure::since>(step_spec("/since", "Step to compare with")),
});

WIDEGATE_EVERY_MEMBER(Lesson, rows_of<Lesson>(kLessonFields), 1, title, aim, steps);
WIDEGATE_EVERY_MEMBER(LessonStep, rows_of<LessonStep>(kStepFields), 2, title, words, plan, control,
                      picture, against, figures, question, answer);
WIDEGATE_EVERY_MEMBER(LessonFigure, rows_of<LessonFigure>(kFigureFields), 0, key, does, times,
                      value, says, within, since);

}  // namespace

std::span<const Field<Lesson>> lesson_fields() { return kLessonFields; }
std::span<const Field<LessonStep>> lesson_step_fields() { return kStepFields; }
std::span<const Field<LessonFigure>> lesson_figure_fields() { return kFigureFields; }

}  // namespace widegate
