// What the commissioner and the plan ask for, judged for the plan's own format, as plain data;
// filled by evaluate.h.
#pragma once

#include <string>

#include "core/choose/requirement.h"

namespace widegate {

struct CommissionReport {
  std::string name;
  Findings findings;  ///< One for each requirement; its line is an index into Report::frames.
  bool format_accepted = true;  ///< The format would be accepted in a ranking of this plan.
  bool met = true;              ///< And the plan misses nothing whatever its format.
};

}  // namespace widegate
