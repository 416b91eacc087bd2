// widegate: the core on the command line. Finds the verb, lets it read its options, runs it.
#include <cstdio>
#include <exception>
#include <string>

#include "core/base/version.h"
#include "tools/cli/verb.h"

namespace widegate::cli {
namespace {

std::string version_words() {
  return "widegate " + std::string(kProgramVersion) + ", links of version " +
         std::string(kLinkVersion);
}

/// Help ends well, anything not understood is bad input; CLI11 prints both.
int explain(const CLI::App& app, const CLI::ParseError& error) {
  const bool asked_for = app.exit(error) == static_cast<int>(CLI::ExitCodes::Success);
  return static_cast<int>(asked_for ? ExitCode::fine : ExitCode::bad_input);
}

int run(int argc, char** argv) {
  CLI::App app("Choose a motion-picture recording format, with the working shown.", "widegate");
  app.require_subcommand(1);
  app.set_version_flag("--version", version_words(), "Version of the program and of its links");
  Action action;
  for (const Verb& verb : verbs()) {
    CLI::App* command = app.add_subcommand(verb.name, verb.summary);
    command->callback([&action, work = verb.set_up(*command)] { action = work; });
  }
  try {
    app.parse(argc, argv);
  } catch (const CLI::ParseError& error) {
    return explain(app, error);
  }
  return static_cast<int>(action());
}

}  // namespace
}  // namespace widegate::cli

int main(int argc, char** argv) {
  try {
    return widegate::cli::run(argc, argv);
  } catch (const std::exception& error) {
    std::fprintf(stderr, "widegate: %s\n", error.what());
    return static_cast<int>(widegate::cli::ExitCode::bad_input);
  }
}
