// A lesson as short text for the fragment of an address; it says at which step it opens. The layout
// is in docs/link.md.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "core/base/problem.h"
#include "core/catalogue/catalogue.h"
#include "core/handover/link/link_kind.h"
#include "core/lesson/lesson.h"

namespace widegate {

/// "lesson-1.3." and base64url text: opens at the third step. A lesson that is one of the built-in
/// ones, value for value, is named instead: "lesson-1.3.id.squeeze".
/// @param lesson  checked.
/// @param step    from 1.
/// @return nothing when the lesson is too long for a link (kMaxLinkLength of link.h).
[[nodiscard]] std::optional<std::string> lesson_to_link(const Lesson& lesson, std::int64_t step,
                                                        const Catalogue& catalogue);

struct LinkedLesson {
  Lesson lesson;
  std::int64_t step = 1;  ///< From 1.
};

/// Reads a link of this or an earlier version; also with "#" or a whole address before it.
/// @return the lesson and its step, or problems: not a lesson's link, damaged, made by a newer
///         version, too long, a step it has not, or what lesson_from_json() would refuse.
[[nodiscard]] Checked<LinkedLesson> lesson_from_link(std::string_view link,
                                                     const Catalogue& catalogue);

}  // namespace widegate
