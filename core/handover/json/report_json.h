// A Report as a JSON document (docs/schema/report.schema.json). Only writing: reports are made,
// never read.
#pragma once

#include <string>

#include "core/report/report.h"

namespace widegate {

/// Every figure of report_fields.h; doubles at 12 significant digits, ranges as {"least", "most"},
/// what does not exist as null. The same text natively and in WebAssembly.
[[nodiscard]] std::string report_to_json(const Report& report);

}  // namespace widegate
