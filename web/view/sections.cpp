#include "web/view/sections.h"

#include <array>

namespace widegate {

std::span<const Panel> panels() {
  static const std::array kPanels = {
      format_panel(),  frame_panel(),   cover_panel(),    see_panel(),      resolve_panel(),
      run_panel(),     store_panel(),   choose_panel(),   delivery_panel(), picture_panel(),
      compare_panel(), library_panel(), handover_panel(), lesson_panel(),   plan_panel()};
  return kPanels;
}

const Panel* find_panel(std::string_view id) {
  for (const Panel& panel : panels()) {
    if (panel.id == id) return &panel;
  }
  return nullptr;
}

}  // namespace widegate
