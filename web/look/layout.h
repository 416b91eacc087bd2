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

/// What the state of the screen asks of its layout.
struct LayoutWish {
  /// A value is typed: on a phone the questions get the room that a keyboard leaves, and below them
  /// stands what the typed value leads to.
  bool typing = false;
  /// How far the questions are scrolled, CSS pixels: by as much, at most, picture and numbers
  /// shrink on an upright screen.
  float scrolled = 0;
  /// The picture has a second part: the magnifier, the other one of two scenes.
  bool second_part = false;
};

/// Boxes in CSS pixels; none has a negative size, whatever the screen.
struct Layout {
  Shape shape = Shape::portrait;
  RectPx screen;   ///< Everything.
  RectPx bar;      ///< Name of the format, undo, redo, sunlight; over the picture or the rail.
  RectPx picture;  ///< The drawing, up to the edges of the glass.
  RectPx drawing;  ///< The part of it inside the safe area, for what is drawn.
  RectPx picture_tools;        ///< The row of buttons below that.
  RectPx second_part;          ///< Of the picture, below the buttons; empty when there is none.
  RectPx headline;             ///< The three numbers.
  RectPx column;               ///< The questions, scrolled.
  RectPx typing;               ///< Verdict and Done while a value is typed; may be empty.
  RectPx rail;                 ///< The seven marks, or verdicts, up to the edges of the glass.
  RectPx rail_safe;            ///< The part of it inside the safe area.
  float bottom_inset = 0;      ///< Of the safe area.
  float visible_height = 0;    ///< Of the screen, down to a keyboard.
  float collapsed = 0;         ///< By how much picture and numbers are lower than at rest.
  bool rail_upright = false;   ///< Marks below each other.
  bool rail_verdicts = false;  ///< Wide enough for the verdicts in words.
};

/// Where everything goes.
[[nodiscard]] Layout make_layout(const FrameInput& input, const Theme& theme,
                                 const LayoutWish& wish = {});

}  // namespace widegate
