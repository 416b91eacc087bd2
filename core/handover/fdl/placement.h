// One axis of a canvas template: how large the output is and how far the picture moves on it.
#pragma once

#include "core/handover/fdl/document.h"

namespace widegate::fdl {

/// Everything one axis needs, in output pixels after scaling and before rounding.
struct AxisRequest {
  double box = 0;         ///< The scaled source canvas or preserved layer.
  double fit_size = 0;    ///< The scaled fit source.
  double fit_anchor = 0;  ///< Its anchor within the box.
  double target = 0;      ///< 0 when the template leaves the axis to be derived.
  double maximum = 0;     ///< 0 when the template has none.
  bool pad = false;       ///< Pad to the maximum; needs a maximum.
  Alignment alignment = Alignment::center;
};

struct AxisPlacement {
  double output = 0;            ///< Canvas size on this axis, not yet rounded.
  double shift = 0;             ///< Added to every anchor.
  bool set_to_maximum = false;  ///< Then the canvas is not rounded on this axis.
};

/// Pads to the maximum, or crops to it when the box is larger, or keeps the box. In the first two
/// the target stands in the middle of the output (when cropping only if the alignment is centre)
/// and the fit source is aligned in the target. Cropping never shows an empty border. A target of 0
/// is derived from the fit source when padding, else taken as it is. Source: ASC FDL 2.0.1, 7.4.4
/// and 7.4.8 to 7.4.11, and its published vectors.
[[nodiscard]] AxisPlacement place_axis(const AxisRequest& request);

}  // namespace widegate::fdl
