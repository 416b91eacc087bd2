// How strings come from the page's script: it asks for room with wg_push(), writes UTF-8 there,
// then calls the function that takes them.
#pragma once

#include <string>

namespace widegate {

/// The oldest string that has not been taken yet; empty when there is none.
[[nodiscard]] std::string take_pushed();

}  // namespace widegate
