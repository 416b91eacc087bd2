// The spine: a plan and a catalogue in, every number and verdict out. Only the order of the parts
// lives here; each formula is in the file of its question.
#pragma once

#include "core/catalogue/catalogue.h"
#include "core/plan/plan.h"
#include "core/report/report.h"

namespace widegate {

/// Pure and total: an invalid plan gives a Report that holds nothing but its problems.
[[nodiscard]] Report evaluate(const Plan& plan, const Catalogue& catalogue);

}  // namespace widegate
