// The sensor to scale as SVG for paper: sensor, mode, protected areas, frame lines, image circle
// and the corners it leaves dark. Lines differ by weight and dash, never by colour alone.
#pragma once

#include <string>

#include "core/catalogue/catalogue.h"
#include "core/report/report.h"

namespace widegate {

/// A self-contained <svg> element, in millimetres on the sensor.
/// @param camera  the report's camera, for the whole sensor.
/// @param report  a valid report.
[[nodiscard]] std::string sensor_svg(const Report& report, const Camera& camera);

/// What the lines of that drawing mean, as HTML: a sample of each line that occurs and its words.
[[nodiscard]] std::string sensor_svg_key(const Report& report);

}  // namespace widegate
