// The version, in one place: of the program, and of the links it writes.
#pragma once

#include <string_view>

namespace widegate {

/// Of the program: major, minor, patch. Told by `widegate --version`, the printed sheet and the
/// page.
inline constexpr std::string_view kProgramVersion = "0.9.0";

/// Of the links it writes, in front of their dot. Links of every version up to this one are read.
inline constexpr std::string_view kLinkVersion = "1";

}  // namespace widegate
