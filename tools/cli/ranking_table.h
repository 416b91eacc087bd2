// A Ranking as a table for reading in a terminal, at most 80 columns wide.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "core/choose/ranking.h"
#include "core/choose/smallest_change.h"
#include "core/plan/plan.h"

namespace widegate::cli {

/// What was asked for, the formats shown with their figures (planning figures: the larger bound of
/// a range of data, the smaller of minutes), and for each rejected one its reasons and changes.
/// @param ranking  a ranking without problems; `shown` are rows of it, in its order.
/// @param above    words_above_ranking().
/// @param changes  for each row shown its smallest_changes().
/// @param ways     ways_out(), for a ranking that accepts nothing.
[[nodiscard]] std::string ranking_table(const Plan& plan, const Ranking& ranking,
                                        std::span<const std::string> above,
                                        std::span<const RankedFormat> shown,
                                        std::span<const std::vector<Change>> changes,
                                        std::span<const WayOut> ways);

}  // namespace widegate::cli
