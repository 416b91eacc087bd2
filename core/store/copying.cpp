#include "core/store/copying.h"

#include <algorithm>

namespace widegate {
namespace {

std::int64_t passes_of(Verification verification) {
  switch (verification) {
    case Verification::none:
      return 1;
    case Verification::destination:
      return 2;
    case Verification::full:
      return 3;
  }
  return 1;
}

void limit(CopySpeed& speed, std::int64_t bytes_per_s, std::string_view part) {
  if (bytes_per_s >= speed.bytes_per_s) return;
  speed.bytes_per_s = bytes_per_s;
  speed.limited_by = part;
}

}  // namespace

CopySpeed copy_speed(const Storing& storing, const StoreParts& parts) {
  const bool verified = storing.verification != Verification::none;
  CopySpeed speed{.bytes_per_s = parts.card.read_bytes_per_s,
                  .limited_by = "card reader",
                  .passes = passes_of(storing.verification)};
  limit(speed, parts.link.payload_bytes_per_s, "link");
  if (storing.drive_copies > 0) {
    limit(speed, parts.drive.write_bytes_per_s, "drive");
    if (verified) limit(speed, parts.drive.read_bytes_per_s, "drive");
  }
  if (verified) limit(speed, parts.checksum.bytes_per_s, "checksum");
  return speed;
}

}  // namespace widegate
