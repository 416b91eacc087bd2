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

int run(int argc, char** argv) {
  Action action;
  const auto ended = read_command_line(
      argc, argv, "Choose a motion-picture recording format, with the working shown.",
      [&action](Command& whole) {
        whole.add_version(version_words(), "Version of the program and of its links");
        for (const Verb& verb : verbs()) {
          Command command = whole.add_subcommand(verb.name, verb.summary);
          command.when_read([&action, work = verb.set_up(command)] { action = work; });
        }
      });
  return ended ? *ended : static_cast<int>(action());
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
