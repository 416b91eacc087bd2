// What the buttons do: undo, starting afresh, handing the plan over, walking through a lesson. The
// words of the buttons are in view.cpp; what is handed over is made by the core.
#pragma once

#include <string>
#include <string_view>

#include "core/base/problem.h"
#include "web/app/app.h"
#include "web/app/command.h"
#include "web/door/platform.h"
#include "web/state/screen_state.h"

namespace widegate {

/// Purpose of a file that is opened as a plan, see Platform::open_file.
inline constexpr std::string_view kPlanFile = "plan";

/// Runs an action; an id that is none does nothing. Changes of the plan are pushed as commands,
/// what happened is told in state.message.
void run_action(std::string_view id, const App& app, PanelState& state, Platform& platform,
                Commands& commands);

/// Whether an action is done by the part of the program that comes first.
[[nodiscard]] bool works_at_first(std::string_view id);

/// The plan's title as the beginning of a file name, then `end`.
[[nodiscard]] std::string file_name(const Plan& plan, std::string_view end);

/// The whole address that opens the plan; the problem of a plan that is too long for one.
[[nodiscard]] Checked<std::string> link_address(const App& app, const Platform& platform);

}  // namespace widegate
