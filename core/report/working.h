// Show the working: how every number of a Report came about, made from the Report and a table of
// formulas (formulas.h). No figure is computed here a second time.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/report/report.h"

namespace widegate {

/// A quantity of a formula. Its own working is that of its key, down to what was typed.
struct WorkingPart {
  std::string key;
  std::string name;    ///< The one name it has in every working: "focal length".
  std::string symbol;  ///< "f"; empty where the trade has none.
  std::string value;   ///< With its unit, rounded as it is read.
};

/// The explanation of one figure.
struct Working {
  std::string key;      ///< Key of report_fields.h with its sections: "see.horizontal_fov_deg".
  std::string title;    ///< "Horizontal field of view"
  std::string formula;  ///< In names; empty when the number was chosen or looked up.
  std::string symbols;  ///< The same in symbols; empty where one of its quantities has none.
  /// The same with the numbers put in, each with its unit, and what comes out. A range has two
  /// lines: for the smallest frames of its codec, then for the largest; everything else has one.
  std::vector<std::string> substituted;
  std::vector<std::string> told;     ///< What comes out, with its unit, rounded as it is read.
  std::vector<std::string> exact;    ///< The lines of `substituted` with 12 digits.
  std::vector<std::string> results;  ///< What comes out with 12 digits, without its unit.
  std::string unit;
  std::vector<std::string> because;  ///< The steps that were taken: "the lens squeezes 2×".
  std::vector<WorkingPart> parts;    ///< Of the formula, in its order.
  std::string source;                ///< Where the formula or the number comes from.
};

/// The working of one figure; nothing when the report has no number under this key.
[[nodiscard]] std::optional<Working> working_of(const Report& report, std::string_view key);

/// The workings of every number of the report, in its order.
[[nodiscard]] std::vector<Working> all_workings(const Report& report);

}  // namespace widegate
