// Answers to a verdict as buttons: the core finds and tries them, these are their controls.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/answer/answers.h"
#include "web/door/mirror.h"
#include "web/view/section.h"

namespace widegate {

inline constexpr std::string_view kAnswerPrefix = "answer:";

/// "answer:run:0": the first answer to the question of a section.
[[nodiscard]] std::string answer_id(std::string_view section, std::size_t place);

/// A button for each answer to the section's question; none for a section that asks nothing.
[[nodiscard]] std::vector<Control> answer_controls(const Panel& panel,
                                                   std::span<const Answer> answers);

/// The answer behind a control's id; nullptr when there is none.
[[nodiscard]] const Answer* answer_of(std::string_view id, std::span<const Answer> answers);

}  // namespace widegate
