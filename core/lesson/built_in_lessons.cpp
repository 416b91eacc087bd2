#include "core/lesson/built_in_lessons.h"

#include <algorithm>
#include <utility>

#include "core/encode/json_text.h"
#include "core/lesson/lesson_json.h"

namespace widegate {
namespace {

std::string text_at(const Json& object, const char* key) {
  const auto found = object.find(key);
  return found != object.end() && found->is_string() ? found->get<std::string>() : std::string();
}

}  // namespace

std::vector<LessonHead> built_in_lesson_heads() {
  std::vector<LessonHead> heads;
  for (std::size_t i = 0; i < lesson_texts().size(); ++i) {
    const Checked<Json> document = parse_json(lesson_texts()[i]);
    if (!document) continue;
    heads.push_back({std::string(built_in_lesson_ids()[i]), text_at(*document, "title"),
                     text_at(*document, "aim")});
  }
  return heads;
}

std::optional<Lesson> built_in_lesson(std::string_view id, const Catalogue& catalogue) {
  const auto ids = built_in_lesson_ids();
  const auto at = std::find(ids.begin(), ids.end(), id);
  if (at == ids.end()) return std::nullopt;
  Checked<Lesson> lesson =
      lesson_from_json(lesson_texts()[static_cast<std::size_t>(at - ids.begin())], catalogue);
  return lesson ? std::optional(std::move(*lesson)) : std::nullopt;
}

}  // namespace widegate
