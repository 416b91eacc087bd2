// What became different from one plan to another, in words a person reads after an undo.
#pragma once

#include <string>

#include "core/catalogue/catalogue.h"
#include "core/plan/plan.h"

namespace widegate {

/// "Focal length: 18 mm, was 35 mm" for one changed value; the labels of the first three and a
/// count of the rest for several; "Nothing" for equal plans.
[[nodiscard]] std::string change_words(const Plan& before, const Plan& after,
                                       const Catalogue& catalogue);

}  // namespace widegate
