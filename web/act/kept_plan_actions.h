// The list of plans kept on this device: opening, keeping, copying, deleting, and saving the plan
// on the screen as it changes. No drawing.
#pragma once

#include <string_view>

#include "web/app/app.h"
#include "web/app/command.h"
#include "web/door/platform.h"
#include "web/state/screen_state.h"

namespace widegate {

/// Keys of the list, shared by all tabs, and of this tab's place in it.
inline constexpr std::string_view kShelfKey = "plans";
inline constexpr std::string_view kShelfPlaceKey = "kept";

/// A button of kept_plan_controls.h, or a choice of the list (`text`); ids of other sections do
/// nothing.
void run_shelf_action(std::string_view id, const App& app, PanelState& state, Platform& platform);
void open_kept_plan(std::string_view text, const App& app, PanelState& state, Platform& platform,
                    Commands& commands);

/// Reads the list and this tab's place in it.
void load_shelf(PanelState& state, Platform& platform);

/// The list as it is now: another tab changed it.
void reload_shelf(PanelState& state, const Platform& platform);

/// Puts the plan on the screen into its place in the list. What another tab changed meanwhile stays
/// as it is there: this plan then goes on under a name of its own.
void save_to_shelf(const App& app, PanelState& state, Platform& platform, Commands& commands);

/// Another plan is on the screen, one that is not in the list.
void leave_shelf(PanelState& state);

}  // namespace widegate
