// Figures for each of many on the screen: every lens of the set against the mode, and "which focal
// length gives the same view over there?": whose modes are listed, and a row for each of them. The
// focal lengths are the report's; which camera is asked about belongs to the screen, not to the
// plan.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "web/app/app.h"
#include "web/door/mirror.h"

namespace widegate {

inline constexpr std::string_view kSameView = "view:same-view";

/// The choice of a camera; `camera` is the id of the one chosen, empty for none.
[[nodiscard]] Control same_view_control(const App& app, std::string_view camera);

/// A figure for each mode of that camera but the plan's own; none for an unknown camera.
[[nodiscard]] std::vector<ResultRow> same_view_rows(const App& app, std::string_view camera);

/// What each lens of the set covers; none for a lens that is not in the library.
[[nodiscard]] std::vector<ResultRow> lens_cover_rows(const Report& report);

}  // namespace widegate
