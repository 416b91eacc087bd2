#include "web/app.h"

#include <imgui.h>

#include "font_data.h"

namespace widegate {

void load_fonts() {
  ImFontConfig config;
  config.FontDataOwnedByAtlas = false;
  // Dear ImGui takes a mutable pointer but, told that the data is not its own, does not write to
  // it.
  ImGui::GetIO().Fonts->AddFontFromMemoryTTF(const_cast<unsigned char*>(kFontRegular),
                                             sizeof(kFontRegular), 17.0F, &config);
}

void draw_app() {
  const ImGuiViewport* viewport = ImGui::GetMainViewport();
  ImGui::SetNextWindowPos(viewport->WorkPos);
  ImGui::SetNextWindowSize(viewport->WorkSize);
  ImGui::Begin("Widegate", nullptr, ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoMove);
  ImGui::TextUnformatted("Widegate: 3840 × 2160, 2.39∶1, 180°");
  ImGui::End();
}

}  // namespace widegate
