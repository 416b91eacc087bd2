// What to look out for in a show, and its words.
#pragma once

#include <vector>

#include "core/show/evaluated_part.h"
#include "core/show/report.h"

namespace widegate {

/// Failures first, then cautions; what the parts' own reports say of them with the part's name in
/// front, without the usual cautions.
/// @param report  complete but for its notes.
[[nodiscard]] std::vector<ShowNote> show_notes(const std::vector<EvaluatedPart>& parts,
                                               const ShowReport& report);

/// The standing line at the foot of everything that tells a show.
[[nodiscard]] std::string_view show_standing_text();

}  // namespace widegate
