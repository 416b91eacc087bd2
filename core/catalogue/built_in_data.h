// The built-in library as text: catalogue/*.json, put into a generated source at build time by
// tools/cmake/embed_texts.cmake. Reading it is catalogue_json.h's.
#pragma once

#include <span>
#include <string_view>

namespace widegate {

/// One catalogue document for each file, in the order of the file names.
[[nodiscard]] std::span<const std::string_view> catalogue_texts();

}  // namespace widegate
