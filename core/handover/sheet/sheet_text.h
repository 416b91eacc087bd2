// Figures as they stand on the sheet and in tables for people: rounded for reading, ranges with a
// dash, units behind. Numbers are the report's.
#pragma once

#include <string>
#include <string_view>

#include "core/catalogue/codec.h"
#include "core/report/report.h"

namespace widegate {

/// "27.3 min", "19.9 – 33.1 min".
[[nodiscard]] std::string with_unit(double value, int decimals, std::string_view unit);
[[nodiscard]] std::string with_unit(Span value, int decimals, std::string_view unit);
/// "1 234", "12 – 20".
[[nodiscard]] std::string count_text(ByteRange value);
/// Bytes in the decimal prefix that leaves one to three digits before the point (IEC 80000-13):
/// "14.2 MB", "3.1 – 5.2 TB".
[[nodiscard]] std::string bytes_text(Span value);
/// "2.39∶1" for 2.39; up to three decimals.
[[nodiscard]] std::string aspect_text(double aspect);
/// "24 fps", "23.976 fps (24000/1001)".
[[nodiscard]] std::string rate_text(Rational rate);

}  // namespace widegate
