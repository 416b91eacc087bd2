// All controls of one state: the fields of every panel and what belongs to the screen itself
// (colours, lessons, buttons). No drawing.
#pragma once

#include <span>
#include <string_view>
#include <vector>

#include "core/answer/answers.h"
#include "web/app/app.h"
#include "web/door/mirror.h"
#include "web/state/screen_state.h"
#include "web/view/ranking_rows.h"

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
inline constexpr std::string_view kLessonOpen = "command:lesson-open";
inline constexpr std::string_view kLessonSave = "command:lesson-save";
inline constexpr std::string_view kLessonLink = "command:lesson-link";
inline constexpr std::string_view kLessonQr = "command:lesson-qr";
inline constexpr std::string_view kLessonPrint = "command:lesson-print";
inline constexpr std::string_view kLesson = "view:lesson";
inline constexpr std::string_view kGoTo = "view:go-to";
inline constexpr std::string_view kTheme = "view:theme";
inline constexpr std::string_view kLargeType = "view:large-type";

/// Every control, in the order of the panels; undo and redo first.
[[nodiscard]] std::vector<Control> make_controls(const App& app, const PanelState& state,
                                                 const RankingRows& ranking,
                                                 std::span<const Answer> answers);

/// "system", "dark", "light", "sunlight".
[[nodiscard]] std::string_view theme_key(ThemeChoice theme);
[[nodiscard]] ThemeChoice theme_from_key(std::string_view key);

}  // namespace widegate
