// Ids made from content, so that the same input gives the same document: the core has no clock and
// no randomness.
#pragma once

#include <string>
#include <string_view>

namespace widegate::fdl {

/// A UUID whose bits are a hash of `content`: version 8, the one RFC 9562 leaves to applications.
[[nodiscard]] std::string uuid_from(std::string_view content);

/// `stem` (letters, digits, underscores; cut to 23), '_' and 8 hexadecimal digits of a hash of
/// `content`: at most 32 characters, as a framing decision list allows.
[[nodiscard]] std::string id_from(std::string_view stem, std::string_view content);

}  // namespace widegate::fdl
