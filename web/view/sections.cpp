#include "web/view/sections.h"

#include <array>

namespace widegate {

std::span<const Panel> panels() {
  static const std::array kPanels = {
      start_panel(),   format_panel(),  frame_panel(),   cover_panel(),    see_panel(),
      resolve_panel(), run_panel(),     store_panel(),   choose_panel(),   delivery_panel(),
      picture_panel(), compare_panel(), library_panel(), handover_panel(), show_panel(),
      lesson_panel(),  plan_panel()};
  return kPanels;
}

const Panel* find_panel(std::string_view id) {
  for (const Panel& panel : panels()) {
    if (panel.id == id) return &panel;
  }
  return nullptr;
}

bool is_here(const Panel& panel, RestOfProgram rest) {
  return !panel.comes_later || rest == RestOfProgram::here;
}

std::string_view rest_words(RestOfProgram rest) {
  switch (rest) {
    case RestOfProgram::coming:
      return "Still on its way to this device.";
    case RestOfProgram::missing:
      return "Not here yet: this part of Widegate did not reach the device. It is asked for again "
             "by itself; everything above works.";
    case RestOfProgram::here:
      break;
  }
  return {};
}

}  // namespace widegate
