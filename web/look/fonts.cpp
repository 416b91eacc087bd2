#include "web/look/fonts.h"

#include <span>

#include "font_data.h"
#include "imgui.h"

namespace widegate {
namespace {

ImFont* add_font(std::span<const unsigned char> data, bool fallback = false) {
  ImFontConfig config;
  config.MergeMode = fallback;
  config.FontDataOwnedByAtlas = false;
  // Dear ImGui takes a mutable pointer but, told that the data is not its own, does not write to
  // it.
  return ImGui::GetIO().Fonts->AddFontFromMemoryTTF(const_cast<unsigned char*>(data.data()),
                                                    static_cast<int>(data.size()), 15, &config);
}

}  // namespace

Fonts load_fonts() {
  ImFont* regular = add_font(kFontRegular);
  ImFont* semibold = add_font(kFontSemibold);
  // Accented letters of a name in a heading: a lighter letter is better than none.
  add_font(kFontRegular, true);
  return {regular, semibold};
}

}  // namespace widegate
