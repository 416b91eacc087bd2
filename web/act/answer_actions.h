// What the buttons of answers do: the change is made, and said, with the way back beside it.
#pragma once

#include <span>
#include <string_view>

#include "core/answer/answers.h"
#include "web/app/app.h"
#include "web/app/command.h"
#include "web/state/screen_state.h"

namespace widegate {

/// Makes the change behind the id; nothing for the id of anything else.
void run_answer_action(std::string_view id, const App& app, std::span<const Answer> answers,
                       PanelState& state, Commands& commands);

}  // namespace widegate
