// The built-in font in its two weights.
#pragma once

struct ImFont;

namespace widegate {

/// The two weights of the built-in font.
struct Fonts {
  ImFont* regular = nullptr;
  ImFont* semibold = nullptr;
};

/// Adds both weights to the current ImGui context. They stay valid as long as the context.
[[nodiscard]] Fonts load_fonts();

}  // namespace widegate
