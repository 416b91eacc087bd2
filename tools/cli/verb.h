// What a verb of the command line is: one row of the table in verbs.cpp, one file verb_NAME.cpp.
#pragma once

#include <functional>
#include <span>

#include "tools/cli/command.h"

namespace widegate::cli {

/// What the program tells the shell.
enum class ExitCode {
  fine = 0,
  requirement_failed = 1,  ///< Only with --strict: the plan fails one of its requirements.
  bad_input = 2,           ///< Something given could not be read or is not accepted.
};

/// The work of a verb, run once its options have been read.
using Action = std::function<ExitCode()>;

struct Verb {
  const char* name;
  const char* summary;
  /// Adds the verb's options to its command and returns its work, which owns their values.
  Action (*set_up)(Command& command);
};

/// Every verb, in the order of the help text.
[[nodiscard]] std::span<const Verb> verbs();

}  // namespace widegate::cli
