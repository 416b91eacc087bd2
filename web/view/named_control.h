// The beginning of a control, the same for every section that makes its own.
#pragma once

#include <string>
#include <string_view>

#include "web/door/mirror.h"

namespace widegate {

/// A control of a section with its words, and nothing chosen or typed yet.
[[nodiscard]] Control named_control(std::string_view id, ControlKind kind, std::string_view section,
                                    std::string_view label);

/// Chooses one of the control's choices by its value; its label is what the control shows.
void choose_item(Control& control, std::string value);

}  // namespace widegate
