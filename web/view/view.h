// From the plan and its report to ready strings: every control, figure and verdict of the screen,
// rebuilt only when something changed. No drawing, no ImGui; the only arithmetic is the place of a
// value on its slider.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/answer/answers.h"
#include "core/handover/fdl/plan_delivery.h"
#include "web/app/app.h"
#include "web/door/mirror.h"
#include "web/state/screen_state.h"
#include "web/view/comparison.h"
#include "web/view/outlines.h"
#include "web/view/ranking_rows.h"
#include "web/view/show.h"

namespace widegate {

/// The strings of one state of the app, and where they were drawn last.
struct View {
  Mirror mirror;
  PictureData picture;
  RankingRows ranking;
  std::vector<Answer> answers;         ///< Of the plan when nothing was dragged.
  std::uint64_t answers_revision = 0;  ///< Of the app, when they were found.
  std::optional<fdl::Delivery> delivery;
  Comparison comparison;
  ShowView show;
  std::uint64_t version = 0;       ///< Grows with every rebuild that changed something.
  std::uint64_t rect_version = 0;  ///< Grows when a rectangle moved.

  /// The control with this id, or nullptr.
  [[nodiscard]] Control* find(std::string_view id);
};

/// Whether the ranking follows the plan in this state of the screen.
[[nodiscard]] bool ranks_now(const PanelState& state);

/// Whether the delivery does.
[[nodiscard]] bool delivers_now(const PanelState& state);

/// Makes the view anew; rectangles are kept where a control of the same id was.
void rebuild(View& view, const App& app, const PanelState& state);

/// Where a slider's grab stands for a value, 0 to 1; wide ranges of positive values run by ratio.
[[nodiscard]] double slider_place(const Control& control, double value);
/// The value at a place, on the slider's steps.
[[nodiscard]] double slider_value(const Control& control, double place);
/// The value `steps` steps away: the next usual value where there is a list of them and they are
/// close, the next multiple of the step otherwise; inside the field's own limits.
[[nodiscard]] std::string stepped_text(const Control& control, int steps);
/// A value as text that the field takes.
[[nodiscard]] std::string value_as_text(const Control& control, double value);

}  // namespace widegate
