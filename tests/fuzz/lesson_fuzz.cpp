// Feeds arbitrary bytes to the lesson reader, and to the reader of a lesson's link. Whatever one
// accepts must come back from its own text unchanged and must run; whatever it refuses must say why
// on one line.
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>

#include "core/base/plain_text.h"
#include "core/catalogue/catalogue_json.h"
#include "core/lesson/lesson_json.h"
#include "core/lesson/lesson_link.h"
#include "core/lesson/lesson_run.h"

namespace {

using namespace widegate;

void require(bool holds) {
  if (!holds) std::abort();
}

void require_reasons(const Problems& problems) {
  require(!problems.empty());
  for (const Problem& problem : problems) {
    require(is_plain_text(to_line(problem)));
    require(problem.value.size() <= 120 && !problem.accepted.empty());
  }
}

void require_round_trips(const Lesson& lesson, const Catalogue& library) {
  const std::string written = lesson_to_json(lesson);
  const auto again = lesson_from_json(written, library);
  require(again.has_value() && *again == lesson);
  require(lesson_to_json(*again) == written);
  require(run_lesson(lesson, library).steps.size() == lesson.steps.size());
  const auto link = lesson_to_link(lesson, 1, library);
  if (!link) return;
  const auto linked = lesson_from_link(*link, library);
  require(linked.has_value() && linked->lesson == lesson && linked->step == 1);
}

void check(std::string_view text) {
  static const Catalogue kLibrary = built_in_catalogue().value();
  const auto lesson = lesson_from_json(text, kLibrary);
  if (lesson) require_round_trips(*lesson, kLibrary);
  if (!lesson) require_reasons(lesson.error());
  const auto linked = lesson_from_link(text, kLibrary);
  if (linked) require_round_trips(linked->lesson, kLibrary);
  if (!linked) require_reasons(linked.error());
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  check({reinterpret_cast<const char*>(data), size});
  return 0;
}
