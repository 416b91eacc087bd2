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
/// In `formula` a pair in braces, {words|key}, stands for another figure: the words are shown, its
/// number is put in. Numbers in lists have "#" in their key; a key that begins with "." belongs to
/// the same object, ".*" is the figure itself. Angles are in degrees. Beside the usual operators
/// and sqrt, pi, sin, atan, acos, log2, min, max, floor and ceil there are:
///   quarter(x, y, r)     area of the rectangle from 0,0 to x,y inside a circle of radius r about
///   0,0,
///                        negative when exactly one of x and y is;
///   turn(a, b, x)        roll at which the corner (a, b) first meets a side at distance x; 90 if
///   never; even_up, even_down   nearest even number not below, not above; if_less(a, b, x, y)  x
///   when a < b, otherwise y.
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
