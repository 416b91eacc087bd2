// The formulas that workings show: data only. docs/formulas.md derives them; working.cpp puts the
// numbers in; a test evaluates every line with an independent evaluator.
#pragma once

#include <span>
#include <string_view>

namespace widegate {

/// Which way a figure goes when the codec's frames get larger; tells the ends of a range apart.
enum class WithFrameSize { rises, falls };

/// One figure and its formula.
///
/// In `formula` a key in braces stands for another figure, told by its own name, symbol, or number
/// with its unit; {key@unit} puts another unit beside its number, where one is counted for another
/// (a row for each pixel of the height). Constants carry their units: "1000 mm/m". Numbers in lists
/// have "#" in their key; a key that begins with "." belongs to the same object, ".*" is the figure
/// itself. Angles are in degrees. A factor in brackets, "[{mode.squeeze}] · ", is left out where it
/// is one. Beside the usual operators and sqrt, pi, sin, atan, log2, abs, min, max, floor, ceil
/// there are, all told in words:
///   round(x), even_up(x), even_down(x)  nearest whole number; nearest even one not below, not
///                                       above;
///   if_less(a, b, x, y)                 x when a < b, otherwise y; only the one taken is told;
///   roll(a, b, x)                       roll at which the corner (a, b) first meets a side at
///                                       distance x; 90 if never;
///   shared(left, top, right, bottom, d) area of that rectangle inside the circle of diameter d
///                                       around 0,0.
struct FormulaRow {
  std::string_view key;
  std::string_view title;
  std::string_view unit;
  std::string_view formula;  ///< Empty: chosen in the plan, or read from the library.
  std::string_view source;
  std::string_view when = {};  ///< "key=value": this row holds only then. Earlier rows win.
  WithFrameSize with_frame_size = WithFrameSize::rises;
};

/// Every row. Figures under "frame_lines.#" and "see.horizontal_depth" share rows with "frame" and
/// "see" where the formula is the same.
[[nodiscard]] std::span<const FormulaRow> formula_rows();

}  // namespace widegate
