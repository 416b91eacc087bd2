// What stands above a ranking's list, in sentences for people: one telling for every surface.
#pragma once

#include <string>
#include <vector>

#include "core/choose/ranking.h"

namespace widegate {

/// How many pass; whether all of them carry a caution; whether the kind of card is what keeps the
/// others out; how many are as good as the first; which is the first that plays at once in the
/// edit, where the first does not; with which lens they are compared. A sentence each, those that
/// have something to say; none for a ranking with problems.
/// @param ranking  rank(plan, catalogue).
[[nodiscard]] std::vector<std::string> words_above_ranking(const Plan& plan,
                                                           const Catalogue& catalogue,
                                                           const Ranking& ranking);

}  // namespace widegate
