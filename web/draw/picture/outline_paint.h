// Drawing the outlines of the sensor picture and the labels beside them; the same colours, lines
// and words wherever outlines appear. Where they go is in scale.h and label_places.h.
#pragma once

#include "web/draw/picture/scale.h"
#include "web/draw/widgets/draw_context.h"

namespace widegate {

/// The colour of a kind of outline.
[[nodiscard]] Colour outline_colour(const Palette& palette, OutlineKind kind);

/// Its width in CSS pixels; heavier in themes with heavier lines, and when selected.
[[nodiscard]] float outline_width(const Theme& theme, OutlineKind kind, bool selected);

/// One outline: protection is broken, the circle follows the squeeze, everything else is solid.
void draw_outline(const DrawContext& context, const Outline& outline, const PictureScale& scale);

/// A box of broken lines: `dash` CSS pixels drawn, `gap` left out.
void dashed_box(const Paint& paint, const RectPx& box, Colour colour, float width, float dash = 7,
                float gap = 5);

/// Level lines over what the circle leaves dark of the mode, inside `clip`.
void hatch_uncovered(const Paint& paint, const PictureData& data, const PictureScale& scale,
                     const RectPx& mode, const RectPx& clip);

/// Labels to the right of the area, `labels` CSS pixels wide, with leaders to their outlines;
/// pressing one selects its outline. They may be as high as the room.
void draw_labels(DrawContext& context, const PictureData& data, const PictureScale& scale,
                 const RectPx& room, const RectPx& area, float labels);

}  // namespace widegate
