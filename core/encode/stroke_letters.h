// Letters made of straight strokes, for charts: the same at any size, natively and in the browser,
// without a font. Small letters are drawn as capitals; what has no drawing is an empty box. The
// shapes are our own.
#pragma once

#include <string_view>
#include <vector>

namespace widegate {

/// A stroke between two points; the unit is a sixth of a capital's height, y grows downwards and
/// the baseline is 6.
struct LetterStroke {
  double x0 = 0, y0 = 0, x1 = 0, y1 = 0;
};

inline constexpr double kLetterHeight = 6;   ///< Of a capital.
inline constexpr double kLetterAdvance = 6;  ///< From one letter to the next.

/// Strokes of a UTF-8 text that begins at x = 0. Broken UTF-8 gives boxes.
[[nodiscard]] std::vector<LetterStroke> text_strokes(std::string_view text);

/// Width of a text, from the first letter's left to the last one's right edge.
[[nodiscard]] double text_strokes_width(std::string_view text);

}  // namespace widegate
