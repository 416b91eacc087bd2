// A Report as a table for reading in a terminal, at most 80 columns wide.
#pragma once

#include <string>

#include "core/catalogue/catalogue.h"
#include "core/plan/plan.h"
#include "core/report/report.h"

namespace widegate::cli {

/// Sections in the order of the questions, verdicts last.
/// @param plan, catalogue  what the report was made from; names and currency are looked up in them.
/// @param report           a report without problems.
[[nodiscard]] std::string report_table(const Plan& plan, const Report& report,
                                       const Catalogue& catalogue);

}  // namespace widegate::cli
