#include "web/view/answer_controls.h"

#include "web/view/sections.h"

namespace widegate {
namespace {

bool belongs(const Panel& panel, const Answer& answer) {
  return panel.has_verdict && panel.topic == answer.question;
}

}  // namespace

std::string answer_id(std::string_view section, std::size_t place) {
  return std::string(kAnswerPrefix) + std::string(section) + ":" + std::to_string(place);
}

std::vector<Control> answer_controls(const Panel& panel, std::span<const Answer> answers) {
  std::vector<Control> controls;
  for (const Answer& answer : answers) {
    if (!belongs(panel, answer)) continue;
    Control& control = controls.emplace_back();
    control.id = answer_id(panel.id, controls.size() - 1);
    control.kind = ControlKind::action;
    control.section = panel.id;
    control.label = answer.text;
    control.help = answer.outcome;
  }
  return controls;
}

const Answer* answer_of(std::string_view id, std::span<const Answer> answers) {
  if (!id.starts_with(kAnswerPrefix)) return nullptr;
  for (const Panel& panel : panels()) {
    std::size_t place = 0;
    for (const Answer& answer : answers) {
      if (belongs(panel, answer) && answer_id(panel.id, place++) == id) return &answer;
    }
  }
  return nullptr;
}

}  // namespace widegate
