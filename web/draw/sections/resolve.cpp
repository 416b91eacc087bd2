// Resolve: photosites behind the frame line, the commissioner's mandate, resampling.
#include <array>

#include "web/view/sections.h"

namespace widegate {

Panel resolve_panel() {
  static constexpr auto kFields = std::to_array<PanelField>({
      {"/mandate/photosites"},
      {"/mandate/photosites_across", true},
  });
  return {.id = "resolve",
          .title = "Resolve",
          .question = "Is it enough pixels?",
          .topic = Question::resolve,
          .fields = kFields};
}

}  // namespace widegate
