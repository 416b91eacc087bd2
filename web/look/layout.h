// Where the parts of the screen go: a pure function of the screen's size, its safe areas and the
// text size. No drawing.
#pragma once

#include "web/door/frame_input.h"
#include "web/door/mirror.h"
#include "web/look/theme.h"

namespace widegate {

enum class Shape {
  portrait,   ///< Picture on top, numbers, questions below, marks along the bottom edge.
  landscape,  ///< A phone on its side: marks, picture with numbers, questions.
  wide,       ///< Desktop: verdicts, large picture under the numbers, questions.
};

/// Boxes in CSS pixels; none has a negative size, whatever the screen.
struct Layout {
  Shape shape = Shape::portrait;
  RectPx screen;   ///< Everything.
  RectPx bar;      ///< Name of the format, undo, redo, sunlight; over the picture or the rail.
  RectPx picture;  ///< The drawing, up to the edges of the glass.
  RectPx drawing;  ///< The part of it inside the safe area, for what is drawn.
  RectPx picture_tools;        ///< The row of buttons below that.
  RectPx headline;             ///< The three numbers.
  RectPx column;               ///< The questions, scrolled.
  RectPx rail;                 ///< The seven marks, or verdicts, up to the edges of the glass.
  RectPx rail_safe;            ///< The part of it inside the safe area.
  float bottom_inset = 0;      ///< Of the safe area.
  bool rail_upright = false;   ///< Marks below each other.
  bool rail_verdicts = false;  ///< Wide enough for the verdicts in words.
};

[[nodiscard]] Layout make_layout(const FrameInput& input, const Theme& theme);

}  // namespace widegate
