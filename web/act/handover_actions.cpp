#include "web/act/handover_actions.h"

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <utility>

#include "core/choose/ranking.h"
#include "core/encode/qr_svg.h"
#include "core/handover/chart/chart.h"
#include "core/handover/chart/chart_png.h"
#include "core/handover/fdl/plan_export.h"
#include "core/handover/fdl/write.h"
#include "core/handover/link/link.h"
#include "core/handover/sheet/sheet.h"
#include "core/handover/table/ranking_csv.h"
#include "core/handover/table/storage_csv.h"
#include "core/plan/plan_changes.h"
#include "core/plan/plan_json.h"
#include "web/act/delivery_actions.h"
#include "web/act/kept_plan_actions.h"
#include "web/act/lesson_actions.h"
#include "web/act/start_actions.h"
#include "web/view/comparison.h"
#include "web/view/frame_lines.h"
#include "web/view/ranking_controls.h"
#include "web/view/screen_controls.h"
#include "web/view/start_controls.h"

namespace widegate {
namespace {

constexpr std::string_view kCsvType = "text/csv;charset=utf-8";

/// Everything an action may use.
struct Desk {
  const App& app;
  PanelState& state;
  Platform& platform;
  Commands& commands;
};

/// Says what is another value now.
void undo(Desk& desk) {
  const Plan* before = desk.app.before();
  if (before != nullptr && desk.state.rest == RestOfProgram::here) {
    desk.state.message =
        "Undone. " + change_words(desk.app.plan(), *before, desk.app.library()) + ".";
  }
  desk.commands.emplace_back(Undo{});
}
void redo(Desk& desk) {
  const Plan* after = desk.app.after();
  if (after != nullptr && desk.state.rest == RestOfProgram::here) {
    desk.state.message =
        "Done again. " + change_words(desk.app.plan(), *after, desk.app.library()) + ".";
  }
  desk.commands.emplace_back(Redo{});
}

void start_afresh(Desk& desk) {
  Plan fresh = desk.app.first();
  fresh.own = desk.app.plan().own;
  leave_lesson(desk.state);
  leave_shelf(desk.state);
  desk.commands.emplace_back(ReplacePlan{std::move(fresh)});
  offer_undo(desk.state, "A new plan.");
}

/// The link of the plan; without one the message says why, and offers the file.
std::optional<std::string> link_or_why(Desk& desk) {
  auto link = link_address(desk.app, desk.platform);
  if (link) return *std::move(link);
  desk.state.message = "No link: this plan has " + link.error().front().value + ", a link takes " +
                       link.error().front().accepted + ".";
  return std::nullopt;
}

void copy_link(Desk& desk) {
  const auto link = link_or_why(desk);
  if (!link) return;
  desk.state.message = desk.platform.copy_text(*link)
                           ? "The link is on the clipboard. It holds the whole plan."
                           : "The clipboard was refused. Copy the page's address instead.";
}

void share_link(Desk& desk) {
  if (!desk.platform.can_share()) return copy_link(desk);
  if (const auto link = link_or_why(desk)) desk.platform.share(desk.app.plan().title, *link);
}

void show_qr(Desk& desk) {
  const auto link = link_or_why(desk);
  if (!link) return;
  if (const auto qr = make_qr(*link)) {
    desk.platform.show_picture(qr_svg(*qr), *link);
  } else {
    desk.state.message = "This plan is too long for a QR code. Copy the link or save the plan.";
  }
}

void print(Desk& desk, bool with_working) {
  SheetOptions options;
  options.link = link_address(desk.app, desk.platform).value_or("");
  options.with_working = with_working;
  desk.platform.print_document(
      sheet_html(desk.app.plan(), desk.app.report(), desk.app.library(), options));
}
void print_sheet(Desk& desk) { print(desk, false); }
void print_workings(Desk& desk) { print(desk, true); }

void save(Desk& desk, std::string_view end, std::string_view mime, std::string_view text) {
  const std::string name = file_name(desk.app.plan(), end);
  desk.platform.save_file(name, mime, text);
  desk.state.message = "Handed to the device as " + name + ".";
}

void save_plan(Desk& desk) {
  save(desk, ".plan.json", "application/json", plan_to_json(desk.app.whole_plan()));
}

void open_plan(Desk& desk) { desk.platform.open_file(kPlanFile, ".json,application/json"); }

void save_ranking(Desk& desk) {
  const Ranking ranking = rank(desk.app.plan(), desk.app.library());
  save(desk, "-formats.csv", kCsvType, ranking_to_csv(ranking.formats));
}

void save_storage(Desk& desk) {
  save(desk, "-storage.csv", kCsvType,
       storage_to_csv(desk.app.plan(), desk.app.report(), desk.app.library()));
}

void save_cover(Desk& desk) {
  save(desk, "-lens-cover.csv", kCsvType, cover_to_csv(desk.app.report()));
}

void save_chart_png(Desk& desk) {
  save(desk, "-chart.png", "image/png", chart_png(frame_chart(desk.app.report(), {})));
}

void save_chart(Desk& desk) {
  save(desk, "-chart.svg", "image/svg+xml", chart_svg(frame_chart(desk.app.report(), {})));
}

void save_framing(Desk& desk) {
  const auto framing = fdl::export_plan(desk.app.plan(), desk.app.library(), desk.app.report());
  if (!framing) {
    desk.state.message = "No framing file: expected " + framing.error().front().accepted + ".";
    return;
  }
  save(desk, ".fdl", "application/json", fdl::write_document(framing->document));
}

void lesson_next(Desk& desk) {
  show_lesson_step(desk.state.lesson_step + 1, desk.state, desk.commands);
}
void lesson_back(Desk& desk) {
  if (desk.state.lesson_step == 0) return;
  show_lesson_step(desk.state.lesson_step - 1, desk.state, desk.commands);
}
void more_formats(Desk& desk) {
  constexpr std::size_t kMore = 40;
  desk.state.formats_shown += kMore;
}

void lesson_leave(Desk& desk) { end_lesson(desk.state, desk.commands); }
void lesson_save(Desk& desk) { save_lesson(desk.state, desk.platform); }
void lesson_link(Desk& desk) { copy_lesson_link(desk.app, desk.state, desk.platform); }
void lesson_qr(Desk& desk) { show_lesson_qr(desk.app, desk.state, desk.platform); }
void lesson_print(Desk& desk) { print_lesson(desk.app, desk.state, desk.platform); }

struct ActionRow {
  std::string_view id;
  void (*run)(Desk&);
  bool needs_report;  ///< Only for a plan that can be worked out.
};
constexpr auto kActions = std::to_array<ActionRow>({
    {kUndo, undo, false},
    {kRedo, redo, false},
    {kStartAfresh, start_afresh, false},
    {kCopyLink, copy_link, false},
    {kShareLink, share_link, false},
    {kShowQr, show_qr, false},
    {kPrintSheet, print_sheet, true},
    {kPrintWorkings, print_workings, true},
    {kSavePlan, save_plan, false},
    {kOpenPlan, open_plan, false},
    {kSaveRanking, save_ranking, true},
    {kSaveStorage, save_storage, true},
    {kSaveCover, save_cover, true},
    {kSaveChart, save_chart, true},
    {kSaveChartPng, save_chart_png, true},
    {kSaveFraming, save_framing, true},
    {kMoreFormats, more_formats, false},
    {kLessonNext, lesson_next, false},
    {kLessonBack, lesson_back, false},
    {kLessonLeave, lesson_leave, false},
    {kLessonOpen, open_plan, false},
    {kLessonSave, lesson_save, false},
    {kLessonLink, lesson_link, false},
    {kLessonQr, lesson_qr, false},
    {kLessonPrint, lesson_print, false},
});

}  // namespace

std::string file_name(const Plan& plan, std::string_view end) {
  std::string name;
  for (const char c : plan.title) {
    const bool letter = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
    if (letter) {
      name += c;
    } else if (!name.empty() && name.back() != '-') {
      name += '-';
    }
  }
  while (!name.empty() && name.back() == '-') name.pop_back();
  if (name.empty()) name = "widegate";
  return name.append(end);
}

void run_action(std::string_view id, const App& app, PanelState& state, Platform& platform,
                Commands& commands) {
  Desk desk{app, state, platform, commands};
  for (const ActionRow& row : kActions) {
    if (row.id != id || (row.needs_report && !app.report().problems.empty())) continue;
    state.message.clear();
    row.run(desk);
  }
  run_frame_line_action(id, app, state, commands);
  run_delivery_action(id, app, state, platform);
  if (run_comparison_action(id, app, state.comparison, commands)) {
    state.picture.shows = PictureKind::comparison;
  }
  run_start_action(id, app, state, commands);
}

bool works_at_first(std::string_view id) {
  constexpr std::array kFirst = {kUndo, kRedo, kStartAfresh, kAddFrameLine, kRemoveFrameLine};
  return std::find(kFirst.begin(), kFirst.end(), id) != kFirst.end() ||
         id.starts_with(kStartExample) || id.starts_with(kStartPlan);
}

Checked<std::string> link_address(const App& app, const Platform& platform) {
  auto link = plan_to_opening_link(app.whole_plan());
  if (!link) return link;
  return platform.page_address() + "#" + *link;
}

}  // namespace widegate
