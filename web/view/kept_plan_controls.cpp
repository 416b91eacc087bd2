#include "web/view/kept_plan_controls.h"

#include <string>

namespace widegate {

Control shelf_control(std::string_view id, const App& app, const PanelState& state) {
  const ShelfState& shelf = state.shelf;
  Control control;
  control.id = id;
  control.section = "plan";
  control.kind = ControlKind::action;
  if (id == kShelfAdd) {
    control.label = shelf.current == 0 ? "Keep in the list of plans" : "Keep as a new plan";
  } else if (id == kShelfCopy) {
    control.label = "Put a copy into the list";
  } else if (id == kShelfDelete) {
    control.label = "Delete from the list";
    control.enabled = shelf.current != 0;
  } else if (id == kShelfRestore) {
    control.label = "Put the deleted plan back";
    control.enabled = shelf.removed.has_value();
  } else if (id == kSaveSetAside) {
    control.label = "Save what could not be read";
    control.enabled = state.memory.set_aside;
  } else {
    control.kind = ControlKind::choice;
    control.label = "Plans on this device";
    control.value_text =
        shelf.shelf.plans.empty() ? "None kept yet" : "This one is not in the list";
    if (shelf.current == 0)
      control.choices.push_back({"", control.value_text, "Keep it to find it again"});
    for (const KeptPlan& plan : shelf.shelf.plans) {
      const bool here = plan.id == shelf.current;
      const std::string& title = here ? app.plan().title : plan.title;
      control.choices.push_back(
          {std::to_string(plan.id), title, here ? "On the screen" : "In the list"});
      if (!here) continue;
      control.edit_text = control.choices.back().value;
      control.value_text = title;
    }
    control.enabled = !shelf.shelf.plans.empty();
  }
  return control;
}

}  // namespace widegate
