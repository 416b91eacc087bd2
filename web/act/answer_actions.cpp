#include "web/act/answer_actions.h"

#include <utility>

#include "web/view/answer_controls.h"

namespace widegate {

void run_answer_action(std::string_view id, const App& app, std::span<const Answer> answers,
                       PanelState& state, Commands& commands) {
  const Answer* answer = answer_of(id, answers);
  if (answer == nullptr) return;
  Checked<Plan> changed = with_answer(app.plan(), *answer, app.library());
  if (!changed) return;
  offer_undo(state, "Done: " + answer->text + ".");
  commands.emplace_back(ReplacePlan{std::move(*changed)});
}

}  // namespace widegate
