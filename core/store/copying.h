// Copying a card: what limits the speed, and how often the data passes. What is copied is
// footage.h's.
#pragma once

#include <cstdint>
#include <string_view>

#include "core/store/store.h"

namespace widegate {

/// How fast a copying station works.
struct CopySpeed {
  std::int64_t bytes_per_s = 0;  ///< Of the slowest part.
  std::string_view limited_by;   ///< "card reader", "link", "drive" or "checksum".
  std::int64_t passes = 1;       ///< How often all the data is moved: 1 to 3.
};

/// Copying takes passes * bytes / slowest part.
///
/// The card is read once and written to all drives at the same time: each drive has a link and a
/// write of its own, so copies do not slow each other down, and the reader is shared. The checksum
/// runs beside the copy, one stream for each drive. Each further pass is taken at the speed of the
/// same slowest part. The passes: 1 to copy; 2 when every copy is read back; 3 when the card is
/// read again as well. A drive that is read back and reads slower than it writes counts with its
/// read. Parts that take no share do not limit: the drive when there are no copies on drives, the
/// checksum when nothing is verified. On a tie the earlier of reader, link, drive, checksum is
/// named.
/// @source common practice, no source; docs/formulas/store.md, "Offload".
[[nodiscard]] CopySpeed copy_speed(const Storing& storing, const StoreParts& parts);

}  // namespace widegate
