#include "web/view/start_controls.h"

#include <string>
#include <utility>

#include "core/plan/example_plans.h"

namespace widegate {
namespace {

constexpr std::size_t kPlansShown = 3;

Control action(std::string id, std::string label, std::string help) {
  Control control;
  control.id = std::move(id);
  control.kind = ControlKind::action;
  control.section = kStartSection;
  control.label = std::move(label);
  control.help = std::move(help);
  return control;
}

/// Kept plans that are not on the screen, the one kept last first.
std::vector<const KeptPlan*> other_plans(const PanelState& state) {
  std::vector<const KeptPlan*> plans;
  const auto& all = state.shelf.shelf.plans;
  for (auto plan = all.rbegin(); plan != all.rend() && plans.size() < kPlansShown; ++plan) {
    if (plan->id != state.shelf.current) plans.push_back(&*plan);
  }
  return plans;
}

}  // namespace

bool shows_start(const PanelState& state) {
  if (!state.lesson.empty()) return false;
  return state.first_visit || !other_plans(state).empty();
}

std::vector<Control> start_controls(const PanelState& state) {
  std::vector<Control> controls;
  if (!state.first_visit) {
    for (const KeptPlan* plan : other_plans(state)) {
      controls.push_back(action(std::string(kStartPlan) + std::to_string(plan->id), plan->title,
                                "Open this plan"));
    }
    return controls;
  }
  for (const ExamplePlan& example : example_plans()) {
    controls.push_back(action(std::string(kStartExample) + std::string(example.id),
                              std::string(example.name), std::string(example.words)));
  }
  controls.push_back(
      action(std::string(kStartCamera), "Your own camera", "Type it in from its data sheet"));
  return controls;
}

}  // namespace widegate
