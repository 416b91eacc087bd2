// Plans to begin with: the one a new person finds, and examples to play with. Each is a row of
// edits to a plan's defaults, which mean what they always meant; data only.
#pragma once

#include <span>
#include <string_view>

#include "core/base/problem.h"
#include "core/catalogue/catalogue.h"
#include "core/plan/plan.h"

namespace widegate {

/// One change to the plan's defaults, as with_field() takes it.
struct ExampleEdit {
  std::string_view pointer;
  std::string_view text;
};

/// One example of the demo scenario; invented.
struct ExamplePlan {
  std::string_view id;    ///< "drama"
  std::string_view name;  ///< "A drama"
  std::string_view words;
  std::span<const ExampleEdit> edits;
};

/// All examples; the first is what a new plan begins as.
[[nodiscard]] std::span<const ExamplePlan> example_plans();

/// @return problems when an edit does not fit the catalogue (one that lacks the demo cameras).
[[nodiscard]] Checked<Plan> example_plan(const ExamplePlan& example, const Catalogue& catalogue);

/// What a person finds who never chose anything: the first example without its title. Fails nothing
/// and carries no caution, so that none stands beside what nobody chose. A plan's plain defaults
/// where the catalogue lacks the demo's rows.
[[nodiscard]] Plan first_plan(const Catalogue& catalogue);

}  // namespace widegate
