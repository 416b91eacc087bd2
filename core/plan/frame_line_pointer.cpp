#include "core/plan/frame_line_pointer.h"

namespace widegate {
namespace {

constexpr std::string_view kFirst = "/deliverable/frame_lines/0/";
constexpr std::string_view kLines = "/deliverable/frame_lines/";

}  // namespace

std::string on_line(std::string_view pointer, std::size_t line) {
  if (line == 0 || !pointer.starts_with(kFirst)) return std::string(pointer);
  return std::string(kLines) + std::to_string(line) + "/" +
         std::string(pointer.substr(kFirst.size()));
}

std::string on_first_line(std::string_view pointer) {
  if (!pointer.starts_with(kLines)) return std::string(pointer);
  const std::size_t end = pointer.find('/', kLines.size());
  if (end == std::string_view::npos) return std::string(pointer);
  return std::string(kFirst) + std::string(pointer.substr(end + 1));
}

}  // namespace widegate
