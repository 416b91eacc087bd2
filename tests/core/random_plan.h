// Random but repeatable whole plans that pass check_plan, with cameras, codecs and cards of their
// own or without: for round trips through links, JSON and files.
#pragma once

#include "core/catalogue.h"
#include "core/plan.h"
#include "tests/core/fdl/dice.h"

namespace widegate::testing {

/// A library of one's own: some cameras with modes and recording options, a codec of every form,
/// lens sets, cards, and what copying goes through. Passes check_catalogue beside `library`.
[[nodiscard]] Catalogue random_library(fdl::Dice& dice, const Catalogue& library);

/// A plan in which many values differ from a new plan's, one in four with a library of its own.
[[nodiscard]] Plan random_plan(fdl::Dice& dice, const Catalogue& library);

}  // namespace widegate::testing
