// How many rounds a test over random inputs makes.
#pragma once

#include <algorithm>
#include <cstdlib>

namespace widegate::testing {

/// The usual number, or the smaller one where every round is slow (under the sanitizers and as
/// WASM); never fewer than WIDEGATE_ROUNDS asks for, which tools/test --rounds sets. The seeds are
/// fixed, so more rounds begin with the same inputs.
[[nodiscard]] inline int rounds(int usual, int where_slow) {
#ifdef NDEBUG
  constexpr bool kSlow = false;
#else
  constexpr bool kSlow = true;
#endif
  const int least = kSlow ? where_slow : usual;
  const char* wanted = std::getenv("WIDEGATE_ROUNDS");
  return std::max(least, wanted != nullptr ? std::atoi(wanted) : 0);
}

}  // namespace widegate::testing
