// The plan itself and how it is shown: its name, the colours, starting afresh.
#include <array>

#include "web/view/kept_plan_controls.h"
#include "web/view/screen_controls.h"
#include "web/view/sections.h"

namespace widegate {

Panel plan_panel() {
  static constexpr auto kFields = std::to_array<PanelField>({
      {"/title"},
  });
  static constexpr auto kExtra = std::to_array<std::string_view>(
      {kShelfList, kShelfAdd, kShelfCopy, kShelfDelete, kShelfRestore, kSaveSetAside, kTheme,
       kLargeType, kStartAfresh});
  return {.id = "plan",
          .title = "Plan",
          .question = "What is it called, how is it shown?",
          .has_verdict = false,
          .fields = kFields,
          .extra_controls = kExtra};
}

}  // namespace widegate
