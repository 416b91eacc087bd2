// What the program has to say for a moment: a link was copied, a file could not be read.
#pragma once

#include "web/draw_context.h"

namespace widegate {

/// Draws the message over the lower edge of the questions until it is pressed away; nothing when
/// there is none.
void draw_message(DrawContext& context);

}  // namespace widegate
