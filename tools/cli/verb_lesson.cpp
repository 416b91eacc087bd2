// widegate lesson LESSON.json: runs the steps and prints the watched figures, before and after.
#include "core/lesson/lesson_json.h"
#include "core/lesson/lesson_run.h"
#include "tools/cli/files.h"
#include "tools/cli/lesson_table.h"
#include "tools/cli/plan_source.h"
#include "tools/cli/verb.h"

namespace widegate::cli {
namespace {

struct Options {
  std::string file;
  std::vector<std::string> catalogue_files;
  bool json = false;
  bool strict = false;
};

ExitCode run_file(const Options& options) {
  const auto library = load_library(options.catalogue_files);
  const auto text = library ? read_text(options.file) : std::nullopt;
  if (!text) return ExitCode::bad_input;
  const Checked<Lesson> lesson = lesson_from_json(*text, *library);
  if (!lesson) {
    print_problems(options.file, lesson.error());
    return ExitCode::bad_input;
  }
  const LessonRun run = run_lesson(*lesson, *library);
  if (!write_text("-", options.json ? lesson_json(*lesson, run) : lesson_table(*lesson, run))) {
    return ExitCode::bad_input;
  }
  return options.strict && !run.holds() ? ExitCode::requirement_failed : ExitCode::fine;
}

}  // namespace

Action set_up_lesson(Command& command) {
  auto options = std::make_shared<Options>();
  command.add_option("lesson", options->file, "Lesson document, or - for standard input")
      .type_name("LESSON.json")
      .required();
  add_catalogue_option(command, options->catalogue_files);
  command.add_flag("--json", options->json, "Print JSON");
  command.add_flag("--strict", options->strict, "Exit with 1 when a claim does not hold");
  return [options] { return run_file(*options); };
}

}  // namespace widegate::cli
