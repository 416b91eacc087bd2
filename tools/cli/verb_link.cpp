// widegate link FILE: a plan or a show as a link, with --qr also as a picture. widegate open LINK:
// the plan or the show of a link.
#include <cstdio>

#include "core/encode/qr_svg.h"
#include "core/handover/link/link.h"
#include "core/handover/link/show_link.h"
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
};

std::optional<std::string> printed_or_link(Checked<std::string> link) {
  if (link) return std::move(*link);
  print_problems("link", link.error());
  return std::nullopt;
}

/// The link of the plan or show that the file holds.
std::optional<std::string> link_of(const PlanSource& source) {
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
  return [options] {
    const auto link = link_of(*options->source);
    if (!link) return ExitCode::bad_input;
    const std::string whole = options->address.empty() ? *link : options->address + "#" + *link;
    if (!options->qr_file.empty()) {
      const auto qr = make_qr(whole);
      if (!qr) {
        std::fputs("widegate: the link is too long for a QR code\n", stderr);
        return ExitCode::bad_input;
      }
      if (!write_text(options->qr_file, qr_svg(*qr))) return ExitCode::bad_input;
    }
    return write_text("-", whole + "\n") ? ExitCode::fine : ExitCode::bad_input;
  };
}

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
    if (!library) return ExitCode::bad_input;
    if (is_show_link(options->link)) {
      const Checked<Show> show = show_from_link(options->link, *library);
      if (show) return write_text("-", show_to_json(*show)) ? ExitCode::fine : ExitCode::bad_input;
      print_problems("link", show.error());
      return ExitCode::bad_input;
    }
    const Checked<Plan> plan = plan_from_link(options->link, *library);
    if (!plan) {
      print_problems("link", plan.error());
      return ExitCode::bad_input;
    }
    return write_text("-", plan_to_json(*plan)) ? ExitCode::fine : ExitCode::bad_input;
  };
}

}  // namespace widegate::cli
