// A plan and the equipment of one's own that it uses: taking it along, and telling what a plan from
// elsewhere brings. Rows and ids only.
#pragma once

#include <vector>

#include "core/catalogue/catalogue.h"
#include "core/catalogue/merge.h"
#include "core/plan/plan.h"

namespace widegate {

/// The rows of `own` that the plan names and does not carry itself: its format, lens set, storage
/// chain, the cameras it ranks, and the codecs of every camera among them.
[[nodiscard]] Catalogue rows_in_use(const Plan& plan, const Catalogue& own);

/// The plan with rows_in_use() among its own: complete wherever it is opened.
[[nodiscard]] Plan carrying_plan(Plan plan, const Catalogue& own);

/// The plan without those of its own rows that `own` has value for value.
[[nodiscard]] Plan lightened_plan(Plan plan, const Catalogue& own);

/// Rows of `rows` whose ids `other` has in the same list, value for value or not.
[[nodiscard]] Catalogue rows_also_in(const Catalogue& rows, const Catalogue& other);

/// Rows of `rows` whose ids `other` does not have.
[[nodiscard]] Catalogue rows_not_in(const Catalogue& rows, const Catalogue& other);

/// Puts today's ids in the place of those that the plan, or the rows it carries, has from an older
/// document.
void use_current_ids(Plan& plan);

/// True when no list has a row.
[[nodiscard]] bool is_empty(const Catalogue& rows);

}  // namespace widegate
