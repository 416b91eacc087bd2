// Text into a JSON value with every hostile shape refused, and back. What the values mean is in
// plan_json.cpp and catalogue_json.cpp. For the core's own sources: it brings in the JSON library.
#pragma once

#include <nlohmann/json.hpp>
#include <string>
#include <string_view>

#include "core/base/problem.h"

namespace widegate {

using Json = nlohmann::ordered_json;

/// What a document may not exceed; the defaults are more than any of our own documents needs.
struct JsonLimits {
  std::size_t depth = 16;    ///< Lists and objects inside one another.
  std::size_t members = 64;  ///< Of one object.
};

/// Parses one document (RFC 8259). Text that is not JSON gives one problem that names the byte
/// offset; a repeated key, too deep nesting or too many members one with the pointer.
[[nodiscard]] Checked<Json> parse_json(std::string_view text, JsonLimits limits = {});

/// The document, indented by two blanks; malformed UTF-8 is replaced.
[[nodiscard]] std::string print_json(const Json& document);

/// A value for a message: text quoted, numbers as they were read, "a list", "an object", "null".
[[nodiscard]] std::string shown_json(const Json& value);

}  // namespace widegate
