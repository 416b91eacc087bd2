// From a framing intent (an aspect ratio) to the boxes of a framing decision on one canvas.
#pragma once

#include <optional>

#include "core/handover/fdl/boxes.h"
#include "core/handover/fdl/rounding.h"

namespace widegate::fdl {

/// What an intent asks for.
struct IntentShape {
  WholeSize aspect_ratio;  ///< After de-squeeze; both terms above 0.
  double protection = 0;   ///< 0 to below 1: the framing is (1 - protection) of the protected area.
};

/// The boxes of a decision, in canvas pixels.
struct DecisionBoxes {
  Box framing;
  std::optional<Box> protection;  ///< Nothing when the intent asks for none.
};

/// The largest box of the intent's shape inside `area` (the canvas's effective area, or the whole
/// canvas), letterboxed or pillarboxed and centred in it; with protection that box is the protected
/// one and the framing lies inside. In a squeezed canvas the box has ratio aspect / squeeze.
///
/// `rule` rounds both boxes, the framing from the rounded protection; nothing leaves them exact.
/// Rounding up never leaves `area` (our choice; the standard is silent). Source: ASC FDL 2.0.1,
/// 7.2.4 and 7.3.4.10.4 to .7; the order of rounding from its published vectors.
[[nodiscard]] DecisionBoxes place_intent(const IntentShape& intent, const Box& area, double squeeze,
                                         std::optional<RoundRule> rule);

}  // namespace widegate::fdl
