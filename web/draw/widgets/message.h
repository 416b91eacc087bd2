// What the program has to say for a moment: a link was copied, a file could not be read.
#pragma once

#include "web/draw/widgets/draw_context.h"

namespace widegate {

/// Height of the message with the space around it, CSS pixels from the lower edge of the questions;
/// 0 when there is none. What is scrolled into sight has to stay above it.
[[nodiscard]] float message_room(const DrawContext& context);

/// Draws the message over the lower edge of the questions until it is pressed away; nothing when
/// there is none.
void draw_message(DrawContext& context);

}  // namespace widegate
