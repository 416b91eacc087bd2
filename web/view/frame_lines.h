// A plan's frame lines on the screen: which one the fields of the Frame question stand for, and how
// lines are added and removed. Panels name the fields of the first line; the others' follow.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "web/app/app.h"
#include "web/app/command.h"
#include "web/door/mirror.h"
#include "web/state/screen_state.h"

namespace widegate {

inline constexpr std::string_view kFrameLine = "view:frame-line";
inline constexpr std::string_view kAddFrameLine = "command:add-frame-line";
inline constexpr std::string_view kRemoveFrameLine = "command:remove-frame-line";

/// Index of the line whose fields are shown; always one of the plan's.
[[nodiscard]] std::size_t picked_line(const Plan& plan, const PanelState& state);

/// A button for one more line; where there are several, also the choice and a button for one less.
[[nodiscard]] std::vector<Control> frame_line_controls(const App& app, const PanelState& state);

/// Picks a line; false when the id is not that of the choice.
bool set_frame_line(std::string_view id, std::string_view text, PanelState& state);

/// Adds or removes a line; other ids do nothing.
void run_frame_line_action(std::string_view id, const App& app, PanelState& state,
                           Commands& commands);

}  // namespace widegate
