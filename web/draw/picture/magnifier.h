// A magnifier over the scene: the same spot as photosites, as recorded pixels and as delivered
// pixels, so that every resample is seen.
#pragma once

#include "web/draw/picture/scene.h"

namespace widegate {

/// Takes the magnifier's box off the lower end of the room there is for drawing; empty when the
/// magnifier is closed or there is too little room.
[[nodiscard]] RectPx take_magnifier(const DrawContext& context, RectPx& room);

/// Moves the spot: a drag slowly, for single pixels, a tap right under the finger.
void follow_spot(DrawContext& context, const RectPx& area, const RectPx& mode);

/// The mark on the mode where the magnifier looks.
void draw_spot(const DrawContext& context, const RectPx& mode);

/// The magnifier itself; `mode` is the sensor mode's box in the picture.
void draw_magnifier(const DrawContext& context, const SceneView& scene, const RectPx& mode,
                    const RectPx& box);

}  // namespace widegate
