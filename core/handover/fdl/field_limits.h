// The bounds this reader sets where the ASC FDL schema sets none.
#pragma once

#include <cstddef>

namespace widegate::fdl {

/// The largest size, position or count that is read or written. No picture comes near it, and below
/// it every product of two sizes stays finite and comparable.
inline constexpr double kLargest = 2147483647;

/// Levels of objects and arrays: writing recurses once for each.
inline constexpr std::size_t kDeepest = 64;

/// Members of one object: each new one is compared with all before it.
inline constexpr std::size_t kMostMembers = 2000;

}  // namespace widegate::fdl
