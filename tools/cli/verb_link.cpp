// widegate link PLAN.json: the plan as a link, with --qr also as a picture. widegate open LINK: the
// plan of a link.
#include <cstdio>

#include "core/encode/qr_svg.h"
#include "core/handover/link/link.h"
#include "core/plan/plan_json.h"
#include "tools/cli/files.h"
#include "tools/cli/plan_source.h"
#include "tools/cli/verb.h"

namespace widegate::cli {

Action set_up_link(Command& command) {
  struct Options {
    std::shared_ptr<PlanSource> source;
    std::string address;
    std::string qr_file;
  };
  auto options = std::make_shared<Options>();
  options->source = PlanSource::add_to(command);
  command.add_option("--address", options->address, "Address of the app to put before the link");
  command.add_option("--qr", options->qr_file, "Also write the QR code of it to this SVG file");
  return [options] {
    const auto loaded = options->source->load();
    if (!loaded) return ExitCode::bad_input;
    const auto link = plan_to_opening_link(loaded->plan);
    if (!link) {
      print_problems("link", link.error());
      return ExitCode::bad_input;
    }
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
    const Checked<Plan> plan = plan_from_link(options->link, *library);
    if (!plan) {
      print_problems("link", plan.error());
      return ExitCode::bad_input;
    }
    return write_text("-", plan_to_json(*plan)) ? ExitCode::fine : ExitCode::bad_input;
  };
}

}  // namespace widegate::cli
