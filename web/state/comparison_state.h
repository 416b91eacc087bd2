// What the plan is compared with: another format for the same plan, or a whole plan that was kept.
// Plain data, part of the screen's state; not undone with the plan.
#pragma once

#include <cstdint>
#include <optional>
#include <string_view>

#include "core/plan/plan.h"

namespace widegate {

struct ComparisonState {
  std::optional<FormatChoice> format;  ///< Everything else follows the plan.
  std::optional<Plan> kept;            ///< Stays as it is; goes before `format`.
  bool side_by_side = false;           ///< Two scenes; otherwise both sensors over each other.
  std::uint64_t version = 0;           ///< Grows with every change of this struct.
};

inline constexpr std::string_view kCompareSection = "compare";
inline constexpr std::string_view kCompareCamera = "compare:camera";
inline constexpr std::string_view kCompareMode = "compare:mode";
inline constexpr std::string_view kCompareRecording = "compare:recording";
inline constexpr std::string_view kSideBySide = "compare:side-by-side";
inline constexpr std::string_view kUseCompared = "command:use-compared";
inline constexpr std::string_view kKeepToCompare = "command:keep-to-compare";
inline constexpr std::string_view kStopComparing = "command:stop-comparing";

}  // namespace widegate
