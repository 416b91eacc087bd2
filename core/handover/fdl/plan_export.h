// An evaluated plan as a framing decision list: what post-production needs to see the frame that
// was chosen. Field by field in docs/fdl.md.
#pragma once

#include "core/catalogue/catalogue.h"
#include "core/handover/fdl/document.h"
#include "core/plan/plan.h"
#include "core/report/report.h"

namespace widegate::fdl {

/// The document and what it could not say.
struct PlanExport {
  Document document;
  std::vector<std::string> remarks;
  std::string mode_canvas;      ///< Id of the canvas whose pixels are photosites.
  std::string recorded_canvas;  ///< Id of the canvas of the file the plan records; may be the same.
};

/// One framing intent for each frame line, one context with a canvas for the sensor mode (pixels
/// are photosites) and one, derived from it, for each raster the mode can be recorded in (the
/// plan's own first), each with a decision for every frame line.
///
/// Sizes and positions are the plan's exact ones, never rounded; physical dimensions in mm to four
/// decimals, on the mode's canvas only. Effective dimensions are there when the lens's image circle
/// is known and does not reach the corners of the mode: see effective_area.h.
///
/// @param report  of this plan and catalogue (frames and cover are used).
/// @return the report's problems when it has any.
[[nodiscard]] Checked<PlanExport> export_plan(const Plan& plan, const Catalogue& catalogue,
                                              const Report& report);

}  // namespace widegate::fdl
