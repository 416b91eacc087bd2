#include "web/act/ranking_actions.h"

#include <utility>

#include "web/view/ranking_controls.h"

namespace widegate {

bool run_ranking_action(std::string_view id, const App& app, const RankingRows& ranking,
                        PanelState& state, Commands& commands) {
  for (std::size_t i = 0; i < ranking.ways.size(); ++i) {
    if (id != ranking_way_id(i)) continue;
    const WayOut& way = ranking.ways[i];
    Checked<Plan> changed = with_change(app.plan(), app.library(), way.change);
    if (!changed) return true;
    offer_undo(state, change_text(way.change) + ".");
    commands.emplace_back(ReplacePlan{std::move(*changed)});
    return true;
  }
  return false;
}

}  // namespace widegate
