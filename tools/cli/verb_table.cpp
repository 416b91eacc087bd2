// widegate table WHAT FILE: the ranking, the storage plan or the lens cover of a plan, or a show,
// as CSV for a spreadsheet.
#include <map>

#include "core/choose/ranking.h"
#include "core/handover/table/ranking_csv.h"
#include "core/handover/table/show_csv.h"
#include "core/handover/table/storage_csv.h"
#include "core/report/evaluate.h"
#include "tools/cli/files.h"
#include "tools/cli/plan_source.h"
#include "tools/cli/verb.h"

namespace widegate::cli {
namespace {

enum class Table { ranking, storage, cover, show, calendar };

std::string show_text(Table table, const LoadedShow& loaded) {
  return table == Table::calendar ? show_days_to_csv(loaded.report)
                                  : show_to_csv(loaded.show, loaded.report);
}

std::string table_text(Table table, const LoadedPlan& loaded, const Report& report) {
  switch (table) {
    case Table::ranking:
      return ranking_to_csv(rank(loaded.plan, loaded.library).formats);
    case Table::storage:
      return storage_to_csv(loaded.plan, report, loaded.library);
    case Table::cover:
      return cover_to_csv(report);
    case Table::show:
    case Table::calendar:
      break;
  }
  return {};
}

}  // namespace

Action set_up_table(Command& command) {
  struct Options {
    std::shared_ptr<PlanSource> source;
    Table table = Table::storage;
    std::string output = "-";
  };
  static const std::map<std::string, Table> kTables = {{"ranking", Table::ranking},
                                                       {"storage", Table::storage},
                                                       {"cover", Table::cover},
                                                       {"show", Table::show},
                                                       {"calendar", Table::calendar}};
  auto options = std::make_shared<Options>();
  command
      .add_choice("TABLE", options->table, kTables,
                  "ranking, storage or cover of a plan; show or calendar of a show")
      .required();
  options->source = PlanSource::add_to(command);
  command.add_option("-o,--output", options->output, "File to write; - for standard output");
  return [options] {
    if (options->table == Table::show || options->table == Table::calendar) {
      const auto show = options->source->load_as_show();
      if (!show) return ExitCode::bad_input;
      const std::string text = show_text(options->table, *show);
      return write_text(options->output, text) ? ExitCode::fine : ExitCode::bad_input;
    }
    const auto loaded = options->source->load();
    if (!loaded) return ExitCode::bad_input;
    const Report report = evaluate(loaded->plan, loaded->library);
    if (!report.problems.empty()) {
      print_problems("plan", report.problems);
      return ExitCode::bad_input;
    }
    const std::string text = table_text(options->table, *loaded, report);
    return write_text(options->output, text) ? ExitCode::fine : ExitCode::bad_input;
  };
}

}  // namespace widegate::cli
