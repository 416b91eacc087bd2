// widegate why PLAN.json [KEY...]: how the numbers of a report came about, as text or JSON.
#include <nlohmann/json.hpp>

#include "core/report/evaluate.h"
#include "core/report/working.h"
#include "tools/cli/files.h"
#include "tools/cli/plan_source.h"
#include "tools/cli/verb.h"

namespace widegate::cli {
namespace {

std::string as_text(const std::vector<Working>& workings) {
  std::string text;
  for (const Working& working : workings) {
    text += working.title + "  (" + working.key + ")\n";
    if (!working.formula.empty()) text += "  = " + working.formula + "\n";
    if (!working.symbols.empty()) text += "  = " + working.symbols + "\n";
    for (const std::string& line : working.substituted) text += "  = " + line + "\n";
    for (const std::string& told : working.told) text += "  = " + told + "\n";
    for (const std::string& step : working.because) text += "  because " + step + "\n";
    text += "  " + working.source + "\n\n";
  }
  return text;
}

nlohmann::ordered_json parts_json(const std::vector<WorkingPart>& parts) {
  nlohmann::ordered_json list = nlohmann::ordered_json::array();
  for (const WorkingPart& part : parts) {
    list.push_back(
        {{"key", part.key}, {"name", part.name}, {"symbol", part.symbol}, {"value", part.value}});
  }
  return list;
}

std::string as_json(const std::vector<Working>& workings) {
  nlohmann::ordered_json list = nlohmann::ordered_json::array();
  for (const Working& working : workings) {
    list.push_back({{"key", working.key},
                    {"title", working.title},
                    {"formula", working.formula},
                    {"symbols", working.symbols},
                    {"substituted", working.substituted},
                    {"told", working.told},
                    {"exact", working.exact},
                    {"results", working.results},
                    {"unit", working.unit},
                    {"because", working.because},
                    {"parts", parts_json(working.parts)},
                    {"source", working.source}});
  }
  return list.dump(2) + "\n";
}

/// The workings of the keys, or of everything when there are none. Says which key has none.
std::optional<std::vector<Working>> chosen(const Report& report,
                                           const std::vector<std::string>& keys) {
  if (keys.empty()) return all_workings(report);
  std::vector<Working> workings;
  for (const std::string& key : keys) {
    auto working = working_of(report, key);
    if (!working) {
      print_problems("key", {{.pointer = "",
                              .value = key,
                              .accepted = "a key of a number in the report (evaluate --json)"}});
      return std::nullopt;
    }
    workings.push_back(std::move(*working));
  }
  return workings;
}

}  // namespace

Action set_up_why(Command& command) {
  struct Options {
    std::shared_ptr<PlanSource> source;
    std::vector<std::string> keys;
    bool json = false;
  };
  auto options = std::make_shared<Options>();
  options->source = PlanSource::add_to(command);
  command.add_option("KEY", options->keys, "Figures to explain; all when left out");
  command.add_flag("--json", options->json, "Print JSON");
  return [options] {
    const auto loaded = options->source->load();
    if (!loaded) return ExitCode::bad_input;
    const Report report = evaluate(loaded->plan, loaded->library);
    if (!report.problems.empty()) {
      print_problems("plan", report.problems);
      return ExitCode::bad_input;
    }
    const auto workings = chosen(report, options->keys);
    if (!workings) return ExitCode::bad_input;
    const std::string text = options->json ? as_json(*workings) : as_text(*workings);
    return write_text("-", text) ? ExitCode::fine : ExitCode::bad_input;
  };
}

}  // namespace widegate::cli
