// A plan as a part of a larger JSON document, whole or as the difference to another plan. For the
// core's own sources: it brings in the JSON library.
#pragma once

#include <optional>

#include "core/base/problem.h"
#include "core/catalogue/catalogue.h"
#include "core/encode/json_path.h"
#include "core/encode/json_text.h"
#include "core/plan/plan.h"

namespace widegate {

/// As plan_from_json(), of a document that has been parsed; pointers count from the plan.
[[nodiscard]] Checked<Plan> plan_from_document(const Json& document, const Catalogue& catalogue);

/// The same of a whole plan document that stands at `path`; pointers begin with the path.
/// @return nothing after a problem.
[[nodiscard]] std::optional<Plan> plan_from_object(const Json& object, const JsonPath& path,
                                                   const Catalogue& catalogue, Problems& problems);

/// What plan_to_json() prints.
[[nodiscard]] Json plan_document(const Plan& plan);

/// Reads a difference: an object with those keys of a plan document whose values change, and no
/// version. What it does not name stays as `before` has it, and nothing follows: what it says never
/// depends on the order of the library's rows. A list of frame lines says how many there are; a
/// line changes the line of its place, or a new one. Cameras considered and one's own rows are
/// replaced as lists. Fields that only older plans had are unknown keys.
/// @return nothing after a problem; the plan has been checked as a whole.
[[nodiscard]] std::optional<Plan> plan_after(const Plan& before, const Json& difference,
                                             const JsonPath& path, const Catalogue& catalogue,
                                             Problems& problems);

/// The smallest object from which plan_after() makes `after` of `before`; empty when they are
/// equal.
[[nodiscard]] Json plan_difference(const Plan& before, const Plan& after);

}  // namespace widegate
