// Cards of a show by model: how many every part asks for, how many are out on one day, and when
// those at hand run short.
#pragma once

#include <vector>

#include "core/show/evaluated_part.h"
#include "core/show/report.h"

namespace widegate {

/// One row for each model, sorted by id. A part whose copying never keeps up asks for more cards
/// every day; every other for its cards to have on each of its days.
[[nodiscard]] std::vector<CardKind> card_kinds(const Show& show,
                                               const std::vector<EvaluatedPart>& parts,
                                               std::int64_t days);

}  // namespace widegate
