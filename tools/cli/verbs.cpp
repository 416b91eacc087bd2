// The table of verbs. A new verb is one file and one row.
#include "tools/cli/verb.h"

namespace widegate::cli {

Action set_up_chart(CLI::App& command);
Action set_up_check(CLI::App& command);
Action set_up_evaluate(CLI::App& command);
Action set_up_link(CLI::App& command);
Action set_up_open(CLI::App& command);
Action set_up_rank(CLI::App& command);
Action set_up_sheet(CLI::App& command);
Action set_up_table(CLI::App& command);
Action set_up_why(CLI::App& command);
Action set_up_fdl(CLI::App& command);

std::span<const Verb> verbs() {
  static constexpr Verb kVerbs[] = {
      {"evaluate", "Everything that follows from a plan", set_up_evaluate},
      {"rank", "Every format of the cameras considered, judged and ranked", set_up_rank},
      {"why", "How the numbers of a report came about", set_up_why},
      {"sheet", "The printed sheet, as HTML", set_up_sheet},
      {"table", "The ranking, the storage plan or the lens cover, as CSV", set_up_table},
      {"chart", "The frame-line chart, as SVG or PNG", set_up_chart},
      {"link", "The plan as a link", set_up_link},
      {"open", "The plan of a link, as JSON", set_up_open},
      {"check", "Say what is wrong with plans, catalogues and framing lists", set_up_check},
      {"fdl", "Framing decision lists: from a plan, into a plan, through a template", set_up_fdl},
  };
  return kVerbs;
}

}  // namespace widegate::cli
