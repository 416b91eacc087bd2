// A Ranking as a table for a spreadsheet. Cells and quoting are csv.h's.
#pragma once

#include <span>
#include <string>

#include "core/choose/ranking.h"

namespace widegate {

/// One row of names, then one row for each format: place, ids, score, the figures, and the signed
/// margin of every requirement with its unit in the name (empty where it does not apply); last the
/// keys of the requirements that failed. Numbers have a decimal point and no grouping.
/// @param shown  the first rows of a ranking, or all.
[[nodiscard]] std::string ranking_to_csv(std::span<const RankedFormat> shown);

}  // namespace widegate
