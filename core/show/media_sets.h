// Drives and tapes of a show: which parts fill the same ones, and how many are filled by the end of
// each day. The packing itself is packing.h's.
#pragma once

#include <optional>
#include <vector>

#include "core/show/evaluated_part.h"
#include "core/show/report.h"

namespace widegate {

/// The media of one set over the days.
struct FilledMedia {
  MediaSet set;
  std::vector<ByteRange> by_day;  ///< Of all copies, by the end of each shooting day.
};

/// Every set of drives, then of tapes: one for each part, or one for all parts of one model where
/// the archive is shared. The first copies of the parts share media, then the second, and so on.
/// Cards are packed afresh for each day, as if all that has been shot came at once; a day never
/// takes fewer media than the one before it, nor more than the whole show.
/// @param days  shooting days of the show.
/// @return nothing when a count cannot be exact (2^53 or more).
[[nodiscard]] std::optional<std::vector<FilledMedia>> media_of(
    const ShowArchive& archive, const std::vector<EvaluatedPart>& parts, std::int64_t days);

}  // namespace widegate
