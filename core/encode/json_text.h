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
  /// Of the text: a library of 10,000 cameras has about half of that.
  std::size_t bytes = 32U << 20U;
  /// Numbers, texts, lists and objects in all: what bounds the memory that a document takes.
  std::size_t values = 2'000'000;
};

/// Parses one document (RFC 8259). Text that is not JSON gives one problem that names the byte
/// offset; a repeated key, a number out of range, too deep nesting, too many members or values one
/// with the pointer; a text that is too long one before anything is read.
[[nodiscard]] Checked<Json> parse_json(std::string_view text, JsonLimits limits = {});

/// The document, indented by two blanks; malformed UTF-8 is replaced.
[[nodiscard]] std::string print_json(const Json& document);

/// A value for a message: text quoted, numbers as they were read, "a list", "an object", "null".
[[nodiscard]] std::string shown_json(const Json& value);

}  // namespace widegate
