// The table of verbs. A new verb is one file and one row.
#include "tools/cli/verb.h"

namespace widegate::cli {

Action set_up_check(CLI::App& command);
Action set_up_evaluate(CLI::App& command);

std::span<const Verb> verbs() {
  static constexpr Verb kVerbs[] = {
      {"evaluate", "Everything that follows from a plan", set_up_evaluate},
      {"check", "Say what is wrong with plans, catalogues and framing lists", set_up_check},
  };
  return kVerbs;
}

}  // namespace widegate::cli
