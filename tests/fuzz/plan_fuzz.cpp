// Feeds arbitrary bytes to the plan reader. Whatever it accepts must come back from its own text
// unchanged and must evaluate; whatever it refuses must say why on one line.
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "core/base/plain_text.h"
#include "core/catalogue/catalogue_json.h"
#include "core/field/field.h"
#include "core/plan/plan_json.h"
#include "core/report/evaluate.h"

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

void check(std::string_view text) {
  static const Catalogue kLibrary = built_in_catalogue().value();
  const auto plan = plan_from_json(text, kLibrary);
  if (!plan) return require_reasons(plan.error());
  const std::string written = plan_to_json(*plan);
  const auto again = plan_from_json(written, kLibrary);
  require(again.has_value() && *again == *plan);
  require(plan_to_json(*again) == written);
  require(evaluate(*plan, kLibrary).problems.empty());
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  check({reinterpret_cast<const char*>(data), size});
  return 0;
}
