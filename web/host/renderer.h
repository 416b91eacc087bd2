// Puts ImGui's draw data on the page's canvas, or nowhere when the browser has no WebGL 2: the text
// page is then the whole app. GL and the canvas are touched in renderer.cpp alone.
#pragma once

#include <imgui.h>

#include "web/host/scene_program.h"

namespace widegate {

class Renderer {
 public:
  /// Makes a WebGL 2 context on "#canvas". False when the browser refuses; drawing is then skipped.
  bool start();
  /// The context is gone: GL objects are forgotten and nothing is drawn until restore(). Frames may
  /// go on.
  void lose();
  /// The context is back, empty: makes everything anew.
  void restore();
  /// Must be called before each ImGui frame.
  void new_frame();
  /// Draws a finished frame into a canvas of this many device pixels. `visible` false only answers
  /// the frame's texture requests, for frames that settle between two drawn ones.
  void draw(ImDrawData* data, int width_device_px, int height_device_px, bool visible);

  /// For Ui::draw_scenes_with(); io.UserData must be this renderer.
  static void draw_scene(const ImDrawList* list, const ImDrawCmd* command);

 private:
  SceneProgram scenes_;
  bool ready_ = false;
  bool lost_ = false;  ///< It was ready and will be again.
};

}  // namespace widegate
