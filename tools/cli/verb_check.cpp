// widegate check FILE...: what is wrong with plans, catalogues, lessons and framing decision lists.
#include <algorithm>

#include "core/catalogue/catalogue_json.h"
#include "core/encode/json_text.h"
#include "core/handover/fdl/read.h"
#include "core/lesson/lesson_json.h"
#include "core/lesson/lesson_run.h"
#include "core/plan/plan_json.h"
#include "core/report/evaluate.h"
#include "core/report/notes.h"
#include "core/show/evaluate_show.h"
#include "core/show/show_json.h"
#include "tools/cli/files.h"
#include "tools/cli/plan_source.h"
#include "tools/cli/verb.h"

namespace widegate::cli {
namespace {

struct Options {
  std::vector<std::string> files;
  std::vector<std::string> catalogue_files;
  bool strict = false;
};

/// One file's outcome, already told.
ExitCode tell(const std::string& file, const char* kind, const Problems& problems) {
  print_problems(file, problems);
  if (!problems.empty()) return ExitCode::bad_input;
  return write_text("-", file + ": " + kind + ", fine\n") ? ExitCode::fine : ExitCode::bad_input;
}

/// The requirements that a plan fails, on standard error.
ExitCode check_requirements(const std::string& file, const Plan& plan, const Catalogue& library) {
  ExitCode code = ExitCode::fine;
  for (const Note& note : evaluate(plan, library).notes) {
    if (note.severity != Severity::fail) continue;
    std::fprintf(stderr, "%s: %s\n", file.c_str(), note_text(note).c_str());
    code = ExitCode::requirement_failed;
  }
  return code;
}

ExitCode check_plan_text(const std::string& file, const std::string& text, const Catalogue& library,
                         bool strict) {
  const auto plan = plan_from_json(text, library);
  if (!plan) return tell(file, "plan", plan.error());
  const ExitCode code = tell(file, "plan", {});
  return strict && code == ExitCode::fine ? check_requirements(file, *plan, library) : code;
}

ExitCode check_catalogue_text(const std::string& file, const std::string& text,
                              const Catalogue& library) {
  const auto catalogue = catalogue_from_json(text, library);
  return tell(file, "catalogue", catalogue ? Problems{} : catalogue.error());
}

ExitCode check_show_text(const std::string& file, const std::string& text, const Catalogue& library,
                         bool strict) {
  const auto show = show_from_json(text, library);
  const ShowReport report = show ? evaluate_show(*show, library) : ShowReport{};
  const ExitCode code = tell(file, "show", show ? report.problems : show.error());
  if (!strict || code != ExitCode::fine) return code;
  ExitCode worst = code;
  for (const ShowNote& note : report.notes) {
    if (note.severity != Severity::fail) continue;
    std::fprintf(stderr, "%s: %s\n", file.c_str(), note.text.c_str());
    worst = ExitCode::requirement_failed;
  }
  return worst;
}

/// Claims that the library does not keep, on standard error.
ExitCode check_claims(const std::string& file, const LessonRun& run) {
  ExitCode code = ExitCode::fine;
  for (std::size_t i = 0; i < run.steps.size(); ++i) {
    for (const WatchedFigure& figure : run.steps[i].figures) {
      if (figure.holds) continue;
      std::fprintf(stderr, "%s: step %zu: %s is %s, and the lesson says that it %s\n", file.c_str(),
                   i + 1, figure.label.c_str(), figure.after.c_str(), figure.claim.c_str());
      code = ExitCode::requirement_failed;
    }
  }
  return code;
}

ExitCode check_lesson_text(const std::string& file, const std::string& text,
                           const Catalogue& library, bool strict) {
  const auto lesson = lesson_from_json(text, library);
  if (!lesson) return tell(file, "lesson", lesson.error());
  const ExitCode claims = check_claims(file, run_lesson(*lesson, library));
  const ExitCode code = tell(file, "lesson", {});
  return strict && code == ExitCode::fine ? claims : code;
}

ExitCode check_framing_text(const std::string& file, const std::string& text) {
  const auto reading = fdl::read_document(text);
  if (!reading) return tell(file, "framing decision list", reading.error());
  print_cautions(file, reading->warnings);
  return tell(file, "framing decision list", {});
}

/// A framing decision list has a uuid and a version; one that only carries templates has no
/// contexts.
bool looks_like_framing(const std::string& text) {
  const auto has = [&](const char* key) { return text.find(key) != std::string::npos; };
  return has("\"contexts\"") || has("\"canvas_templates\"") || has("\"framing_intents\"") ||
         (has("\"uuid\"") && has("\"version\""));
}

/// The kind of a document shows in the keys of its root.
ExitCode check_text(const std::string& file, const std::string& text, const Catalogue& library,
                    bool strict) {
  const Checked<Json> document = parse_json(text);
  const auto has = [&](const char* key) { return document && document->contains(key); };
  if (has("widegate_plan")) return check_plan_text(file, text, library, strict);
  if (has("widegate_show")) return check_show_text(file, text, library, strict);
  if (has("widegate_catalogue")) return check_catalogue_text(file, text, library);
  if (has("widegate_lesson")) return check_lesson_text(file, text, library, strict);
  // The text itself is looked at: a framing list has its own reader, with its own limits.
  if (looks_like_framing(text)) return check_framing_text(file, text);
  if (!document) return tell(file, "", document.error());
  return tell(file, "",
              {{"", shown_json(*document),
                "a key at the root that tells the kind of document: widegate_plan, "
                "widegate_show, widegate_catalogue, widegate_lesson, or contexts of a framing "
                "decision list"}});
}

ExitCode check_all(const Options& options) {
  const auto library = load_library(options.catalogue_files);
  if (!library) return ExitCode::bad_input;
  ExitCode worst = ExitCode::fine;
  for (const std::string& file : options.files) {
    const auto text = read_text(file);
    const ExitCode code =
        text ? check_text(file, *text, *library, options.strict) : ExitCode::bad_input;
    worst = std::max(worst, code);
  }
  return worst;
}

}  // namespace

Action set_up_check(Command& command) {
  auto options = std::make_shared<Options>();
  command.add_option("files", options->files, "Documents, or - for standard input")
      .type_name("FILE...")
      .required();
  add_catalogue_option(command, options->catalogue_files);
  command.add_flag(
      "--strict", options->strict,
      "Exit with 1 when a plan fails a requirement, or a lesson's claim does not hold");
  return [options] { return check_all(*options); };
}

}  // namespace widegate::cli
