// What the buttons of the ranking do: make the change that lets a format pass.
#pragma once

#include <string_view>

#include "web/app/app.h"
#include "web/app/command.h"
#include "web/state/screen_state.h"
#include "web/view/ranking_rows.h"

namespace widegate {

/// Makes the change that a button stands for, as one step to undo, and says so. False when the id
/// is none of these buttons.
/// @param ranking  what the buttons were made from.
bool run_ranking_action(std::string_view id, const App& app, const RankingRows& ranking,
                        PanelState& state, Commands& commands);

}  // namespace widegate
