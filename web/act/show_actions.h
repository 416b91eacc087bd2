// What the Show section does: takes plans in by ticks, links and files, opens a part as a plan and
// takes it back, takes typed values, hands the show over, and keeps it on the device.
#pragma once

#include <string_view>

#include "web/app/app.h"
#include "web/app/command.h"
#include "web/door/platform.h"
#include "web/state/screen_state.h"

namespace widegate {

/// A control of the section (its id begins with kShowPrefix) is set. Text that is not accepted
/// changes nothing, and the control says what would be.
void set_show_control(std::string_view id, std::string_view text, const App& app,
                      PanelState& state);

/// A button of the section; an id that is none does nothing.
void run_show_action(std::string_view id, const App& app, PanelState& state, Platform& platform,
                     Commands& commands);

/// Opens the link that waits in the state, if one does: a damaged one changes nothing and is told.
void open_asked_show(const App& app, PanelState& state);

/// A show's document; one that is none changes nothing, and the message says why.
void show_file_opened(std::string_view name, std::string_view text, const App& app,
                      PanelState& state);

/// Keeps the show on the device, and brings it back; one that cannot be read is set aside.
void keep_show(PanelState& state, Platform& platform);
void load_show(const App& app, PanelState& state, Platform& platform);

}  // namespace widegate
