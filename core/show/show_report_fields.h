// The one list of everything in a ShowReport, with the keys that other tools rely on.
#pragma once

#include "core/report/report_fields.h"
#include "core/show/report.h"

namespace widegate {

/// Walks a valid report: title, parts, totals, cards, media, money, days, notes.
void visit_show(const ShowReport& report, ReportVisitor& visitor);

}  // namespace widegate
