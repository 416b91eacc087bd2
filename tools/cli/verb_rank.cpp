// widegate rank PLAN.json: every format of the cameras considered, as a table, as JSON or as CSV.
#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "core/choose/ranking.h"
#include "core/choose/ranking_words.h"
#include "core/choose/smallest_change.h"
#include "core/handover/json/ranking_json.h"
#include "core/handover/table/ranking_csv.h"
#include "tools/cli/files.h"
#include "tools/cli/plan_source.h"
#include "tools/cli/progress.h"
#include "tools/cli/ranking_table.h"
#include "tools/cli/verb.h"

namespace widegate::cli {
namespace {

constexpr std::int64_t kTableRows = 20;

struct Options {
  std::shared_ptr<PlanSource> source;
  bool json = false;
  bool csv = false;
  bool changes = false;
  bool rejected = false;
  bool strict = false;
  std::optional<std::int64_t> limit;
};

/// The rows asked for; a table that nobody limits stays readable.
std::span<const RankedFormat> shown_rows(const Options& options, const Ranking& ranking) {
  std::span<const RankedFormat> rows = ranking.formats;
  if (options.rejected) rows = rows.subspan(ranking.accepted);
  const bool table = !options.json && !options.csv;
  if (!options.limit && !table) return rows;
  const auto limit = static_cast<std::size_t>(options.limit.value_or(kTableRows));
  return rows.first(std::min(limit, rows.size()));
}

std::vector<std::vector<Change>> changes_of(const LoadedPlan& loaded,
                                            std::span<const RankedFormat> shown) {
  std::vector<std::vector<Change>> changes(shown.size());
  Progress progress("What would have to change", shown.size());
  for (std::size_t i = 0; i < shown.size(); ++i) {
    progress.update(i);
    if (shown[i].accepted) continue;
    changes[i] = smallest_changes(loaded.plan, loaded.library, shown[i].format);
  }
  return changes;
}

std::string text_of(const Options& options, const LoadedPlan& loaded, const Ranking& ranking) {
  const auto shown = shown_rows(options, ranking);
  if (options.csv) return ranking_to_csv(shown);
  std::vector<std::vector<Change>> changes;
  if (!options.json || options.changes) changes = changes_of(loaded, shown);
  const auto ways = ways_out(loaded.plan, loaded.library, ranking);
  const auto above = words_above_ranking(loaded.plan, loaded.library, ranking);
  if (options.json)
    return ranking_to_json(loaded.plan, ranking, above, shown, changes, ways) + "\n";
  return ranking_table(loaded.plan, ranking, above, shown, changes, ways);
}

void add_options(Command& command, Options& options) {
  options.source = PlanSource::add_to(command);
  const Option json = command.add_flag("--json", options.json, "Print the ranking as JSON");
  command.add_flag("--csv", options.csv, "Print the ranking as CSV for a spreadsheet")
      .excludes(json);
  command.add_flag("--changes", options.changes,
                   "With --json: what would let each rejected format pass");
  command.add_flag("--rejected", options.rejected, "List the rejected formats only");
  command.add_count("--limit", options.limit, 1'000'000'000,
                    "List at most so many formats (table: 20)");
  command.add_flag("--strict", options.strict, "Exit with 1 when no format is accepted");
}

}  // namespace

Action set_up_rank(Command& command) {
  auto options = std::make_shared<Options>();
  add_options(command, *options);
  return [options] {
    const auto loaded = options->source->load();
    if (!loaded) return ExitCode::bad_input;
    const Ranking ranking = rank(loaded->plan, loaded->library);
    if (!ranking.problems.empty()) {
      print_problems("plan", ranking.problems);
      return ExitCode::bad_input;
    }
    if (!write_text("-", text_of(*options, *loaded, ranking))) return ExitCode::bad_input;
    return options->strict && ranking.accepted == 0 ? ExitCode::requirement_failed : ExitCode::fine;
  };
}

}  // namespace widegate::cli
