// See: field of view, what is in frame at a distance, depth of field, the same view elsewhere.
#include <array>

#include "web/view/sections.h"
#include "web/view/see_rows.h"

namespace widegate {

Panel see_panel() {
  static constexpr auto kFields = std::to_array<PanelField>({
      {"/lens/focus_m"},
      {"/lens/wanted_width_m"},
      {"/lens/f_number"},
      {"/lens/match", true},
      {"/lens/circle_of_confusion_mm", true},
      {"/lens/wanted_height_m", true},
  });
  static constexpr auto kExtra = std::to_array<std::string_view>({kSameView});
  return {.id = "see",
          .title = "See",
          .question = "What is in the picture from here?",
          .topic = Question::see,
          .fields = kFields,
          .extra_controls = kExtra};
}

}  // namespace widegate
