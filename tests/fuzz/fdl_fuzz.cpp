// Feeds arbitrary bytes to the framing decision list reader. Whatever it accepts must come back
// from its own text unchanged, and a template applied to it must give a document that is accepted
// too.
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "core/fdl/apply_document.h"
#include "core/fdl/read.h"
#include "core/fdl/write.h"

namespace {

using namespace widegate::fdl;

void require(bool holds) {
  if (!holds) std::abort();
}

void check(std::string_view text) {
  const auto reading = read_document(text);
  if (!reading) return require(!reading.error().empty());
  const std::string written = write_document(reading->document);
  const auto again = read_document(written);
  require(again.has_value());
  require(write_document(again->document) == written);
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
