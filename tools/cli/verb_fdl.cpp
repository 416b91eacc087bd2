// widegate fdl export|import|apply: ASC framing decision lists from plans, into plans, and through
// canvas templates. What the words mean is in docs/fdl.md.
#include <cstdio>

#include "core/handover/fdl/apply_document.h"
#include "core/handover/fdl/plan_export.h"
#include "core/handover/fdl/plan_import.h"
#include "core/handover/fdl/read.h"
#include "core/handover/fdl/template_library.h"
#include "core/handover/fdl/write.h"
#include "core/plan/plan_json.h"
#include "core/report/evaluate.h"
#include "tools/cli/files.h"
#include "tools/cli/plan_source.h"
#include "tools/cli/verb.h"

namespace widegate::cli {
namespace {

void add_output(Command& command, std::string& file) {
  command.add_option("-o,--output", file, "File to write instead of standard output")
      .type_name("FILE");
}

ExitCode written(const std::string& file, const std::string& text) {
  return write_text(file, text) ? ExitCode::fine : ExitCode::bad_input;
}

/// A framing decision list from a file; problems and cautions go to standard error.
std::optional<fdl::Document> load_document(const std::string& file) {
  const auto text = read_text(file);
  if (!text) return std::nullopt;
  auto reading = fdl::read_document(*text);
  if (!reading) {
    print_problems(file, reading.error());
    return std::nullopt;
  }
  print_cautions(file, reading->warnings);
  return std::move(reading->document);
}

// ---- export

struct ExportOptions {
  std::shared_ptr<PlanSource> source;
  std::string output = "-";
};

ExitCode run_export(const ExportOptions& options) {
  const auto loaded = options.source->load();
  if (!loaded) return ExitCode::bad_input;
  const Report report = evaluate(loaded->plan, loaded->library);
  const auto result = fdl::export_plan(loaded->plan, loaded->library, report);
  if (!result) {
    print_problems("plan", result.error());
    return ExitCode::bad_input;
  }
  for (const std::string& remark : result->remarks) {
    std::fprintf(stderr, "caution: %s\n", remark.c_str());
  }
  return written(options.output, fdl::write_document(result->document));
}

Action set_up_export(Command& command) {
  auto options = std::make_shared<ExportOptions>();
  options->source = PlanSource::add_to(command);
  add_output(command, options->output);
  return [options] { return run_export(*options); };
}

// ---- import

struct ImportOptions {
  std::string document;
  std::string into;
  std::string output = "-";
  std::vector<std::string> catalogue_files;
};

/// The plan to change: the one named, or a new one.
std::optional<Plan> plan_to_change(const std::string& file, const Catalogue& library) {
  if (file.empty()) return Plan{};
  const auto text = read_text(file);
  if (!text) return std::nullopt;
  auto plan = plan_from_json(*text, library);
  if (plan) return std::move(*plan);
  print_problems(file, plan.error());
  return std::nullopt;
}

void print_notes(const std::string& file, const char* kind,
                 const std::vector<fdl::ImportNote>& notes) {
  for (const fdl::ImportNote& note : notes) {
    std::fprintf(stderr, "%s: %s: %s: %s\n", file.c_str(), kind, note.pointer.c_str(),
                 note.text.c_str());
  }
}

ExitCode run_import(const ImportOptions& options) {
  const auto library = load_library(options.catalogue_files);
  if (!library) return ExitCode::bad_input;
  const auto document = load_document(options.document);
  const auto plan = document ? plan_to_change(options.into, *library) : std::nullopt;
  if (!plan) return ExitCode::bad_input;
  const auto result = fdl::import_plan(*document, *plan, *library);
  if (!result) {
    print_problems(options.document, result.error());
    return ExitCode::bad_input;
  }
  print_notes(options.document, "taken", result->taken);
  print_notes(options.document, "left", result->left);
  return written(options.output, plan_to_json(result->plan));
}

Action set_up_import(Command& command) {
  auto options = std::make_shared<ImportOptions>();
  command.add_option("document", options->document, "Framing decision list, or -")
      .type_name("DOCUMENT.fdl")
      .required();
  command.add_option("--into", options->into, "Plan to change; a new one when left out")
      .type_name("PLAN.json");
  add_catalogue_option(command, options->catalogue_files);
  add_output(command, options->output);
  return [options] { return run_import(*options); };
}

// ---- apply

struct ApplyOptions {
  std::string source;
  std::string templates;
  std::string delivery;
  std::string output = "-";
  fdl::ApplyChoice choice;
};

/// The canvas a delivery is made for: the one chosen, else the first with a decision.
const fdl::Canvas* canvas_for_delivery(const fdl::Document& source, const std::string& wanted) {
  for (const fdl::Context& context : fdl::rows(source.contexts)) {
    for (const fdl::Canvas& canvas : fdl::rows(context.canvases)) {
      const bool named = wanted.empty() || canvas.id == wanted;
      if (named && !fdl::rows(canvas.framing_decisions).empty()) return &canvas;
    }
  }
  return nullptr;
}

/// The templates to choose from: a file's, or the built-in deliveries.
std::optional<fdl::Document> load_templates(const ApplyOptions& options,
                                            const fdl::Document& source) {
  if (!options.templates.empty()) return load_document(options.templates);
  const fdl::Canvas* canvas = canvas_for_delivery(source, options.choice.canvas);
  if (canvas != nullptr) return fdl::template_document(fdl::delivery_templates(*canvas));
  print_problems(options.source,
                 {{"/contexts", "no framing decision", "a canvas with a framing decision"}});
  return std::nullopt;
}

ExitCode run_apply(const ApplyOptions& options) {
  if (options.templates.empty() == options.delivery.empty()) {
    std::fputs("fdl apply: give a template document or --delivery, one of the two\n", stderr);
    return ExitCode::bad_input;
  }
  const auto source = load_document(options.source);
  const auto templates = source ? load_templates(options, *source) : std::nullopt;
  if (!templates) return ExitCode::bad_input;
  fdl::ApplyChoice choice = options.choice;
  if (!options.delivery.empty()) choice.canvas_template = options.delivery;
  const auto result = fdl::apply_to_document(*source, *templates, choice);
  if (!result) {
    print_problems(options.source, result.error().source);
    print_problems(options.templates.empty() ? "--delivery" : options.templates,
                   result.error().templates);
    return ExitCode::bad_input;
  }
  return written(options.output, fdl::write_document(result->document));
}

Action set_up_apply(Command& command) {
  auto options = std::make_shared<ApplyOptions>();
  fdl::ApplyChoice& choice = options->choice;
  command.add_option("source", options->source, "Framing decision list, or -")
      .type_name("SOURCE.fdl")
      .required();
  command.add_option("template", options->templates, "List with the canvas template")
      .type_name("TEMPLATE.fdl");
  command.add_option("--delivery", options->delivery,
                     "A built-in template: UHD, SCOPE_4K, FLAT_4K, HD_PROXY or VFX_PULL");
  command.add_option("--context", choice.context, "Label of the source's context");
  command.add_option("--canvas", choice.canvas, "Id of the source's canvas");
  command.add_option("--decision", choice.decision, "Id of the decision, or of its intent");
  command.add_option("--template-id", choice.canvas_template, "Id of the template in its list");
  command.add_option("--new-id", choice.new_canvas_id, "Id for the new canvas");
  add_output(command, options->output);
  return [options] { return run_apply(*options); };
}

}  // namespace

Action set_up_fdl(Command& command) {
  constexpr Verb kVerbs[] = {
      {"export", "A plan as a framing decision list", set_up_export},
      {"import", "A framing decision list into a plan", set_up_import},
      {"apply", "A canvas template applied to a framing decision list", set_up_apply},
  };
  command.require_subcommand();
  auto chosen = std::make_shared<Action>();
  for (const Verb& verb : kVerbs) {
    Command sub = command.add_subcommand(verb.name, verb.summary);
    sub.when_read([chosen, work = verb.set_up(sub)] { *chosen = work; });
  }
  return [chosen] { return (*chosen)(); };
}

}  // namespace widegate::cli
