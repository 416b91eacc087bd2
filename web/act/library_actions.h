// What can be done with equipment of one's own: the form, keeping, taking out, export and import.
// Controls have ids that begin with "library:". No drawing.
#pragma once

#include <string_view>

#include "web/app/app.h"
#include "web/app/command.h"
#include "web/door/platform.h"
#include "web/state/screen_state.h"

namespace widegate {

/// Key of the rows on the device, and of a text there that could not be read.
inline constexpr std::string_view kLibraryKey = "library";
/// Purpose of a file that is opened as a library, see Platform::open_file.
inline constexpr std::string_view kLibraryFile = "library";

/// A text or choice of one of the controls.
void set_library_control(std::string_view id, std::string_view text, const App& app,
                         PanelState& state);

/// A button; an id of another section does nothing.
void run_library_action(std::string_view id, const App& app, PanelState& state, Platform& platform,
                        Commands& commands);

/// The rows kept on this device. A text that cannot be read is kept aside and told; what is there
/// now stays.
void load_library(const App& app, PanelState& state, Platform& platform, Commands& commands);

/// A file chosen to bring in: what it would change is shown, nothing is changed yet.
void library_file_opened(std::string_view name, std::string_view text, const App& app,
                         PanelState& state);

/// A plan from elsewhere was opened: tells what equipment it brought, and where that contradicts
/// one's own.
void tell_brought_rows(const App& app, PanelState& state);

}  // namespace widegate
