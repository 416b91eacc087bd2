#include "web/fonts.h"

#include <span>

#include "font_data.h"
#include "imgui.h"

namespace widegate {
namespace {

ImFont* add_font(std::span<const unsigned char> data) {
  ImFontConfig config;
  config.FontDataOwnedByAtlas = false;
  // Dear ImGui takes a mutable pointer but, told that the data is not its own, does not write to
  // it.
  return ImGui::GetIO().Fonts->AddFontFromMemoryTTF(const_cast<unsigned char*>(data.data()),
                                                    static_cast<int>(data.size()), 15, &config);
}

}  // namespace

Fonts load_fonts() { return {add_font(kFontRegular), add_font(kFontSemibold)}; }

}  // namespace widegate
