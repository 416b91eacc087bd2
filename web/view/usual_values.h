// Values that are often chosen, by field: the chips and ticks of the sliders. Common practice, no
// source; any other value can be typed.
#pragma once

#include <span>
#include <string_view>

namespace widegate {

struct UsualValue {
  std::string_view text;   ///< As the field takes it.
  std::string_view label;  ///< On a chip; empty for a mere tick.
};

/// Rising by value; empty for a field without usual values.
[[nodiscard]] std::span<const UsualValue> usual_values(std::string_view pointer);

}  // namespace widegate
