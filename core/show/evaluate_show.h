// A show and a catalogue in, every sum out. Each part goes through evaluate(); nothing of a plan is
// computed here a second time.
#pragma once

#include "core/catalogue/catalogue.h"
#include "core/show/report.h"
#include "core/show/show.h"

namespace widegate {

/// Pure and total: an invalid show gives a report that holds nothing but its problems. The order of
/// the parts changes no sum.
[[nodiscard]] ShowReport evaluate_show(const Show& show, const Catalogue& catalogue);

}  // namespace widegate
