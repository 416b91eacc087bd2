// widegate evaluate PLAN.json: everything that follows from a plan, as a table or as JSON.
#include <algorithm>

#include "core/handover/json/report_json.h"
#include "core/report/evaluate.h"
#include "tools/cli/files.h"
#include "tools/cli/plan_source.h"
#include "tools/cli/report_table.h"
#include "tools/cli/verb.h"

namespace widegate::cli {

Action set_up_evaluate(Command& command) {
  struct Options {
    std::shared_ptr<PlanSource> source;
    bool json = false;
    bool strict = false;
  };
  auto options = std::make_shared<Options>();
  options->source = PlanSource::add_to(command);
  command.add_flag("--json", options->json, "Print the report as JSON");
  command.add_flag("--strict", options->strict, "Exit with 1 when the plan fails a requirement");
  return [options] {
    const auto loaded = options->source->load();
    if (!loaded) return ExitCode::bad_input;
    const Report report = evaluate(loaded->plan, loaded->library);
    if (!report.problems.empty()) {
      print_problems("plan", report.problems);
      return ExitCode::bad_input;
    }
    const std::string text = options->json ? report_to_json(report) + "\n"
                                           : report_table(loaded->plan, report, loaded->library);
    if (!write_text("-", text)) return ExitCode::bad_input;
    const bool fails = std::any_of(report.notes.begin(), report.notes.end(), [](const Note& note) {
      return note.severity == Severity::fail;
    });
    return options->strict && fails ? ExitCode::requirement_failed : ExitCode::fine;
  };
}

}  // namespace widegate::cli
