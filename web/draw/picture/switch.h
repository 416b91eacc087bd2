// The row under the picture: which picture is shown, and what can be done with it. The same
// settings are controls of the page (picture_controls.h).
#pragma once

#include "web/draw/widgets/draw_context.h"

namespace widegate {

/// Draws the row into its box of the layout and follows presses.
void draw_picture_switch(DrawContext& context);

}  // namespace widegate
