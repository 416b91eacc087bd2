// Cover: whether the lens's image circle covers the mode, the protected area and the frame line.
#include <array>

#include "web/view/sections.h"

namespace widegate {

Panel cover_panel() {
  static constexpr auto kFields = std::to_array<PanelField>({
      {"/lens/set"},
      {"/lens/focal_mm"},
      {"/lens/squeeze"},
      {"/choose/must_cover"},
      {"/lens/image_circle_mm", true},
      {"/lens/extender", true},
  });
  return {.id = "cover",
          .title = "Cover",
          .question = "Does the lens cover the format?",
          .topic = Question::cover,
          .fields = kFields};
}

}  // namespace widegate
