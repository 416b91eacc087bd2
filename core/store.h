// Store: from bytes per frame to cards, copies, archive and money. Bytes per frame are codec.h's.
#pragma once

#include "core/catalogue.h"
#include "core/plan.h"
#include "core/report.h"

namespace widegate {

/// The rows a plan names, resolved; no pointer is null except `tape` (no tape chosen).
struct StoreParts {
  const Codec& codec;
  const Container& container;
  const Card& card;
  const Link& link;
  const Drive& drive;
  const Tape* tape;
  const Checksum& checksum;
};

/// Every figure of the Store question.
/// @param plan  checked; its run, shooting and store parts are used.
/// @param recorded_width_pixels, recorded_height_pixels  raster of the file.
/// @return an empty optional when the codec has no frame size for this raster and rate.
[[nodiscard]] std::optional<StoreReport> store_report(const Plan& plan, const StoreParts& parts,
                                                      std::int64_t recorded_width_pixels,
                                                      std::int64_t recorded_height_pixels);

}  // namespace widegate
