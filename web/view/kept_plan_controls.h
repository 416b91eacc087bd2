// The list of plans kept on this device as controls; their ids begin with "plans:".
#pragma once

#include <string_view>

#include "web/app/app.h"
#include "web/door/mirror.h"
#include "web/state/screen_state.h"

namespace widegate {

inline constexpr std::string_view kShelfPrefix = "plans:";
inline constexpr std::string_view kShelfList = "plans:list";
inline constexpr std::string_view kShelfAdd = "plans:add";
inline constexpr std::string_view kShelfCopy = "plans:copy";
inline constexpr std::string_view kShelfDelete = "plans:delete";
inline constexpr std::string_view kShelfRestore = "plans:restore";
inline constexpr std::string_view kSaveSetAside = "plans:save-set-aside";

/// What a device that keeps nothing means.
inline constexpr std::string_view kKeepsNothing =
    "This device keeps nothing now (private window, or full): save the plan as a file before the "
    "page closes.";

/// One of the controls above.
[[nodiscard]] Control shelf_control(std::string_view id, const App& app, const PanelState& state);

}  // namespace widegate
