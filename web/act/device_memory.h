// Keeping things on the device without ever losing one silently: a refusal is told when it happens
// and stands until the device keeps again; what cannot be read is set aside, where it can be saved
// as a file, before anything takes its place. No drawing.
#pragma once

#include <string_view>

#include "web/door/platform.h"
#include "web/state/screen_state.h"

namespace widegate {

/// Where texts that could not be read lie, oldest first, a line between them.
inline constexpr std::string_view kSetAsideKey = "set-aside";

/// Keeps a text under a key. False when the device refused: `state.memory.refused` and, the first
/// time, the message say so.
bool keep_on_device(PanelState& state, Platform& platform, std::string_view key,
                    std::string_view text);

/// Puts a text that could not be read where nothing takes its place; one that lies there already
/// is not put there twice. False when the device refused: it must not be written over then.
bool set_aside(PanelState& state, Platform& platform, std::string_view text);

/// Whether the device keeps anything, and what was set aside before: once, at the start.
void try_device(PanelState& state, Platform& platform);

/// Saves what was set aside as a file; the texts stay where they are.
void save_set_aside(const PanelState& state, Platform& platform);

}  // namespace widegate
