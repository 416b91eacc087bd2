// Two formats in the picture: both sensors over each other to scale, or both scenes side by side at
// the same scale.
#pragma once

#include "web/draw/widgets/draw_context.h"

namespace widegate {

/// Draws the comparison into the drawing's box; how to begin one when there is none.
void draw_comparison(DrawContext& context);

}  // namespace widegate
