// Whole cards on drives and tapes: how many media of one capacity are filled. What the cards hold
// is card_load.h's, how many copies there are archive.h's.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "core/base/wide.h"

namespace widegate {

/// Cards of one size, kept in one piece.
struct Pieces {
  std::int64_t bytes = 0;  ///< Of each; 0 takes no room.
  std::int64_t count = 0;
  friend bool operator==(const Pieces&, const Pieces&) = default;
};

/// What goes on one copy.
struct MediaLoad {
  std::vector<Pieces> pieces;
  Wide loose = 0;  ///< Bytes that may be parted anywhere: single frames of a scan.

  /// All of it.
  [[nodiscard]] Wide bytes() const;
};

/// Media of this capacity that the load fills, cards in one piece, first-fit decreasing: the
/// largest cards first, each on the first medium that has room for it. A card larger than a medium
/// is parted. Loose bytes fill the room that is left, then media of their own.
///
/// The order of `load.pieces` changes nothing. Never fewer than fewest_media(), never more than
/// 11/9 of the fewest possible and 2/3 of a medium.
/// @param capacity_bytes  above 0.
/// @return nothing when a count cannot be exact (2^53 or more).
/// @source G. Dósa, "The tight bound of first fit decreasing bin-packing algorithm is FFD(I) <=
///         11/9 OPT(I) + 6/9", ESCAPE 2007.
[[nodiscard]] std::optional<std::int64_t> media_filled(const MediaLoad& load,
                                                       std::int64_t capacity_bytes);

/// ceil(bytes / capacity): no way of packing takes fewer.
[[nodiscard]] std::optional<std::int64_t> fewest_media(const MediaLoad& load,
                                                       std::int64_t capacity_bytes);

}  // namespace widegate
