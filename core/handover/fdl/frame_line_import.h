// One framing decision as a frame line of a plan: aspect ratio, protection and anchor that put it
// where the decision has it, or as near as a plan can.
#pragma once

#include <string>
#include <vector>

#include "core/handover/fdl/document.h"
#include "core/plan/plan.h"

namespace widegate::fdl {

/// The fraction nearest to `value` with a denominator from 1 to `largest_denominator` (at most
/// 10000); of equally near ones the simplest. `value` is finite and below 10^9 in size.
[[nodiscard]] Rational nearest_fraction(double value, std::int64_t largest_denominator);

/// The canvas the decisions are measured on.
struct LineCanvas {
  Size size;  ///< Pixels.
  double squeeze = 1;
};

/// A frame line and what it could not take over.
struct ImportedLine {
  FrameLine line;
  Box framing;  ///< Where a plan puts it on this canvas, in pixels.
  std::vector<std::string> remarks;
};

/// From an intent alone: centred. Nothing when its aspect ratio is not from 1/10 to 10.
[[nodiscard]] std::optional<ImportedLine> line_from_intent(const FramingIntent& intent,
                                                           const LineCanvas& canvas);

/// From a decision. The intent's aspect ratio and protection hold while they give the decision's
/// box to two pixels, else they are worked out from the box. `main` is the first imported line, or
/// nullptr while there is none.
[[nodiscard]] std::optional<ImportedLine> line_from_decision(const FramingIntent& intent,
                                                             const FramingDecision& decision,
                                                             const LineCanvas& canvas,
                                                             const ImportedLine* main);

}  // namespace widegate::fdl
