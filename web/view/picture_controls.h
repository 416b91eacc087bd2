// The settings of the picture as controls of the page: which picture, which scene, de-squeezed or
// not, the magnifier. They belong to the screen, not to the plan.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "web/app/app.h"
#include "web/door/mirror.h"
#include "web/state/screen_state.h"

namespace widegate {

inline constexpr std::string_view kPicture = "view:picture";
inline constexpr std::string_view kScene = "view:scene";
inline constexpr std::string_view kDesqueeze = "view:desqueezed";
inline constexpr std::string_view kMagnifier = "view:magnifier";
inline constexpr std::string_view kSpotAcross = "view:spot-across";
inline constexpr std::string_view kSpotDown = "view:spot-down";
inline constexpr std::string_view kChart = "chart";
inline constexpr std::string_view kDeck = "deck";

/// The control with one of these ids, or nothing.
[[nodiscard]] std::optional<Control> picture_control(std::string_view id, const App& app,
                                                     const PanelState& state);

/// Sets it. False when the id is none of these.
bool set_picture_control(std::string_view id, std::string_view text, PanelState& state);

}  // namespace widegate
