// All controls of one state: the fields of every panel and what belongs to the screen itself
// (colours, lessons, buttons). No drawing.
#pragma once

#include <string_view>
#include <vector>

#include "web/app/app.h"
#include "web/door/mirror.h"
#include "web/state/screen_state.h"
#include "web/view/ranking_rows.h"

namespace widegate {

/// Every control, in the order of the panels; undo and redo first.
[[nodiscard]] std::vector<Control> make_controls(const App& app, const PanelState& state,
                                                 const RankingRows& ranking);

/// "system", "dark", "light", "sunlight".
[[nodiscard]] std::string_view theme_key(ThemeChoice theme);
[[nodiscard]] ThemeChoice theme_from_key(std::string_view key);

}  // namespace widegate
