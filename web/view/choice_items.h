// Filling the list of a choice, for controls that are made by hand: one entry, and the cameras
// there are. No drawing.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "web/app/app.h"
#include "web/door/mirror.h"

namespace widegate {

/// Appends an entry; a chosen one becomes the control's value.
void put_item(Control& control, std::string_view value, std::string label, bool chosen);

/// Every camera that can be chosen, the plan's own first; one's own hides the library's of the same
/// id. Valid as long as the app's plan and library are.
[[nodiscard]] std::vector<const Camera*> cameras_to_choose(const App& app);

}  // namespace widegate
