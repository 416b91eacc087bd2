// Makes the bytes of a link fewer without losing any: an arithmetic coder whose model learns from
// the bytes already seen, beginning with a fixed sample of what links hold. Knows nothing of plans.
#pragma once

#include <optional>

#include "core/encode/base64url.h"

namespace widegate {

/// Longest byte string that is coded or decoded.
inline constexpr std::size_t kMaxLinkBytes = 60'000;

/// The same bytes in fewer, most of the time. Only integer arithmetic: the same result everywhere.
/// @param bytes  at most kMaxLinkBytes.
[[nodiscard]] Bytes squeezed(const Bytes& bytes);

/// The bytes that squeezed() was given; nothing when the text states a length above
/// kMaxLinkBytes. Any other input gives some bytes: whether they are right is for a checksum.
[[nodiscard]] std::optional<Bytes> unsqueezed(const Bytes& bytes);

}  // namespace widegate
