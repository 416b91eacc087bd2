// What the buttons do: undo, starting afresh, handing the plan over, walking through a lesson. The
// words of the buttons are in view.cpp; what is handed over is made by the core.
#pragma once

#include <string_view>

#include "web/app.h"
#include "web/command.h"
#include "web/platform.h"
#include "web/state.h"

namespace widegate {

/// Ids of the actions and of the settings that are not part of the plan.
inline constexpr std::string_view kUndo = "command:undo";
inline constexpr std::string_view kRedo = "command:redo";
inline constexpr std::string_view kStartAfresh = "command:start-afresh";
inline constexpr std::string_view kFormat = "command:choose-format";
inline constexpr std::string_view kCopyLink = "command:copy-link";
inline constexpr std::string_view kShareLink = "command:share-link";
inline constexpr std::string_view kShowQr = "command:show-qr";
inline constexpr std::string_view kPrintSheet = "command:print-sheet";
inline constexpr std::string_view kPrintWorkings = "command:print-workings";
inline constexpr std::string_view kSavePlan = "command:save-plan";
inline constexpr std::string_view kOpenPlan = "command:open-plan";
inline constexpr std::string_view kSaveRanking = "command:save-ranking";
inline constexpr std::string_view kSaveStorage = "command:save-storage";
inline constexpr std::string_view kSaveCover = "command:save-cover";
inline constexpr std::string_view kSaveChart = "command:save-chart";
inline constexpr std::string_view kSaveChartPng = "command:save-chart-png";
inline constexpr std::string_view kSaveFraming = "command:save-framing";
inline constexpr std::string_view kLessonNext = "command:lesson-next";
inline constexpr std::string_view kLessonBack = "command:lesson-back";
inline constexpr std::string_view kLessonLeave = "command:lesson-leave";
inline constexpr std::string_view kLesson = "view:lesson";
inline constexpr std::string_view kGoTo = "view:go-to";
inline constexpr std::string_view kTheme = "view:theme";
inline constexpr std::string_view kLargeType = "view:large-type";
inline constexpr std::string_view kDesqueeze = "view:desqueezed";

/// Purpose of a file that is opened as a plan, see Platform::open_file.
inline constexpr std::string_view kPlanFile = "plan";

/// Runs an action; an id that is none does nothing. Changes of the plan are pushed as commands,
/// what happened is told in state.message.
void run_action(std::string_view id, const App& app, PanelState& state, Platform& platform,
                Commands& commands);

/// Whether an action is done by the part of the program that comes first.
[[nodiscard]] bool works_at_first(std::string_view id);

/// The plan's title as the beginning of a file name, then `end`.
[[nodiscard]] std::string file_name(const Plan& plan, std::string_view end);

/// The whole address that opens the plan.
[[nodiscard]] std::string link_address(const App& app, const Platform& platform);

}  // namespace widegate
