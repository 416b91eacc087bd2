// The figures of a report as people read them: a label, a rounded text, a unit, and the question
// each belongs to. One table for the screen, the printed sheet and the command line; JSON keeps the
// exact values. Choosing words and rounding is all that happens here, no figure is computed.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/plan/plan.h"
#include "core/report/report.h"

namespace widegate {

/// One line of a table of results.
struct Reading {
  std::string_view key;      ///< Path of the value in the report's JSON: "see.near_m".
  std::string_view section;  ///< "format", or the name of a question: "frame", "cover", ...
  std::string_view label;
  std::string text;       ///< "54.3", "4992 × 2088.7", "21–34", "0.77 across, 0.38 down".
  std::string_view unit;  ///< "°", "mm", "GB"; empty for none.
  bool main = false;      ///< Among the few that answer the question.
  bool pair = false;      ///< Of two figures: the key's own, then the other's.
};

/// Every figure that exists for this report, in reading order; none when it has problems.
/// @param plan  the one the report came from; views in the result may point into it (currency).
[[nodiscard]] std::vector<Reading> readings(const Plan& plan, const Report& report);

/// The three numbers that are always in sight: field of view, megapixels, minutes per card.
[[nodiscard]] std::vector<Reading> headline_readings(const Report& report);

/// Key of the working (working.h) that explains a reading: its own for nearly all; empty when there
/// is nothing to explain it by.
[[nodiscard]] std::string_view working_key(std::string_view reading_key);

/// A number of bytes with a decimal prefix and three significant digits: "1.34" and "TB".
struct ScaledBytes {
  std::string text;
  std::string_view unit;
};
[[nodiscard]] ScaledBytes scaled_bytes(Span bytes);

/// A time in minutes as people say it: from two hours on in hours. `unit` is "min" or "h".
/// @param decimals  of minutes; hours have one.
struct ScaledTime {
  std::string text;
  std::string_view unit;
};
[[nodiscard]] ScaledTime scaled_minutes(Span minutes, int decimals);

/// A number as people read it: at most `decimals` places, trailing zeros dropped.
[[nodiscard]] std::string short_number(double value, int decimals);

}  // namespace widegate
