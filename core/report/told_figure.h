// One figure by its key, told for a sentence or beside what it was: its name, a rounded number, a
// unit. Names and rounding are those of figure_text.h; what has no line there is told by the
// formula that explains it.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/plan/plan.h"
#include "core/report/report.h"

namespace widegate {

struct ToldFigure {
  std::string label;  ///< "Card speed over data rate"
  std::string text;   ///< "0.89", "21–34"; "yes" and "no" for what is one or the other.
  std::string unit;   ///< Empty for none.
};

/// Nothing when the report has no such figure.
[[nodiscard]] std::optional<ToldFigure> told_figure(const Plan& plan, const Report& report,
                                                    std::string_view key);

/// A number as people read it in its unit: digits that matter there, thousands set apart; bytes
/// and long minutes in the unit that fits.
struct ToldNumber {
  std::string text;
  std::string unit;
};
[[nodiscard]] ToldNumber told_number(Span value, std::string_view unit);

}  // namespace widegate
