// A question as data: its words and which values of the plan belong to it. The list of them is in
// sections.h; one file for each question.
#pragma once

#include <cstddef>
#include <span>
#include <string_view>

#include "core/plan/plan.h"
#include "core/report/notes.h"

namespace widegate {

struct DrawContext;
struct PanelState;

/// One control of a panel.
struct PanelField {
  std::string_view pointer;  ///< As in plan_fields.h; of the first frame line.
  bool further = false;      ///< Shown only when "More" is open; always there for the page.
  /// False: the value means nothing at the moment. `line` is the frame line that is shown.
  bool (*wanted)(const Plan&, std::size_t line) = nullptr;
};

/// One section of the column.
struct Panel {
  std::string_view id;
  std::string_view title;
  std::string_view question;  ///< What it answers, as a person would ask.
  bool has_verdict = true;
  Question topic = Question::frame;  ///< Of the verdict.
  std::span<const PanelField> fields = {};
  /// Controls that are not values of the plan, by their id in the view.
  std::span<const std::string_view> extra_controls = {};
  /// Draws what is special to the question above its controls, and below its figures; may be null.
  void (*draw_first)(DrawContext& context) = nullptr;
  void (*draw_extra)(DrawContext& context) = nullptr;
  /// Controls and figures are drawn by draw_first.
  bool draws_itself = false;
  /// True while draw_first draws a heading of its own; may be null.
  bool (*heads_itself)(const PanelState& state) = nullptr;
};

}  // namespace widegate
