// widegate sheet FILE: the printed sheet of a plan or a show. widegate chart PLAN.json: the
// frame-line chart.
#include <map>

#include "core/handover/chart/chart.h"
#include "core/handover/chart/chart_png.h"
#include "core/handover/link/link.h"
#include "core/handover/link/show_link.h"
#include "core/handover/sheet/sheet.h"
#include "core/handover/sheet/show_sheet.h"
#include "core/lesson/handout.h"
#include "core/lesson/lesson_link.h"
#include "core/report/evaluate.h"
#include "tools/cli/files.h"
#include "tools/cli/plan_source.h"
#include "tools/cli/verb.h"

namespace widegate::cli {
namespace {

/// The plan's report; nothing when the plan has problems, which are then printed.
std::optional<Report> report_of(const LoadedPlan& loaded) {
  Report report = evaluate(loaded.plan, loaded.library);
  if (report.problems.empty()) return report;
  print_problems("plan", report.problems);
  return std::nullopt;
}

ExitCode written(const std::string& file, const std::string& text) {
  return write_text(file, text) ? ExitCode::fine : ExitCode::bad_input;
}

}  // namespace

namespace {

/// The sheet of a show; one whose link no device would open has none on it.
ExitCode show_sheet(const PlanSource& source, const std::string& address, const std::string& date,
                    const std::string& output) {
  const auto loaded = source.load_as_show();
  if (!loaded) return ExitCode::bad_input;
  const auto link = show_to_opening_link(loaded->show);
  const std::string whole = !link ? std::string() : address.empty() ? *link : address + "#" + *link;
  return written(output,
                 show_sheet_html(loaded->show, loaded->report, {.link = whole, .date = date}));
}

}  // namespace

namespace {

/// The handout of a lesson; one whose link no device would open has none on it.
ExitCode handout(const PlanSource& source, const std::string& address, const std::string& date,
                 const std::string& output) {
  const auto loaded = source.load_as_lesson();
  if (!loaded) return ExitCode::bad_input;
  const std::string link = lesson_to_link(loaded->lesson, 1, loaded->library).value_or("");
  const std::string whole = address.empty() || link.empty() ? link : address + "#" + link;
  const LessonRun run = run_lesson(loaded->lesson, loaded->library);
  return written(output,
                 handout_html(loaded->lesson, run, loaded->library, {.link = whole, .date = date}));
}

}  // namespace

Action set_up_sheet(Command& command) {
  struct Options {
    std::shared_ptr<PlanSource> source;
    std::string output = "-";
    std::string address;
    std::string date;
    bool working = false;
  };
  auto options = std::make_shared<Options>();
  options->source = PlanSource::add_to(command);
  command.add_option("-o,--output", options->output, "File to write; - for standard output");
  command.add_option("--address", options->address,
                     "Address of the app, for the link and its QR code");
  command.add_option("--date", options->date,
                     "Day it is made, to print on the sheet of a show or a lesson");
  command.add_flag("--working", options->working, "Add the workings on further pages");
  return [options] {
    if (options->source->holds_show()) {
      return show_sheet(*options->source, options->address, options->date, options->output);
    }
    if (options->source->holds_lesson()) {
      return handout(*options->source, options->address, options->date, options->output);
    }
    const auto loaded = options->source->load();
    if (!loaded) return ExitCode::bad_input;
    const auto report = report_of(*loaded);
    if (!report) return ExitCode::bad_input;
    // A sheet of a plan that is too long for a link has none; it is handed over as a file.
    const std::string plan = plan_to_opening_link(loaded->plan).value_or("");
    const std::string link =
        options->address.empty() || plan.empty() ? plan : options->address + "#" + plan;
    return written(options->output, sheet_html(loaded->plan, *report, loaded->library,
                                               {.link = link, .with_working = options->working}));
  };
}

Action set_up_chart(Command& command) {
  struct Options {
    std::shared_ptr<PlanSource> source;
    std::string output = "-";
    ChartOptions chart;
  };
  static const std::map<std::string, ChartGround> kGrounds = {
      {"black", ChartGround::black},
      {"white", ChartGround::white},
      {"transparent", ChartGround::transparent}};
  auto options = std::make_shared<Options>();
  options->source = PlanSource::add_to(command);
  command.add_option("-o,--output", options->output,
                     "File to write; - for standard output. A name that ends in .png gets a PNG");
  command.add_choice("--ground", options->chart.ground, kGrounds, "black, white or transparent");
  command.add_flag("--desqueezed", options->chart.desqueezed,
                   "Draw as seen after de-squeeze instead of as recorded");
  return [options] {
    const auto loaded = options->source->load();
    if (!loaded) return ExitCode::bad_input;
    const auto report = report_of(*loaded);
    if (!report) return ExitCode::bad_input;
    const Chart chart = frame_chart(*report, options->chart);
    const bool png = options->output.ends_with(".png");
    return written(options->output, png ? chart_png(chart) : chart_svg(chart));
  };
}

}  // namespace widegate::cli
