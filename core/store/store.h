// Store: from bytes per frame to cards, copies, archive and money. Bytes per frame are codec.h's;
// the parts are in footage.h, copying.h, card_rotation.h, card_load.h and archive.h.
#pragma once

#include <tl/expected.hpp>

#include "core/catalogue/catalogue.h"
#include "core/plan/plan.h"
#include "core/store/report.h"

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
  bool film = false;  ///< The data are those of a scan: there are no cards and no copying of them.
};

/// Why there is no StoreReport.
enum class StoreFault {
  no_frame_size,   ///< The codec has none for this raster and rate.
  card_too_small,  ///< Not one frame fits the card.
  too_large,       ///< A count of frames, cards, drives or tapes would not be exact (2^53 or more).
};

/// Every figure of the Store question. Counts are exact; bytes over the whole shoot hold 15
/// digits. A lossless codec gives ranges: both ends are worked out in full.
/// @param plan  checked; its run, shooting and store parts are used.
/// @param recorded_width_pixels, recorded_height_pixels  raster of the file.
/// @source docs/formulas/store.md.
[[nodiscard]] tl::expected<StoreReport, StoreFault> store_report(
    const Plan& plan, const StoreParts& parts, std::int64_t recorded_width_pixels,
    std::int64_t recorded_height_pixels);

}  // namespace widegate
