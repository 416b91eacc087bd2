// Two reports side by side: the few figures that tell formats apart, as numbers and in words.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/report/report.h"

namespace widegate {

/// One figure of both reports.
struct Difference {
  std::string_view key;  ///< Path of the figure in the report's JSON form.
  std::string_view label;
  std::string_view unit;
  std::string first;  ///< Rounded for reading; a range for a lossless codec.
  std::string second;
  std::string change;  ///< Second against first: "+12 %", "the same", "−3 %".
};

/// The figures in the order of the questions; none when one of the reports has problems.
/// Ranges are compared by their least value.
[[nodiscard]] std::vector<Difference> differences(const Report& first, const Report& second);

}  // namespace widegate
