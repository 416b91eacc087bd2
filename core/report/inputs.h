// The numbers of a plan and of the library's rows that the Store question's formulas start from,
// carried in the Report so that its workings need nothing else.
#pragma once

#include "core/plan/plan.h"
#include "core/report/report.h"
#include "core/store/store.h"

namespace widegate {

/// Fills `given` and `given_words`.
/// @param plan    checked.
/// @param report  its run and store parts are complete.
void add_given(Report& report, const Plan& plan, const StoreParts& parts);

/// True when the source of a library's row says that it was invented.
[[nodiscard]] bool is_invented(std::string_view source);

}  // namespace widegate
