// The built-in font in its two weights.
#pragma once

#include "web/draw/widgets/paint.h"

namespace widegate {

/// Adds both weights to the current ImGui context. They stay valid as long as the context.
[[nodiscard]] Fonts load_fonts();

}  // namespace widegate
