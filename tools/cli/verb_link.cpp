// widegate link FILE: a plan, a show, or a lesson at a step as a link, with --qr also as a picture.
// widegate open LINK: the document of a link.
#include <cstdio>

#include "core/encode/qr_svg.h"
#include "core/handover/link/link.h"
#include "core/handover/link/link_kind.h"
#include "core/handover/link/show_link.h"
#include "core/lesson/lesson_json.h"
#include "core/lesson/lesson_link.h"
#include "core/plan/plan_json.h"
#include "core/show/show_json.h"
#include "tools/cli/files.h"
#include "tools/cli/plan_source.h"
#include "tools/cli/verb.h"

namespace widegate::cli {

namespace {

struct LinkOptions {
  std::shared_ptr<PlanSource> source;
  std::string address;
  std::string qr_file;
  std::optional<std::int64_t> step;
};

std::optional<std::string> printed_or_link(Checked<std::string> link) {
  if (link) return std::move(*link);
  print_problems("link", link.error());
  return std::nullopt;
}

/// The lesson as a link; nothing after its problems have been printed.
std::optional<std::string> lesson_link(const LoadedLesson& loaded, std::int64_t step) {
  const auto steps = static_cast<std::int64_t>(loaded.lesson.steps.size());
  if (step < 1 || step > steps) {
    print_problems("--step",
                   {{"", std::to_string(step),
                     "the number of a step of this lesson: 1 to " + std::to_string(steps)}});
    return std::nullopt;
  }
  auto link = lesson_to_link(loaded.lesson, step, loaded.library);
  if (!link)
    std::fputs("widegate: the lesson is too long for a link; hand its file over\n", stderr);
  return link;
}

/// The link of the document that the file holds.
std::optional<std::string> link_of(const LinkOptions& options) {
  const PlanSource& source = *options.source;
  if (source.holds_lesson()) {
    const auto lesson = source.load_as_lesson();
    return lesson ? lesson_link(*lesson, options.step.value_or(1)) : std::nullopt;
  }
  if (source.holds_show()) {
    const auto show = source.load_as_show();
    return show ? printed_or_link(show_to_opening_link(show->show)) : std::nullopt;
  }
  const auto loaded = source.load();
  return loaded ? printed_or_link(plan_to_opening_link(loaded->plan)) : std::nullopt;
}

}  // namespace

Action set_up_link(Command& command) {
  auto options = std::make_shared<LinkOptions>();
  options->source = PlanSource::add_to(command);
  command.add_option("--address", options->address, "Address of the app to put before the link");
  command.add_option("--qr", options->qr_file, "Also write the QR code of it to this SVG file");
  command.add_count("--step", options->step, 99, "The step at which a lesson opens, from 1");
  return [options] {
    const auto link = link_of(*options);
    if (!link) return ExitCode::bad_input;
    const std::string whole = options->address.empty() ? *link : options->address + "#" + *link;
    if (!options->qr_file.empty()) {
      const auto qr = make_qr(whole);
      if (!qr) {
        std::fprintf(stderr, "widegate: a link of %zu characters is too long for a QR code\n",
                     whole.size());
        return ExitCode::bad_input;
      }
      if (!write_text(options->qr_file, qr_svg(*qr))) return ExitCode::bad_input;
    }
    std::fprintf(stderr, "widegate: %zu characters\n", whole.size());
    return write_text("-", whole + "\n") ? ExitCode::fine : ExitCode::bad_input;
  };
}

namespace {

/// The document that a link holds; nothing after its problems have been printed.
std::optional<std::string> document_of(const std::string& link, const Catalogue& library) {
  Problems problems;
  if (is_lesson_link(link)) {
    const Checked<LinkedLesson> linked = lesson_from_link(link, library);
    if (linked) {
      std::fprintf(stderr, "widegate: a lesson, opens at step %lld\n",
                   static_cast<long long>(linked->step));
      return lesson_to_json(linked->lesson);
    }
    problems = linked.error();
  } else if (is_show_link(link)) {
    const Checked<Show> show = show_from_link(link, library);
    if (show) return show_to_json(*show);
    problems = show.error();
  } else {
    const Checked<Plan> plan = plan_from_link(link, library);
    if (plan) return plan_to_json(*plan);
    problems = plan.error();
  }
  print_problems("link", problems);
  return std::nullopt;
}

}  // namespace

Action set_up_open(Command& command) {
  struct Options {
    std::string link;
    std::vector<std::string> catalogue_files;
  };
  auto options = std::make_shared<Options>();
  command.add_option("LINK", options->link, "A link, or an address with one").required();
  add_catalogue_option(command, options->catalogue_files);
  return [options] {
    const auto library = load_library(options->catalogue_files);
    const auto text = library ? document_of(options->link, *library) : std::nullopt;
    return text && write_text("-", *text) ? ExitCode::fine : ExitCode::bad_input;
  };
}

}  // namespace widegate::cli
