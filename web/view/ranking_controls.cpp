#include "web/view/ranking_controls.h"

#include <array>
#include <optional>
#include <string>
#include <utility>

#include "web/view/choice_items.h"
#include "web/view/named_control.h"

namespace widegate {
namespace {

/// The value that stands for a list of several cameras that the plan brought along.
constexpr std::string_view kSeveral = "several";

constexpr std::array<std::string_view, 3> kParts = {"passing", "trade-offs", "rejected"};

struct NamedValue {
  std::string_view value;
  std::string_view label;
};
/// In the order of RankingKind and RankingListing.
constexpr auto kKinds = std::to_array<NamedValue>({
    {"all", "All"},
    {"raw", "Sensor raw"},
    {"picture", "Pictures, no raw"},
    {"desqueezed", "De-squeezed in camera"},
    {"without-caution", "Without a caution"},
});
constexpr auto kListings = std::to_array<NamedValue>({
    {"best-of-mode", "The best of each sensor mode"},
    {"every-recording", "Every recording"},
});

Control named(std::string_view id, ControlKind kind, std::string_view label) {
  return named_control(id, kind, "choose", label);
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

template <std::size_t kCount>
Control setting(std::string_view id, std::string_view label,
                const std::array<NamedValue, kCount>& values, std::size_t chosen) {
  Control control = named(id, ControlKind::choice, label);
  for (std::size_t i = 0; i < kCount; ++i) {
    put_item(control, values[i].value, std::string(values[i].label), i == chosen);
  }
  return control;
}

/// The place of a value; nothing when it is none.
template <std::size_t kCount>
std::optional<std::size_t> place_of(const std::array<NamedValue, kCount>& values,
                                    std::string_view value) {
  for (std::size_t i = 0; i < kCount; ++i) {
    if (values[i].value == value) return i;
  }
  return std::nullopt;
}

void add_ways(std::vector<Control>& controls, const RankingRows& ranking) {
  for (std::size_t i = 0; i < ranking.ways.size(); ++i) {
    const WayOut& way = ranking.ways[i];
    Control& control = controls.emplace_back(
        named(ranking_way_id(i), ControlKind::action, change_text(way.change)));
    control.help = way.would_pass == 1 ? "One format passes then."
                                       : std::to_string(way.would_pass) + " formats pass then.";
  }
}

Control more_control(const PanelState& state, const RankingRows& ranking) {
  Control control = named(kMoreFormats, ControlKind::action, "Show more formats");
  control.enabled = ranking.listed > state.formats_shown;
  return control;
}

}  // namespace

std::string ranking_way_id(std::size_t way) {
  return std::string(kRankingWay) + std::to_string(way);
}

std::vector<Control> ranking_controls(const App& app, const PanelState& state,
                                      const RankingRows& ranking) {
  std::vector<Control> controls = {
      cameras_control(app), part_control(state, ranking),
      setting(kRankingKind, "Of these", kKinds, static_cast<std::size_t>(state.ranking_kind)),
      setting(kRankingListing, "Listed", kListings,
              static_cast<std::size_t>(state.ranking_listing)),
      more_control(state, ranking)};
  add_ways(controls, ranking);
  return controls;
}

bool set_ranking_control(std::string_view id, std::string_view text, const App& app,
                         PanelState& state, Commands& commands) {
  if (id == kRankingPart) {
    for (std::size_t i = 0; i < kParts.size(); ++i) {
      if (text == kParts[i]) state.ranking_part = static_cast<RankingPart>(i);
    }
    state.formats_shown = kFormatsAtFirst;
  } else if (id == kRankingKind) {
    if (const auto place = place_of(kKinds, text)) {
      state.ranking_kind = static_cast<RankingKind>(*place);
    }
    state.formats_shown = kFormatsAtFirst;
  } else if (id == kRankingListing) {
    if (const auto place = place_of(kListings, text)) {
      state.ranking_listing = static_cast<RankingListing>(*place);
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
