// Answers: where a report names something better, the change of the plan that does it, tried out
// and ready to be made with one press. Nothing is judged here: what helps is what evaluate() finds
// when the change is made.
#pragma once

#include <string>
#include <vector>

#include "core/base/problem.h"
#include "core/catalogue/catalogue.h"
#include "core/plan/plan.h"
#include "core/plan/plan_fields.h"
#include "core/report/notes.h"
#include "core/report/report.h"

namespace widegate {

/// One change that mends what a question found, or reaches what the plan wants.
struct Answer {
  Question question = Question::frame;  ///< Whose verdict it answers.
  std::string text;                     ///< What is done, for a button: "Shutter 172.8°".
  std::string outcome;                  ///< What it comes to: "1/50 s, no flicker".
  std::vector<TypedField> change;       ///< As with_fields() reads it.
};

/// The most answers to one question.
inline constexpr std::size_t kMostAnswers = 3;

/// Every answer to what is not plainly fine in the report, and to what the plan wants to see; in
/// the order of the questions, the best first. Each was evaluated: it makes the note it answers
/// better and lets nothing fail that did not. None for a plan that cannot be worked out.
/// Costs an evaluation for each thing tried, and a ranking where another format would help: for
/// when a person has let go, not for every frame of a drag.
/// @param report  evaluate(plan, catalogue)
[[nodiscard]] std::vector<Answer> answers(const Plan& plan, const Report& report,
                                          const Catalogue& catalogue);

/// The plan with the change made, checked as a whole.
[[nodiscard]] Checked<Plan> with_answer(const Plan& plan, const Answer& answer,
                                        const Catalogue& catalogue);

}  // namespace widegate
