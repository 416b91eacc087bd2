// The browser host: a WebGL 2 context on the page's canvas and one drawn frame when asked. Nothing
// portable here.
#include <backends/imgui_impl_opengl3.h>
#include <emscripten/html5.h>
#include <imgui.h>

#include <memory>

#include "core/catalogue_json.h"
#include "web/ui.h"

namespace {

/// A page that offers nothing: no storage, no clipboard.
class BarePage : public widegate::Platform {
 public:
  void wake() override {}
  bool copy_text(std::string_view) override { return false; }
  std::string page_address() const override { return {}; }
  std::string fragment() const override { return {}; }
  void replace_fragment(std::string_view) override {}
  std::optional<std::string> stored(std::string_view) const override { return std::nullopt; }
  bool store(std::string_view, std::string_view) override { return false; }
  bool can_share() const override { return false; }
  void share(std::string_view, std::string_view) override {}
  void save_file(std::string_view, std::string_view, std::string_view) override {}
  void open_file(std::string_view, std::string_view) override {}
  void print_document(std::string_view) override {}
};

BarePage page;
std::unique_ptr<widegate::Ui> ui;

}  // namespace

extern "C" {

/// Draws one frame; sizes in CSS pixels, ratio in device pixels per CSS pixel.
EMSCRIPTEN_KEEPALIVE void widegate_frame(float width, float height, float ratio) {
  ImGui_ImplOpenGL3_NewFrame();
  widegate::FrameInput input;
  input.width = width;
  input.height = height;
  input.pixel_ratio = ratio;
  ui->frame(input);
  ImGui_ImplOpenGL3_RenderDrawData(ImGui::GetDrawData());
}
}

int main() {
  EmscriptenWebGLContextAttributes attributes;
  emscripten_webgl_init_context_attributes(&attributes);
  attributes.majorVersion = 2;
  attributes.alpha = attributes.depth = attributes.stencil = attributes.antialias = EM_FALSE;
  emscripten_webgl_make_context_current(emscripten_webgl_create_context("#canvas", &attributes));
  auto library = widegate::built_in_catalogue();
  if (!library) return 1;
  ui = std::make_unique<widegate::Ui>(page, *std::move(library));
  ui->init();
  ImGui_ImplOpenGL3_Init("#version 300 es");
  return 0;
}
