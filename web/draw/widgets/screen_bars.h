// The parts of the screen that are always in sight beside the picture and the questions: the bar,
// the three numbers, the rail of marks.
#pragma once

#include "web/draw/widgets/draw_context.h"

namespace widegate {

/// Name of the format; undo, redo, sunlight.
void draw_bar(DrawContext& context);

/// The three numbers.
void draw_headline(DrawContext& context);

/// The seven marks, or verdicts; pressing one brings its question up.
void draw_rail(DrawContext& context);

}  // namespace widegate
