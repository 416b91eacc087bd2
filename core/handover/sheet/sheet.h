// The printed sheet: one page of HTML with everything a truck, a post house and an office need from
// a plan, and on request a second part with the workings. Black and white safe, A4 and Letter.
#pragma once

#include <string>

#include "core/catalogue/catalogue.h"
#include "core/plan/plan.h"
#include "core/report/report.h"

namespace widegate {

struct SheetOptions {
  std::string link;  ///< Whole address that opens the plan; printed and as a QR code. May be empty.
  bool with_working = false;
};

/// A complete HTML document that needs no other file: one page of A4 or Letter without workings.
/// @param plan, catalogue  what the report was made from; names are looked up in them.
/// @param report           a valid report.
[[nodiscard]] std::string sheet_html(const Plan& plan, const Report& report,
                                     const Catalogue& catalogue, const SheetOptions& options);

}  // namespace widegate
