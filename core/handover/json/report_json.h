// A Report as a JSON document (docs/schema/report.schema.json), and that of a show. Only writing:
// reports are made, never read.
#pragma once

#include <string>

#include "core/report/report.h"
#include "core/show/report.h"

namespace widegate {

/// Every figure of report_fields.h; doubles at 12 significant digits, ranges as {"least", "most"},
/// what does not exist as null. The same text natively and in WebAssembly.
[[nodiscard]] std::string report_to_json(const Report& report);

/// Every figure of show_report_fields.h, likewise.
[[nodiscard]] std::string show_report_to_json(const ShowReport& report);

}  // namespace widegate
