// What is listed of the ranking, how much of it, and of which cameras, as controls of the screen
// and of the page. The ranking itself is in ranking_rows.h.
#pragma once

#include <string_view>
#include <vector>

#include "web/app/app.h"
#include "web/app/command.h"
#include "web/door/mirror.h"
#include "web/state/screen_state.h"
#include "web/view/ranking_rows.h"

namespace widegate {

inline constexpr std::string_view kRankingPart = "view:ranking";
inline constexpr std::string_view kMoreFormats = "command:more-formats";
inline constexpr std::string_view kCamerasConsidered = "choose:cameras";

/// Cameras considered, the part of the ranking, and the button for more of it.
[[nodiscard]] std::vector<Control> ranking_controls(const App& app, const PanelState& state,
                                                    const RankingRows& ranking);

/// Sets one of them; a change of the plan is pushed as a command. False when the id is none.
bool set_ranking_control(std::string_view id, std::string_view text, const App& app,
                         PanelState& state, Commands& commands);

}  // namespace widegate
