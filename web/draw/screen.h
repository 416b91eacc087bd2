// One whole screen: every part in its place, in the order that lets all of them show what was
// changed in this very frame.
#pragma once

#include "web/draw/widgets/draw_context.h"

namespace widegate {

/// Draws everything into the current ImGui frame.
void draw_screen(DrawContext& context);

/// The theme's colours and sizes for the few things Dear ImGui draws itself: scroll bars, hints.
void apply_style(const Theme& theme);

}  // namespace widegate
