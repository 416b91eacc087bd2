// Base64 for URLs, RFC 4648 section 5, without padding.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace widegate {

using Bytes = std::vector<std::uint8_t>;

[[nodiscard]] std::string to_base64url(const Bytes& bytes);

/// Nothing for a character outside the alphabet, padding, an impossible length, or left-over bits
/// that are not zero: every text has one decoding and every byte string one text.
[[nodiscard]] std::optional<Bytes> from_base64url(std::string_view text);

}  // namespace widegate
