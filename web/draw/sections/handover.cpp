// Hand over: the plan as a link, a printed sheet, tables, a chart, a framing file.
#include <algorithm>
#include <array>
#include <string_view>

#include "web/draw/widgets/control_row.h"
#include "web/draw/widgets/draw_context.h"
#include "web/draw/widgets/parts.h"
#include "web/draw/widgets/working.h"
#include "web/view/screen_controls.h"
#include "web/view/sections.h"

namespace widegate {
namespace {

constexpr auto kActions = std::to_array<std::string_view>({
    kCopyLink,
    kShareLink,
    kShowQr,
    kPrintSheet,
    kPrintWorkings,
    kSavePlan,
    kOpenPlan,
    kSaveRanking,
    kSaveStorage,
    kSaveCover,
    kSaveChart,
    kSaveChartPng,
    kSaveFraming,
});

/// The words above the first action of a kind.
struct Kind {
  std::string_view first;
  std::string_view words;
};
constexpr std::array kKinds = {
    Kind{kCopyLink, "A link; it holds the whole plan"},
    Kind{kPrintSheet, "Paper"},
    Kind{kSavePlan, "The plan as a file"},
    Kind{kSaveRanking, "Tables for a spreadsheet"},
    Kind{kSaveChart, "Frame lines for the camera and for post"},
};

void draw_handover(DrawContext& context) {
  for (const std::string_view id : kActions) {
    const auto kind = std::find_if(kKinds.begin(), kKinds.end(),
                                   [id](const Kind& each) { return each.first == id; });
    if (kind != kKinds.end()) {
      take_space(context, 2);
      draw_paragraph(context, TextStyle::caption, context.theme.colour.quiet, kind->words, 1);
    }
    draw_control(context, id);
  }
}

}  // namespace

Panel handover_panel() {
  return {.id = "handover",
          .title = "Hand over",
          .question = "Who needs it, and as what?",
          .has_verdict = false,
          .extra_controls = kActions,
          .draw_first = draw_handover,
          .draws_itself = true};
}

}  // namespace widegate
