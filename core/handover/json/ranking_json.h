// A Ranking as a JSON document. Only writing: rankings are made, never read.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "core/choose/binding.h"
#include "core/choose/ranking.h"
#include "core/choose/smallest_change.h"

namespace widegate {

/// Counts over the whole ranking and one line for each format shown; every key carries its unit,
/// doubles have 12 significant digits, ranges are {"least", "most"}, what does not exist is null.
/// The keys are listed in docs/formulas/choose.md. The same text natively and in WebAssembly.
/// When nothing passes, "binding" says what binds and "ways_out" what would let something pass.
/// @param above    words_above_ranking().
/// @param shown    the first rows of ranking.formats, or all.
/// @param changes  for each row shown its smallest_changes(); or empty, then no row has "changes".
/// @param ways     ways_out() of the ranking.
[[nodiscard]] std::string ranking_to_json(const Plan& plan, const Ranking& ranking,
                                          std::span<const std::string> above,
                                          std::span<const RankedFormat> shown,
                                          std::span<const std::vector<Change>> changes,
                                          std::span<const WayOut> ways);

/// Stable key of the lens that formats were given: "same_view", "one_camera".
[[nodiscard]] std::string_view lens_given_key(LensGiven given);

}  // namespace widegate
