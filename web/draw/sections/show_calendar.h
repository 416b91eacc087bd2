// A show over its calendar: footage so far, stacked by part, with the days on which drives and
// tapes are full, and money so far.
#pragma once

#include "web/draw/widgets/draw_context.h"
#include "web/view/show.h"

namespace widegate {

/// Draws into the column; nothing for a show without days.
void draw_show_calendar(DrawContext& context, const ShowView& view);

}  // namespace widegate
