// A button that answers: what it does, and below it what that comes to.
#pragma once

#include "web/draw/widgets/draw_context.h"

namespace widegate {

/// Draws an action with its help as a second line; at least as high as a finger needs.
void draw_answer(DrawContext& context, Control& control);

/// The verdict in one line of its own height, with its mark.
void draw_short_verdict(DrawContext& context, const Section& section);

}  // namespace widegate
