// Equipment of one's own as controls: the list, the form under way, and what is wrong with it.
// Their ids begin with "library:".
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "core/equipment/form.h"
#include "web/app/app.h"
#include "web/door/mirror.h"
#include "web/state/screen_state.h"

namespace widegate {

inline constexpr std::string_view kLibraryPrefix = "library:";
/// Opens the form of a commission; stands where the commission is chosen.
inline constexpr std::string_view kNewCommission = "library:commission";

/// What the rows of a list of the catalogue are ("cameras"); nothing for any other text.
[[nodiscard]] std::optional<OwnKind> kind_of_list(std::string_view list);

/// Pointer of the plan's value that names a row of this kind; empty for none.
[[nodiscard]] std::string_view plan_pointer(OwnKind kind);

/// Every control of the section, in order: the list, or the form under way.
[[nodiscard]] std::vector<Control> library_controls(const App& app, const PanelState& state);

}  // namespace widegate
