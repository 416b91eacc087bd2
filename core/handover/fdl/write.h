// A framing decision list to JSON text, in the key order of the vectors published beside the
// standard.
#pragma once

#include <string>

#include "core/handover/fdl/document.h"

namespace widegate::fdl {

/// UTF-8, two spaces a level, a final line feed. Counts are written without a decimal point, sizes
/// and positions as decimals with the shortest digits that read back to the same double. Custom
/// fields come last in their object; pad_to_maximum is left out when false. Bytes that are not
/// UTF-8 become U+FFFD.
[[nodiscard]] std::string write_document(const Document& document);

}  // namespace widegate::fdl
