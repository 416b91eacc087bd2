// The working of a figure, as lines of text.
#pragma once

#include "web/draw/widgets/draw_context.h"

namespace widegate {

/// Draws formula, numbers, result and source at the cursor of the current window.
void draw_working(DrawContext& context, const WorkingText& working);

/// How high that is in a column of this width, CSS pixels.
[[nodiscard]] float working_height(const DrawContext& context, const WorkingText& working,
                                   float width);

/// One paragraph of the column's width; nothing for empty text.
void draw_paragraph(DrawContext& context, TextStyle style, Colour colour, std::string_view text,
                    float space_after);

}  // namespace widegate
