// A Plan as a JSON document (docs/schema/plan.schema.json) and back.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>
#include <string_view>

#include "core/base/problem.h"
#include "core/plan/plan.h"

namespace widegate {

/// Reads a plan document. Keys left out keep their default; unknown keys, wrong types, values out
/// of limits, ids that are in neither the document's own library nor `catalogue` are problems. Text
/// that is not JSON gives one problem with the byte offset.
[[nodiscard]] Checked<Plan> plan_from_json(std::string_view text, const Catalogue& catalogue);

/// The plan as a document. Rates and ratios are integers or "num/den" text; every key is written,
/// in a fixed order, so equal plans give equal text.
[[nodiscard]] std::string plan_to_json(const Plan& plan);

}  // namespace widegate
