// What a link holds, by how it begins, and the pieces every link is made of; reading what it holds
// is its own reader's.
#pragma once

#include <string>
#include <string_view>

#include "core/base/problem.h"

namespace widegate {

/// What the fragment of a lesson's and of a show's link begins with; the version follows. A plan's
/// link begins with its version.
inline constexpr std::string_view kLessonLinkMark = "lesson-";
inline constexpr std::string_view kShowLinkMark = "s";

/// The fragment of a whole address; a text without '#' is one already.
[[nodiscard]] std::string_view link_fragment(std::string_view link);

/// The one to three digits between the mark and the first point; nothing when they are not there.
[[nodiscard]] std::string_view link_version(std::string_view fragment, std::string_view mark = {});

/// True for a link, or an address with one, that holds a lesson of any version.
[[nodiscard]] bool is_lesson_link(std::string_view link);

/// True for a link, or an address with one, that holds a show of any version.
[[nodiscard]] bool is_show_link(std::string_view link);

/// The one problem of a link that is not read.
[[nodiscard]] tl::unexpected<Problems> refused_link(std::string_view link, std::string accepted);

}  // namespace widegate
