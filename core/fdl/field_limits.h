// The bounds this reader sets where the ASC FDL schema sets none.
#pragma once

namespace widegate::fdl {

/// The largest size, position or count that is read or written. No picture comes near it, and below
/// it every product of two sizes stays finite and comparable.
inline constexpr double kLargest = 2147483647;

}  // namespace widegate::fdl
