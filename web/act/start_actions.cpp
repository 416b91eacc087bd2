#include "web/act/start_actions.h"

#include <string>
#include <utility>

#include "core/plan/example_plans.h"
#include "web/act/kept_plan_actions.h"
#include "web/act/library_actions.h"
#include "web/view/start_controls.h"

namespace widegate {
namespace {

void open_example(std::string_view id, const App& app, PanelState& state, Commands& commands) {
  for (const ExamplePlan& example : example_plans()) {
    if (example.id != id) continue;
    auto plan = example_plan(example, app.library());
    if (!plan) return;
    leave_shelf(state);
    offer_undo(state, std::string(example.name) + ": " + std::string(example.words) + ".");
    commands.emplace_back(ReplacePlan{std::move(*plan)});
  }
}

}  // namespace

void run_start_action(std::string_view id, const App& app, PanelState& state, Commands& commands) {
  if (id == kStartCamera) {
    set_library_control("library:new", "cameras", app, state);
  } else if (id.starts_with(kStartExample)) {
    open_example(id.substr(kStartExample.size()), app, state, commands);
  } else if (id.starts_with(kStartPlan)) {
    state.asked_plan = id.substr(kStartPlan.size());
  }
}

}  // namespace widegate
