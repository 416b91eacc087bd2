// The storage plan and the lens set's cover as tables for spreadsheets (RFC 4180). The ranking's
// table is in ranking_csv.h.
#pragma once

#include <string>

#include "core/catalogue/catalogue.h"
#include "core/plan/plan.h"
#include "core/report/report.h"

namespace widegate {

/// Everything about data, cards, copies and money: columns figure, least, most, unit. A figure that
/// is no range has the same number twice. The first rows say by words what it is for.
/// @param report  a valid report of `plan`.
[[nodiscard]] std::string storage_to_csv(const Plan& plan, const Report& report,
                                         const Catalogue& catalogue);

/// One row for each focal length of the plan's lens set: its image circle, whether it covers the
/// frame line, the protected area and the mode, and the circle each of them needs. No rows when the
/// plan names no lens set.
[[nodiscard]] std::string cover_to_csv(const Report& report);

}  // namespace widegate
