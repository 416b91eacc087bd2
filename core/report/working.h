// Show the working: how every number of a Report came about, made from the Report and a table of
// formulas (formulas.h). No figure is computed here a second time.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/report/report.h"

namespace widegate {

/// The explanation of one figure.
struct Working {
  std::string key;      ///< Key of report_fields.h with its sections: "see.horizontal_fov_deg".
  std::string title;    ///< "Horizontal field of view"
  std::string formula;  ///< In words and symbols; empty when the number was chosen or looked up.
  /// The same with the numbers put in, and what comes out. A range has two lines: for the smallest
  /// frames of its codec, then for the largest; everything else has one.
  std::vector<std::string> substituted;
  std::vector<std::string> results;
  std::string unit;
  std::string source;  ///< Where the formula or the number comes from.
};

/// The working of one figure; nothing when the report has no number under this key.
[[nodiscard]] std::optional<Working> working_of(const Report& report, std::string_view key);

/// The workings of every number of the report, in its order.
[[nodiscard]] std::vector<Working> all_workings(const Report& report);

}  // namespace widegate
