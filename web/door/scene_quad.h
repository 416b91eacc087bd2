// The seam between the picture and whoever draws the scene: the picture leaves a SceneQuad in the
// draw list, the host's SceneDrawer draws it with shaders/scene.*. Plain data, copied byte for
// byte.
#pragma once

#include "web/door/mirror.h"

struct ImDrawList;
struct ImDrawCmd;

namespace widegate {

/// Draws the SceneQuad that the command carries as its data; an ImDrawCallback.
using SceneDrawer = void (*)(const ImDrawList* list, const ImDrawCmd* command);

/// Which scene is in front of the lens.
enum class SceneKind { chart, deck };

/// A box of the screen filled with a part of the scene. Points of the sensor mode run from -1 to 1
/// along each axis.
struct SceneQuad {
  RectPx box;                        ///< CSS pixels; may reach beyond the clip rectangle.
  float middle_x = 0, middle_y = 0;  ///< Point of the mode in the middle of the box.
  float reach_x = 1, reach_y = 1;    ///< From there to the box's edges.
  float half_width_m = 1;            ///< As in SceneView (core/report/scene_view.h).
  float half_height_m = 1;
  float half_tangent_x = 1;
  float half_tangent_y = 1;
  float circle_x = 0, circle_y = 0;  ///< 0: nothing is darkened.
  float columns = 0, rows = 0;       ///< Samples over the mode; 0: none, as fine as it gets.
  float left = 0, top = 0;           ///< Offset of the first sample.
  SceneKind scene = SceneKind::chart;
};

}  // namespace widegate
