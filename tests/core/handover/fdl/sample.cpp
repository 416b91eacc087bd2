#include "tests/core/handover/fdl/sample.h"

#include <doctest/doctest.h>

#include <nlohmann/json.hpp>

#include "core/handover/fdl/read.h"

namespace widegate::fdl {

std::string patched(std::string_view text, std::string_view patch) {
  const auto json = nlohmann::ordered_json::parse(text);
  return json.patch(nlohmann::ordered_json::parse(patch)).dump();
}

Document read_or_fail(std::string_view text) {
  auto reading = read_document(text);
  if (!reading) {
    for (const Problem& problem : reading.error()) MESSAGE(to_line(problem));
  }
  REQUIRE(reading.has_value());
  return reading->document;
}

}  // namespace widegate::fdl
