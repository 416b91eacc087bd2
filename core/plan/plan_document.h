// A plan as a part of a larger JSON document. For the core's own sources: it brings in the JSON
// library.
#pragma once

#include "core/base/problem.h"
#include "core/catalogue/catalogue.h"
#include "core/encode/json_text.h"
#include "core/plan/plan.h"

namespace widegate {

/// As plan_from_json(), of a document that has been parsed; pointers count from the plan.
[[nodiscard]] Checked<Plan> plan_from_document(const Json& document, const Catalogue& catalogue);

/// What plan_to_json() prints.
[[nodiscard]] Json plan_document(const Plan& plan);

}  // namespace widegate
