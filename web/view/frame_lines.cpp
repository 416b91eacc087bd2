#include "web/view/frame_lines.h"

#include <algorithm>
#include <utility>

#include "core/base/number_text.h"
#include "core/plan/plan_fields.h"
#include "web/view/named_control.h"

namespace widegate {
namespace {

Control named(std::string_view id, ControlKind kind, std::string_view label) {
  return named_control(id, kind, "frame", label);
}

std::string line_words(const FrameLine& line, std::size_t place) {
  return line.name.empty() ? "Line " + std::to_string(place + 1) : line.name;
}

Control line_control(const App& app, const PanelState& state) {
  Control control = named(kFrameLine, ControlKind::choice, "Frame line");
  const auto& lines = app.plan().deliverable.frame_lines;
  const std::size_t picked = picked_line(app.plan(), state);
  for (std::size_t i = 0; i < lines.size(); ++i) {
    control.choices.push_back({std::to_string(i), line_words(lines[i], i), {}});
  }
  control.edit_text = control.choices[picked].value;
  control.value_text = control.choices[picked].label;
  return control;
}

/// The commonest second deliverable.
FrameLine added_line(std::size_t place) {
  FrameLine line;
  line.name = "Line " + std::to_string(place + 1);
  line.aspect = Rational(16, 9);
  return line;
}

}  // namespace

std::size_t picked_line(const Plan& plan, const PanelState& state) {
  const std::size_t lines = plan.deliverable.frame_lines.size();
  return lines == 0 ? 0 : std::min(state.frame_line, lines - 1);
}

std::vector<Control> frame_line_controls(const App& app, const PanelState& state) {
  const std::size_t lines = app.plan().deliverable.frame_lines.size();
  Control add = named(kAddFrameLine, ControlKind::action, "Add a frame line");
  add.enabled = lines < kMaxFrameLines;
  if (lines < 2) return {std::move(add)};
  return {line_control(app, state), std::move(add),
          named(kRemoveFrameLine, ControlKind::action, "Remove this frame line")};
}

bool set_frame_line(std::string_view id, std::string_view text, PanelState& state) {
  if (id != kFrameLine) return false;
  const auto line = parse_rational(text);
  if (line && line->whole() && *line >= Rational(0)) {
    state.frame_line = static_cast<std::size_t>(line->num());
  }
  return true;
}

void run_frame_line_action(std::string_view id, const App& app, PanelState& state,
                           Commands& commands) {
  Plan plan = app.plan();
  auto& lines = plan.deliverable.frame_lines;
  if (id == kAddFrameLine && lines.size() < kMaxFrameLines) {
    lines.push_back(added_line(lines.size()));
    state.frame_line = lines.size() - 1;
  } else if (id == kRemoveFrameLine && lines.size() > 1) {
    const std::size_t line = picked_line(plan, state);
    lines.erase(lines.begin() + static_cast<std::ptrdiff_t>(line));
    state.frame_line = line == 0 ? 0 : line - 1;
  } else {
    return;
  }
  commands.emplace_back(ReplacePlan{std::move(plan)});
}

}  // namespace widegate
