// The lessons that come with the program: docs/lessons/*.lesson.json, put into a generated source
// at build time by tools/cmake/embed_texts.cmake.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/catalogue/catalogue.h"
#include "core/lesson/lesson.h"

namespace widegate {

/// One lesson document for each file, in the order of the file names.
[[nodiscard]] std::span<const std::string_view> lesson_texts();

/// The ids in the order of lesson_texts(): names for screens and short links, never given again.
[[nodiscard]] std::span<const std::string_view> built_in_lesson_ids();

/// What a list of lessons shows.
struct LessonHead {
  std::string id;
  std::string title;
  std::string aim;
};

/// All of them, in teaching order, without looking at their steps.
[[nodiscard]] std::vector<LessonHead> built_in_lesson_heads();

/// @return nothing for an unknown id, or when the catalogue lacks rows that the lesson needs.
[[nodiscard]] std::optional<Lesson> built_in_lesson(std::string_view id,
                                                    const Catalogue& catalogue);

}  // namespace widegate
