#include "core/handover/link/link_kind.h"

#include <utility>

#include "core/base/plain_text.h"

namespace widegate {

std::string_view link_fragment(std::string_view link) {
  const std::size_t hash = link.rfind('#');
  return hash == std::string_view::npos ? link : link.substr(hash + 1);
}

std::string_view link_version(std::string_view fragment, std::string_view mark) {
  if (!fragment.starts_with(mark)) return {};
  fragment.remove_prefix(mark.size());
  const std::size_t point = fragment.find('.');
  if (point == 0 || point == std::string_view::npos || point > 4) return {};
  const std::string_view version = fragment.substr(0, point);
  return version.find_first_not_of("0123456789") == version.npos ? version : std::string_view();
}

bool is_lesson_link(std::string_view link) {
  return link_fragment(link).starts_with(kLessonLinkMark);
}

bool is_show_link(std::string_view link) {
  return !link_version(link_fragment(link), kShowLinkMark).empty();
}

tl::unexpected<Problems> refused_link(std::string_view link, std::string accepted) {
  Problem problem{.pointer = "", .value = in_quotes(link), .accepted = std::move(accepted)};
  return tl::unexpected<Problems>(Problems{std::move(problem)});
}

}  // namespace widegate
