// Hand over: the plan as a link, a printed sheet, tables, a chart, a framing file.
#include <array>

#include "web/actions.h"
#include "web/panels/list.h"

namespace widegate {

Panel handover_panel() {
  static constexpr auto kActions = std::to_array<std::string_view>({
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
  return {.id = "handover",
          .title = "Hand over",
          .question = "Who needs it, and as what?",
          .has_verdict = false,
          .extra_controls = kActions};
}

}  // namespace widegate
