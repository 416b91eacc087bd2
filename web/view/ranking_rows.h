// The ranking of all formats as ready rows. Judging, scoring and order are the core's.
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/choose/ranking.h"
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
  bool accepted = false;
  bool on_front = false;  ///< No other is as good in everything and better in one thing.
  bool chosen = false;    ///< It is the plan's.
  std::array<float, kCriterionCount> shares{};  ///< Area, pixels, speed, data; of the best, 0 to 1.
};

struct RankingRows {
  std::size_t accepted = 0;
  std::size_t on_front = 0;
  std::size_t total = 0;
  std::size_t listed = 0;        ///< In the part asked for.
  std::vector<RankingRow> rows;  ///< Of that part, at most as many as asked for, and always the
                                 ///< plan's own.
};

/// Ranks every format and words the first `most` of one part. Empty for a plan that cannot be
/// worked out.
[[nodiscard]] RankingRows ranking_rows(const App& app, RankingPart part, std::size_t most);

/// A format as the id of a row.
[[nodiscard]] std::string id_of_format(const FormatChoice& format);

/// The format behind a row's id; nothing when the text is none.
[[nodiscard]] std::optional<FormatChoice> format_from_id(std::string_view id);

}  // namespace widegate
