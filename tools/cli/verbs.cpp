// The table of verbs. A new verb is one file and one row.
#include "tools/cli/verb.h"

namespace widegate::cli {

Action set_up_chart(Command& command);
Action set_up_check(Command& command);
Action set_up_evaluate(Command& command);
Action set_up_lesson(Command& command);
Action set_up_link(Command& command);
Action set_up_open(Command& command);
Action set_up_rank(Command& command);
Action set_up_show(Command& command);
Action set_up_sheet(Command& command);
Action set_up_table(Command& command);
Action set_up_why(Command& command);
Action set_up_fdl(Command& command);

std::span<const Verb> verbs() {
  static constexpr Verb kVerbs[] = {
      {"evaluate", "Everything that follows from a plan", set_up_evaluate},
      {"rank", "Every format of the cameras considered, judged and ranked", set_up_rank},
      {"show", "What several plans come to together", set_up_show},
      {"why", "How the numbers of a report came about", set_up_why},
      {"lesson", "A lesson run through: its figures before and after", set_up_lesson},
      {"sheet", "The printed sheet, as HTML", set_up_sheet},
      {"table", "The ranking, the storage plan or the lens cover, as CSV", set_up_table},
      {"chart", "The frame-line chart, as SVG or PNG", set_up_chart},
      {"link", "A plan, a show or a lesson as a link", set_up_link},
      {"open", "What a link holds, as JSON", set_up_open},
      {"check", "Say what is wrong with plans, catalogues, lessons, framing lists", set_up_check},
      {"fdl", "Framing decision lists: from a plan, into a plan, through a template", set_up_fdl},
  };
  return kVerbs;
}

}  // namespace widegate::cli
