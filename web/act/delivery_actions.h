// What the Delivery section does: takes typed values, hands documents over, opens framing decision
// lists, and keeps the choice on the device.
#pragma once

#include <string_view>

#include "web/app/app.h"
#include "web/app/command.h"
#include "web/door/platform.h"
#include "web/state/delivery_state.h"
#include "web/state/screen_state.h"

namespace widegate {

/// Acts on a command that concerns this section's controls. False for every other command.
[[nodiscard]] bool take_delivery_command(const Command& command, DeliveryState& state);

/// Runs one of the section's buttons; an id that is none does nothing.
void run_delivery_action(std::string_view id, const App& app, PanelState& state,
                         Platform& platform);

/// A framing decision list into the plan; what it turned up is noted. A damaged one changes
/// nothing.
void open_framing(std::string_view name, std::string_view text, const App& app, PanelState& state,
                  Commands& commands);

/// Keeps the choice on the device, and brings it back; what cannot be read is passed over.
void keep_delivery(const DeliveryState& state, Platform& platform);
void load_delivery(DeliveryState& state, const Platform& platform);

}  // namespace widegate
