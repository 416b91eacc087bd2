// What stands above a phone's keyboard while a value is typed.
#pragma once

#include "web/draw/widgets/draw_context.h"

namespace widegate {

/// The verdict that the typed value leads to, or why it is not accepted, and the way out; nothing
/// where the layout has no place for it.
void draw_typing_line(DrawContext& context);

}  // namespace widegate
