#include "web/view/ranking_controls.h"

#include <array>
#include <string>
#include <utility>

#include "web/view/choice_items.h"

namespace widegate {
namespace {

/// The value that stands for a list of several cameras that the plan brought along.
constexpr std::string_view kSeveral = "several";

constexpr std::array<std::string_view, 3> kParts = {"passing", "trade-offs", "rejected"};

Control named(std::string_view id, ControlKind kind, std::string_view label) {
  Control control;
  control.id = id;
  control.kind = kind;
  control.section = "choose";
  control.label = label;
  return control;
}

Control cameras_control(const App& app) {
  Control control = named(kCamerasConsidered, ControlKind::choice, "Cameras considered");
  const std::vector<std::string>& considered = app.plan().choose.cameras;
  put_item(control, "", "All cameras", considered.empty());
  if (considered.size() > 1) {
    put_item(control, kSeveral, std::to_string(considered.size()) + " cameras of the plan", true);
  }
  for (const Camera* camera : cameras_to_choose(app)) {
    put_item(control, camera->id, camera->name,
             considered.size() == 1 && considered.front() == camera->id);
  }
  return control;
}

Control part_control(const PanelState& state, const RankingRows& ranking) {
  Control control = named(kRankingPart, ControlKind::choice, "Formats");
  const std::array<std::size_t, kParts.size()> counts = {ranking.accepted, ranking.on_front,
                                                         ranking.total - ranking.accepted};
  constexpr std::array<std::string_view, kParts.size()> kLabels = {"Passing", "Trade-offs",
                                                                   "Rejected"};
  for (std::size_t i = 0; i < kParts.size(); ++i) {
    put_item(control, kParts[i], std::string(kLabels[i]) + " " + std::to_string(counts[i]),
             i == static_cast<std::size_t>(state.ranking_part));
  }
  return control;
}

Control more_control(const PanelState& state, const RankingRows& ranking) {
  Control control = named(kMoreFormats, ControlKind::action, "Show more formats");
  control.enabled = ranking.listed > state.formats_shown;
  return control;
}

}  // namespace

std::vector<Control> ranking_controls(const App& app, const PanelState& state,
                                      const RankingRows& ranking) {
  return {cameras_control(app), part_control(state, ranking), more_control(state, ranking)};
}

bool set_ranking_control(std::string_view id, std::string_view text, const App& app,
                         PanelState& state, Commands& commands) {
  if (id == kRankingPart) {
    for (std::size_t i = 0; i < kParts.size(); ++i) {
      if (text == kParts[i]) state.ranking_part = static_cast<RankingPart>(i);
    }
    state.formats_shown = kFormatsAtFirst;
  } else if (id == kCamerasConsidered) {
    if (text == kSeveral) return true;
    Plan plan = app.plan();
    plan.choose.cameras.clear();
    if (!text.empty()) plan.choose.cameras.emplace_back(text);
    commands.emplace_back(ReplacePlan{std::move(plan)});
  } else {
    return false;
  }
  return true;
}

}  // namespace widegate
