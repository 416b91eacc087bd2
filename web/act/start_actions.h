// What the buttons of the first ten seconds do.
#pragma once

#include <string_view>

#include "web/app/app.h"
#include "web/app/command.h"
#include "web/state/screen_state.h"

namespace widegate {

/// Opens an example in place of the plan, asks for a kept plan, or opens the form for a camera of
/// one's own; nothing for the id of anything else.
void run_start_action(std::string_view id, const App& app, PanelState& state, Commands& commands);

}  // namespace widegate
