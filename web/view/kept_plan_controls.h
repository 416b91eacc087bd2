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

/// One of the controls above.
[[nodiscard]] Control shelf_control(std::string_view id, const App& app, const PanelState& state);

}  // namespace widegate
