// Random but repeatable changes to a plan, made from the table of its fields: a new field takes
// part by itself.
#pragma once

#include "core/catalogue.h"
#include "core/plan.h"
#include "tests/core/draws.h"

namespace widegate::testing {

/// Changes one field (or list) of the plan to another value it accepts; the plan stays as it is
/// when the whole would not be accepted.
void change_something(Dice& dice, Plan& plan, const Catalogue& catalogue);

}  // namespace widegate::testing
