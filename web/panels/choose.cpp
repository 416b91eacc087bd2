// Choose: what a format must do, and what ranks those that do it.
#include <array>

#include "web/panels/list.h"

namespace widegate {

Panel choose_panel() {
  static constexpr auto kFields = std::to_array<PanelField>({
      {"/choose/must_meet_mandate"},
      {"/choose/min_minutes_per_card"},
      {"/choose/min_push_in_percent"},
      {"/choose/weight_area", true},
      {"/choose/weight_pixels", true},
      {"/choose/weight_speed", true},
      {"/choose/weight_data", true},
  });
  return {.id = "choose",
          .title = "Choose",
          .question = "Which format then?",
          .topic = Question::choose,
          .fields = kFields};
}

}  // namespace widegate
