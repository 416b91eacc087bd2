// Feeds arbitrary bytes to the framing decision list reader. Whatever it accepts must come back
// from its own text unchanged, and a template applied to it must give a document that is accepted
// too.
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "core/catalogue/catalogue_json.h"
#include "core/handover/fdl/apply_document.h"
#include "core/handover/fdl/plan_export.h"
#include "core/handover/fdl/plan_import.h"
#include "core/handover/fdl/read.h"
#include "core/handover/fdl/write.h"
#include "core/report/evaluate.h"

namespace {

using namespace widegate::fdl;

void require(bool holds) {
  if (!holds) std::abort();
}

const widegate::Catalogue& library() {
  static const widegate::Catalogue kLibrary = [] {
    auto catalogue = widegate::built_in_catalogue();
    require(catalogue.has_value());
    return *catalogue;
  }();
  return kLibrary;
}

/// A document that is accepted makes a plan that is accepted, or has no usable intent; and that
/// plan's own document is accepted too.
void check_import(const Document& document) {
  const auto import = import_plan(document, widegate::Plan{}, library());
  if (!import) return require(import.error().front().pointer == "/framing_intents");
  const widegate::Report report = widegate::evaluate(import->plan, library());
  const auto exported = export_plan(import->plan, library(), report);
  require(exported.has_value());
  require(read_document(write_document(exported->document)).has_value());
}

void check(std::string_view text) {
  const auto reading = read_document(text);
  if (!reading) return require(!reading.error().empty());
  const std::string written = write_document(reading->document);
  const auto again = read_document(written);
  require(again.has_value());
  require(write_document(again->document) == written);
  check_import(reading->document);
  const auto applied = apply_to_document(reading->document, reading->document, {});
  if (!applied) {
    return require(!applied.error().source.empty() || !applied.error().templates.empty());
  }
  require(read_document(write_document(applied->document)).has_value());
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  check({reinterpret_cast<const char*>(data), size});
  return 0;
}
