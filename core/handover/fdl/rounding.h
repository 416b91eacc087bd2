// How a framing decision list makes whole pixels: one number, and the canvas with its effective
// area. Nothing else is ever rounded (ASC FDL 2.0.1, 7.4.12).
#pragma once

#include "core/handover/fdl/boxes.h"

namespace widegate::fdl {

/// Whole pixels, or even ones.
enum class Parity { whole, even };
enum class RoundMode { up, down, round };

/// The standard's default is up to the next even pixel.
struct RoundRule {
  Parity parity = Parity::even;
  RoundMode mode = RoundMode::up;
  friend bool operator==(const RoundRule&, const RoundRule&) = default;
};

/// A value this close to a whole number of pixels is that number. Our choice; the standard is
/// silent. Without it binary noise turns 3840.0000000000005 into 3842 when rounding up to even.
inline constexpr double kSnapPixels = 1e-6;

/// The nearest whole number when `value` is within kSnapPixels of it, else `value`.
[[nodiscard]] double snapped(double value);

/// `value` (finite, any sign) as whole or even pixels; the sign does not change the magnitude.
/// Ties of `round`: to the even number for whole pixels (2.5 -> 2, 19.5 -> 20), upwards for even
/// pixels (1 -> 2, 19 -> 20), as the standard's published vectors have it.
[[nodiscard]] double round_value(double value, RoundRule rule);

/// What the canvas may become on one axis.
struct AxisLimit {
  bool fixed = false;  ///< The axis was set to the template's maximum: not rounded.
  double maximum = 0;  ///< Rounding never goes above it; 0 when the template has none.
};

/// Layers with a whole canvas and effective area, and how far the picture moved for it.
struct RoundedLayers {
  Layers layers;
  Point shift;  ///< Half of what the canvas grew, per axis.
};

/// Makes the canvas whole by `rule` and the effective area whole by rounding up, keeps both centred
/// on where they were, and keeps protection and framing inside. Protection, framing and all anchors
/// stay fractional.
[[nodiscard]] RoundedLayers rounded(const Layers& layers, RoundRule rule, AxisLimit across = {},
                                    AxisLimit down = {});

}  // namespace widegate::fdl
