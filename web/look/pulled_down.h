// How a window tells the touch layer that a finger pulls it down as a whole.
#pragma once

namespace widegate {

/// Name of the flag in an ImGui window's storage: once its content is scrolled to its beginning, a
/// finger that moves down is the window's own (a sheet over the screen that goes by a swipe).
inline constexpr const char* kPulledDown = "pulled down";

}  // namespace widegate
