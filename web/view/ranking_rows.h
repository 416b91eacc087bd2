// The ranking of all formats as ready rows. Judging, scoring and order are the core's.
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/choose/ranking.h"
#include "core/choose/smallest_change.h"
#include "core/report/report.h"
#include "web/app/app.h"
#include "web/state/screen_state.h"

namespace widegate {

/// One format of the ranking.
struct RankingRow {
  FormatChoice format;
  std::string id;      ///< "alder/open-gate/as-read/bayer-12-packed", for the page.
  std::string title;   ///< Camera and sensor mode.
  std::string detail;  ///< Recording option and codec.
  std::string words;   ///< Its figures; or every reason why it is rejected, and what would help.
  Severity severity = Severity::ok;  ///< Passes, passes with a caution, rejected.
  bool accepted = false;
  bool on_front = false;  ///< No other is as good in everything and better in one thing.
  bool chosen = false;    ///< It is the plan's.
  std::array<float, kCriterionCount> shares{};  ///< In the order of Criterion, 0 to 1.
};

struct RankingRows {
  std::size_t accepted = 0;
  std::size_t on_front = 0;
  std::size_t total = 0;
  std::size_t listed = 0;            ///< Rows there would be without a limit.
  std::vector<RankingRow> rows;      ///< At most as many as asked for, and always the plan's own.
  std::string lead;                  ///< How many pass, and what to know before reading the list.
  std::vector<std::string> binding;  ///< When nothing passes: what most formats fail by.
  std::vector<WayOut> ways;          ///< When nothing passes: the smallest changes that help.
};

/// Ranks every format and words the first of those that the screen's state asks for. Empty for a
/// plan that cannot be worked out. What would help when nothing passes is left out during a drag.
[[nodiscard]] RankingRows ranking_rows(const App& app, const PanelState& state);

/// A format as the id of a row.
[[nodiscard]] std::string id_of_format(const FormatChoice& format);

/// The format behind a row's id; nothing when the text is none.
[[nodiscard]] std::optional<FormatChoice> format_from_id(std::string_view id);

}  // namespace widegate
