// A show over its calendar as SVG for paper and screen: footage so far, stacked by part, with the
// days on which drives and tapes are full; and money so far. Areas differ by pattern, not by
// colour.
#pragma once

#include <string>

#include "core/show/report.h"

namespace widegate {

/// Footage so far, a self-contained <svg> element; at the codecs' largest frames.
/// @param report  a valid report.
[[nodiscard]] std::string storage_calendar_svg(const ShowReport& report);

/// Money so far in each currency, each against an axis of its own; empty text without prices.
[[nodiscard]] std::string money_calendar_svg(const ShowReport& report);

/// What the areas and marks of the first drawing mean, as HTML.
[[nodiscard]] std::string storage_calendar_key(const ShowReport& report);

}  // namespace widegate
