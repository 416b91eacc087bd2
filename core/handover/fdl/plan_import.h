// A framing decision list into a plan: what it says about frame lines, sensor mode and squeeze is
// taken, everything else of the plan is kept. Field by field in docs/fdl.md.
#pragma once

#include "core/base/problem.h"
#include "core/catalogue/catalogue.h"
#include "core/handover/fdl/document.h"
#include "core/plan/plan.h"

namespace widegate::fdl {

/// Something the import did or could not do.
struct ImportNote {
  std::string pointer;  ///< RFC 6901, into the document.
  std::string text;     ///< A sentence.
};

struct PlanImport {
  Plan plan;
  std::vector<ImportNote> taken;
  std::vector<ImportNote> left;  ///< Not understood, not expressible, or ambiguous.
};

/// Takes what the document says into a copy of `current`.
///
/// Read from one canvas: the first with photosite dimensions and decisions, else the first of its
/// own source with decisions, else the first with decisions. Frame lines come from its decisions,
/// the default intent's first, at most eight; intents without a decision there are centred. A
/// decision's box holds where it differs from its intent by more than two pixels. A mode matches by
/// photosites, then by millimetres within 1 %; of several the current one, then the current
/// camera's, then the first. A list without intents is refused.
[[nodiscard]] Checked<PlanImport> import_plan(const Document& document, const Plan& current,
                                              const Catalogue& catalogue);

}  // namespace widegate::fdl
