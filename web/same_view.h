// "Which focal length gives the same view over there?" on the screen: whose modes are listed, and a
// row for each of them. The focal lengths are the report's; which camera is asked about belongs to
// the screen, not to the plan.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "web/app.h"
#include "web/mirror.h"

namespace widegate {

inline constexpr std::string_view kSameView = "view:same-view";

/// The choice of a camera; `camera` is the id of the one chosen, empty for none.
[[nodiscard]] Control same_view_control(const App& app, std::string_view camera);

/// A figure for each mode of that camera but the plan's own; none for an unknown camera.
[[nodiscard]] std::vector<ResultRow> same_view_rows(const App& app, std::string_view camera);

}  // namespace widegate
