// The whole shoot after the cards: copies on drives and tapes, upload, and money.
#pragma once

#include <cstdint>
#include <optional>

#include "core/store/footage.h"
#include "core/store/packing.h"
#include "core/store/store.h"

namespace widegate {

/// Figures for frames of one size, all units, cameras and days together.
struct ArchiveFigures {
  double shoot_total_bytes = 0;  ///< To 15 digits.
  double copies_total_bytes = 0;
  std::int64_t drives = 0;
  std::int64_t tapes = 0;
  std::int64_t fewest_drives = 0;  ///< No way of packing takes fewer.
  std::int64_t fewest_tapes = 0;
  double tape_hours = 0;
  double upload_total_bytes = 0;
  double upload_hours = 0;
  double drive_cost = 0;
  double tape_cost = 0;
  double upload_cost = 0;
};

/// Each copy starts on a drive of its own: drives = copies * media_filled(), and tapes likewise.
/// Tapes are written one after another, at the tape's native speed or the speed the
/// drive is read at when that is lower, and read back once as fast where copies are verified.
/// Without a tape in `parts` there are no tape copies. Proxies are uploaded at their own data rate
/// for every second of playing time.
/// @param load             what one copy holds.
/// @param playing_seconds  of all footage, at the project rate.
/// @return nothing when a count cannot be exact.
[[nodiscard]] std::optional<ArchiveFigures> archive_figures(const Storing& storing,
                                                            const StoreParts& parts,
                                                            const Quotient& total_bytes,
                                                            const MediaLoad& load,
                                                            double playing_seconds);

}  // namespace widegate
