// The browser host: a WebGL 2 context on the page's canvas and one drawn frame when asked. Nothing
// portable here.
#include <backends/imgui_impl_opengl3.h>
#include <emscripten/html5.h>
#include <imgui.h>

#include "web/app.h"

extern "C" {

/// Draws one frame; sizes in CSS pixels, ratio in device pixels per CSS pixel.
EMSCRIPTEN_KEEPALIVE void widegate_frame(float width, float height, float ratio) {
  ImGuiIO& io = ImGui::GetIO();
  io.DisplaySize = ImVec2(width, height);
  io.DisplayFramebufferScale = ImVec2(ratio, ratio);
  ImGui_ImplOpenGL3_NewFrame();
  ImGui::NewFrame();
  widegate::draw_app();
  ImGui::Render();
  ImGui_ImplOpenGL3_RenderDrawData(ImGui::GetDrawData());
}
}

int main() {
  EmscriptenWebGLContextAttributes attributes;
  emscripten_webgl_init_context_attributes(&attributes);
  attributes.majorVersion = 2;
  attributes.alpha = attributes.depth = attributes.stencil = attributes.antialias = EM_FALSE;
  emscripten_webgl_make_context_current(emscripten_webgl_create_context("#canvas", &attributes));
  ImGui::CreateContext();
  ImGui::GetIO().IniFilename = nullptr;
  widegate::load_fonts();
  ImGui_ImplOpenGL3_Init("#version 300 es");
  return 0;
}
