// Random but repeatable plans and libraries that the checks accept, made from the tables of fields:
// a new field takes part by itself.
#pragma once

#include "core/catalogue/catalogue.h"
#include "core/plan/plan.h"
#include "tests/core/support/draws.h"

namespace widegate::testing {

/// A library with every kind of row and every form of codec; ids begin with "own-".
[[nodiscard]] Catalogue random_library(Dice& dice);

/// Changes one field (or list) of the plan to another value it accepts; the plan stays as it is
/// when the whole would not be accepted.
void change_something(Dice& dice, Plan& plan, const Catalogue& catalogue);

/// A plan far from the default one: many changes, sometimes with a library of its own.
[[nodiscard]] Plan random_plan(Dice& dice, const Catalogue& catalogue);

}  // namespace widegate::testing
