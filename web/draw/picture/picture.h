// The picture that is always in sight: the sensor to scale with everything on it, or the scene
// through the lens.
#pragma once

#include "web/draw/widgets/draw_context.h"

namespace widegate {

/// Draws the picture into its box of the layout, follows dragging and tapping in it.
void draw_picture(DrawContext& context);

/// Moves the de-squeeze along; true while it is still moving.
bool animate_picture(PictureState& state, float delta_s, bool reduced_motion);

}  // namespace widegate
