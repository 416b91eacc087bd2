// A Mirror as JSON text for the page's script, written by hand because it is rewritten during every
// drag: no document tree in between. Only this direction exists; nothing reads it back in C++.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "web/door/frame_input.h"
#include "web/door/mirror.h"

namespace widegate {

/// Text as a JSON string with its quotation marks. Control characters are escaped, bytes above 127
/// pass through: they are UTF-8 already.
[[nodiscard]] std::string json_string(std::string_view text);

/// The whole mirror without rectangles and visibility (see rects_of). Keys are those of the
/// structs.
[[nodiscard]] std::string mirror_text(const Mirror& mirror);

/// Rectangles of the controls in their order: x, y, width, height in CSS pixels; width 0 when the
/// control is not on the screen.
[[nodiscard]] std::vector<float> rects_of(const Mirror& mirror);

/// What is being typed into, or "null".
[[nodiscard]] std::string entry_text(const std::optional<TextRequest>& request);

}  // namespace widegate
