// Resolve: photosites behind the frame line, the commission, resampling.
#include <array>

#include "web/view/sections.h"

namespace widegate {

Panel resolve_panel() {
  static constexpr auto kFields = std::to_array<PanelField>({
      {"/commission/id"},
      {"/commission/photosites", true},
      {"/commission/recorded_width_pixels", true},
  });
  return {.id = "resolve",
          .title = "Resolve",
          .question = "Is it enough pixels?",
          .topic = Question::resolve,
          .fields = kFields};
}

}  // namespace widegate
