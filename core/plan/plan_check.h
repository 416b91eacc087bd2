// The limits of every value of a plan, and the check that a plan stays inside them and names only
// things that exist. Formulas rely on it; JSON, links and the front end all pass through it.
#pragma once

#include "core/base/problem.h"
#include "core/catalogue/catalogue.h"
#include "core/plan/plan.h"

namespace widegate {

/// Every value out of its limits, with pointers into the plan's JSON form; empty when all is well.
/// The limits are the table in plan_fields.h and are published in docs/schema/plan.schema.json.
[[nodiscard]] Problems check_plan(const Plan& plan, const Catalogue& catalogue);

}  // namespace widegate
