#include "web/host/renderer.h"

#include <GLES3/gl3.h>
#include <backends/imgui_impl_opengl3.h>
#include <emscripten/html5.h>

namespace widegate {
namespace {

// Without a context ImGui's textures are answered as if they had been made.
void answer_textures(ImDrawData* data) {
  if (data->Textures == nullptr) return;
  for (ImTextureData* texture : *data->Textures) {
    if (texture->Status == ImTextureStatus_WantDestroy) {
      texture->SetTexID(ImTextureID_Invalid);
      texture->SetStatus(ImTextureStatus_Destroyed);
    } else if (texture->Status != ImTextureStatus_OK) {
      texture->SetTexID(1);
      texture->SetStatus(ImTextureStatus_OK);
    }
  }
}

void upload_textures(ImDrawData* data) {
  if (data->Textures == nullptr) return;
  for (ImTextureData* texture : *data->Textures) {
    if (texture->Status != ImTextureStatus_OK) ImGui_ImplOpenGL3_UpdateTexture(texture);
  }
}

}  // namespace

bool Renderer::start() {
  ImGui::GetIO().UserData = this;
  EmscriptenWebGLContextAttributes attributes;
  emscripten_webgl_init_context_attributes(&attributes);
  attributes.majorVersion = 2;
  attributes.alpha = attributes.depth = attributes.stencil = attributes.antialias = EM_FALSE;
  attributes.powerPreference = EM_WEBGL_POWER_PREFERENCE_LOW_POWER;
  attributes.enableExtensionsByDefault = EM_FALSE;
  const auto context = emscripten_webgl_create_context("#canvas", &attributes);
  if (context > 0 && emscripten_webgl_make_context_current(context) == EMSCRIPTEN_RESULT_SUCCESS) {
    ready_ = ImGui_ImplOpenGL3_Init("#version 300 es");
  }
  if (!ready_) ImGui::GetIO().BackendFlags |= ImGuiBackendFlags_RendererHasTextures;
  return ready_;
}

void Renderer::lose() {
  if (!ready_) return;
  // At once: deleting what belongs to a lost context is silent, later it would be an error.
  ImGui_ImplOpenGL3_Shutdown();
  scenes_.forget();
  ready_ = false;
  lost_ = true;
  // Frames go on without being drawn; what they ask for waits.
  ImGui::GetIO().BackendFlags |= ImGuiBackendFlags_RendererHasTextures;
}

void Renderer::restore() {
  ready_ = ready_ || ImGui_ImplOpenGL3_Init("#version 300 es");
  lost_ = !ready_;
}

void Renderer::new_frame() {
  if (ready_) ImGui_ImplOpenGL3_NewFrame();
}

void Renderer::draw_scene(const ImDrawList*, const ImDrawCmd* command) {
  auto* renderer = static_cast<Renderer*>(ImGui::GetIO().UserData);
  const auto& quad = *static_cast<const SceneQuad*>(command->UserCallbackData);
  renderer->scenes_.draw(quad, command->ClipRect, *ImGui::GetDrawData());
}

void Renderer::draw(ImDrawData* data, int width_device_px, int height_device_px, bool visible) {
  if (!ready_) {
    if (!lost_) answer_textures(data);
    return;
  }
  if (!visible || data->DisplaySize.x <= 0 || data->DisplaySize.y <= 0) {
    upload_textures(data);
    return;
  }
  // The backend cuts the product of size and scale down to whole pixels; it must come out exact.
  const auto width = static_cast<float>(width_device_px);
  const auto height = static_cast<float>(height_device_px);
  data->FramebufferScale = {(width + 0.01F) / data->DisplaySize.x,
                            (height + 0.01F) / data->DisplaySize.y};
  ImGui_ImplOpenGL3_RenderDrawData(data);
}

}  // namespace widegate
