// The frame-line chart as a PNG picture of exactly its pixels: bars are whole pixels without any
// softening, rings and letters have soft edges of sixteen levels.
#pragma once

#include <string>

#include "core/handover/chart/chart.h"

namespace widegate {

/// A PNG file (ISO/IEC 15948) of chart.width_pixels by chart.height_pixels; empty when the chart
/// has no pixels or a side beyond 65,535.
[[nodiscard]] std::string chart_png(const Chart& chart);

}  // namespace widegate
