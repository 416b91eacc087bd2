// What lies over the screen for a moment: the list of a choice, the working of a figure. From the
// bottom edge on a phone, beside the column elsewhere.
#pragma once

#include "web/draw/widgets/draw_context.h"

namespace widegate {

/// Draws the open sheet, if any. True when one is open: nothing below it may be pressed.
bool draw_sheet(DrawContext& context);

}  // namespace widegate
