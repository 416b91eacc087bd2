// Controls made from the table of a plan's fields: labels, limits, units, choices and usual values
// come from the core; what is added here is how a value is worded for reading and typing.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/plan/plan_fields.h"
#include "web/app/app.h"
#include "web/door/mirror.h"
#include "web/view/section.h"

namespace widegate {

/// The control of one field of a panel; a field of a frame line is that of `line`, one of the
/// plan's.
[[nodiscard]] Control make_control(const App& app, const Panel& panel, const PanelField& field,
                                   std::size_t line);

/// What a person typed or a slider gave, as the text that with_field() takes: shares are typed in
/// percent, a unit may follow.
[[nodiscard]] std::string field_input(std::string_view pointer, std::string_view typed);

/// True for a value that is stored as a share and shown in percent.
[[nodiscard]] bool shown_in_percent(std::string_view pointer);

}  // namespace widegate
