// What is asked of the plan's own format, told for people: one line for each requirement, the same
// on the screen, on the sheet and in a terminal.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/report/report.h"

namespace widegate {

struct RequirementLine {
  std::string label;  ///< "Upscaling", with the frame line's name where there are several.
  std::string text;   ///< "met: 0.810 x, at most 1.120 x; 0.310 x to spare".
  Severity severity = Severity::ok;  ///< Fails when missed; a caution when it is not known.
};

/// Every requirement that is asked for, in the order of the enumeration; none for a report with
/// problems.
[[nodiscard]] std::vector<RequirementLine> requirement_lines(const Report& report);

}  // namespace widegate
