// The list of plans kept on this device: opening, keeping, copying, deleting, and saving the plan
// on the screen as it changes. Controls have ids that begin with "plans:". No drawing.
#pragma once

#include <string_view>

#include "web/app/app.h"
#include "web/app/command.h"
#include "web/door/mirror.h"
#include "web/door/platform.h"
#include "web/state/screen_state.h"

namespace widegate {

inline constexpr std::string_view kShelfPrefix = "plans:";
/// Keys of the list, shared by all tabs, and of this tab's place in it.
inline constexpr std::string_view kShelfKey = "plans";
inline constexpr std::string_view kShelfPlaceKey = "kept";

inline constexpr std::string_view kShelfList = "plans:list";
inline constexpr std::string_view kShelfAdd = "plans:add";
inline constexpr std::string_view kShelfCopy = "plans:copy";
inline constexpr std::string_view kShelfDelete = "plans:delete";
inline constexpr std::string_view kShelfRestore = "plans:restore";

/// One of the controls above.
[[nodiscard]] Control shelf_control(std::string_view id, const App& app, const PanelState& state);

/// A button above, or a choice of the list (`text`); ids of other sections do nothing.
void run_shelf_action(std::string_view id, const App& app, PanelState& state, Platform& platform);
void open_kept_plan(std::string_view text, const App& app, PanelState& state, Platform& platform,
                    Commands& commands);

/// Reads the list and this tab's place in it.
void load_shelf(PanelState& state, const Platform& platform);

/// The list as it is now: another tab changed it.
void reload_shelf(PanelState& state, const Platform& platform);

/// Puts the plan on the screen into its place in the list. What another tab changed meanwhile stays
/// as it is there: this plan then goes on under a name of its own.
void save_to_shelf(const App& app, PanelState& state, Platform& platform, Commands& commands);

/// Another plan is on the screen, one that is not in the list.
void leave_shelf(PanelState& state);

}  // namespace widegate
