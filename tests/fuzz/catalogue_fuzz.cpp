// Feeds arbitrary bytes to the catalogue reader. Whatever it accepts must come back from its own
// text unchanged, and a plan that carries it must be accepted or refused, never worse.
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "core/base/plain_text.h"
#include "core/catalogue/catalogue_json.h"
#include "core/field/field.h"
#include "core/report/evaluate.h"

namespace {

using namespace widegate;

void require(bool holds) {
  if (!holds) std::abort();
}

/// Every format of the accepted cameras, in a plan that carries them.
void evaluate_formats(const Catalogue& own, const Catalogue& library) {
  Plan plan;
  plan.own = own;
  for (const Camera& camera : own.cameras) {
    for (const SensorMode& mode : camera.modes) {
      for (const Recording& recording : mode.recordings) {
        for (const std::string& codec : recording.codecs) {
          plan.format = {camera.id, mode.id, recording.id, codec};
          (void)evaluate(plan, library);
        }
      }
    }
  }
}

void check(std::string_view text) {
  static const Catalogue kLibrary = built_in_catalogue().value();
  const auto catalogue = catalogue_from_json(text, kLibrary);
  if (!catalogue) {
    require(!catalogue.error().empty());
    for (const Problem& problem : catalogue.error()) require(is_plain_text(to_line(problem)));
    return;
  }
  const std::string written = catalogue_to_json(*catalogue);
  const auto again = catalogue_from_json(written, kLibrary);
  require(again.has_value() && *again == *catalogue);
  require(catalogue_to_json(*again) == written);
  evaluate_formats(*catalogue, kLibrary);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  check({reinterpret_cast<const char*>(data), size});
  return 0;
}
