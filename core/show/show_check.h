// Whether a show can be evaluated: every value inside its limits, every name known.
#pragma once

#include "core/base/problem.h"
#include "core/catalogue/catalogue.h"
#include "core/show/show.h"

namespace widegate {

/// Every problem of the show and of its parts' plans; empty for one that evaluate_show() takes.
/// Pointers are those of the document.
[[nodiscard]] Problems check_show(const Show& show, const Catalogue& catalogue);

/// The problems of a part's plan, with pointers of the show's document.
[[nodiscard]] Problems problems_of_part(std::size_t part, Problems problems);

}  // namespace widegate
