// Random but repeatable shows that the checks accept, small enough to follow card by card.
#pragma once

#include "core/show/show.h"
#include "tests/core/support/random_plans.h"

namespace widegate::testing {

/// One to five parts, on overlapping days, kept apart or together, with prices in two currencies,
/// some of them missing.
[[nodiscard]] Show random_show(Dice& dice, const Catalogue& catalogue);

}  // namespace widegate::testing
