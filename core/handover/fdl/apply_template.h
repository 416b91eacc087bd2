// A canvas template applied to one framing decision of one canvas, by the order of operations of
// ASC FDL 2.0.1, section 7.4.1: choose layers, scale, find the output size, align, crop or pad, and
// only then round. Numbers only; documents are in apply_document.h.
#pragma once

#include "core/base/problem.h"
#include "core/handover/fdl/document.h"

namespace widegate::fdl {

/// What a renderer, a preview or a new canvas needs.
struct AppliedTemplate {
  Layers layers;       ///< On the new canvas; canvas and effective sizes are whole pixels.
  double squeeze = 1;  ///< Of the new canvas.
  double source_squeeze = 1;
  Ratio scale;        ///< After de-squeeze, before the new squeeze.
  Point origin;       ///< The source pixel that the scaled picture is measured from.
  Size bounding_box;  ///< The scaled picture before crop, pad and rounding.
  Point translation;  ///< Where the scaled picture's origin lands on the new canvas.
};

/// Applies `entry`. Problems point into the template ("/fit_source"): a layer it names that the
/// source does not have; a target of 0 on an axis its fit method uses; a protection larger than the
/// effective area; a result that is empty or too large to be a canvas.
[[nodiscard]] Checked<AppliedTemplate> apply_template(const CanvasTemplate& entry,
                                                      const Canvas& canvas,
                                                      const FramingDecision& decision);

/// Where a point of the source canvas lands on the new one, in pixels.
[[nodiscard]] Point landing(const AppliedTemplate& applied, Point source);

/// The scale the fit method gives: from `fit` (the fit source's size) into `target`, de-squeezed on
/// both sides. All sizes used and both squeezes are above 0.
[[nodiscard]] Ratio fit_scale(FitMethod method, Size fit, double squeeze, Size target,
                              double target_squeeze);

}  // namespace widegate::fdl
