// The Show section as data: its controls, figures, and what its drawing shows, made from the
// core's report of the show. No drawing, no arithmetic.
#pragma once

#include <string>
#include <vector>

#include "core/show/one_more.h"
#include "core/show/report.h"
#include "core/show/show.h"
#include "web/app/app.h"
#include "web/door/mirror.h"
#include "web/state/screen_state.h"

namespace widegate {

/// A show with all that follows from it.
struct OpenShow {
  Show show;
  ShowReport report;
  std::vector<ShowDifference> more;  ///< What a little more costs.
};

/// The section's controls, in the order they are drawn.
[[nodiscard]] std::vector<Control> show_controls(const App& app, const PanelState& state);

/// A line of the section: words, and what stands behind them.
struct ShowLine {
  std::string label;
  std::string text;
};

/// What the section draws itself.
struct ShowView {
  std::vector<ShowLine> totals, parts, money, more;
  std::vector<std::string> part_names;
  std::vector<std::vector<float>> stacks;  ///< Footage of each part so far, TB, day by day.
  float most_terabytes = 0;
  std::vector<float> money_so_far;                   ///< Where there is one currency.
  std::string currency;                              ///< "EUR, invented".
  std::vector<std::size_t> drives_full, tapes_full;  ///< Days, from 0.
  std::string first_day, last_day;                   ///< In words.
  std::vector<std::string> full_words;               ///< "LTO-9: full on ...".
};
[[nodiscard]] ShowView show_view(const PanelState& state);

/// The same lines as figures of the page's table.
[[nodiscard]] std::vector<ResultRow> show_rows(const ShowView& view);

/// What to look out for, each beginning with "Fine", "Caution" or "Fails".
[[nodiscard]] std::vector<std::string> show_notes_of(const PanelState& state);

}  // namespace widegate
