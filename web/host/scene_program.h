// Draws scenes (shaders/scene.*) between ImGui's commands. The program is made when a scene is
// first drawn and again after a lost context.
#pragma once

#include "web/door/scene_quad.h"

struct ImVec4;
struct ImDrawData;

namespace widegate {

class SceneProgram {
 public:
  /// Draws a quad inside a clip rectangle (CSS pixels, as ImDrawCmd::ClipRect). Leaves GL's state
  /// changed: ImDrawCallback_ResetRenderState must follow.
  void draw(const SceneQuad& quad, const ImVec4& clip, const ImDrawData& frame);
  /// The context is gone, and everything in it.
  void forget();

 private:
  bool make();
  unsigned program_ = 0;
  unsigned vertices_ = 0;
  bool failed_ = false;
};

}  // namespace widegate
