// What a link holds, by how it begins; reading it is its own reader's.
#pragma once

#include <string_view>

namespace widegate {

/// What the fragment of a lesson's link begins with; its version follows.
inline constexpr std::string_view kLessonLinkMark = "lesson-";

/// True for a link, or an address with one, that holds a lesson of any version.
[[nodiscard]] inline bool is_lesson_link(std::string_view link) {
  const std::size_t hash = link.rfind('#');
  const std::string_view fragment = hash == std::string_view::npos ? link : link.substr(hash + 1);
  return fragment.substr(0, kLessonLinkMark.size()) == kLessonLinkMark;
}

}  // namespace widegate
