// What the commissioner and the plan ask for, judged for the plan's own format, as plain data;
// filled by evaluate.h.
#pragma once

#include <cstdint>
#include <optional>
#include <string>

#include "core/choose/caution.h"
#include "core/choose/requirement.h"

namespace widegate {

struct CommissionReport {
  std::string name;
  Findings findings;  ///< One for each requirement; its line is an index into Report::frames.
  Cautions cautions;  ///< Those of the format, as in a ranking.
  std::optional<double> compression;      ///< Uncompressed bits over stored ones; 1 when lossless.
  std::optional<std::int64_t> bit_depth;  ///< Of the codec.
  double made_for_squeeze = 0;            ///< What the mode is shaped for; 0: any.
  double raster_stretch = 1;              ///< Of the file across, against the mode; 1: none.
  bool format_accepted = true;  ///< The format would be accepted in a ranking of this plan.
  bool met = true;              ///< And the plan misses nothing whatever its format.
};

}  // namespace widegate
