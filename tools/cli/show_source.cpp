#include "tools/cli/show_source.h"

#include "core/encode/json_text.h"
#include "core/show/evaluate_show.h"
#include "core/show/show_json.h"
#include "tools/cli/files.h"

namespace widegate::cli {

bool is_show_text(const std::string& text) {
  const Checked<Json> document = parse_json(text);
  return document && document->contains("widegate_show");
}

std::optional<LoadedShow> show_of_text(const std::string& file, const std::string& text,
                                       const std::vector<std::string>& catalogues) {
  auto library = load_library(catalogues);
  if (!library) return std::nullopt;
  Checked<Show> show = show_from_json(text, *library);
  if (!show) {
    print_problems(file, show.error());
    return std::nullopt;
  }
  ShowReport report = evaluate_show(*show, *library);
  if (!report.problems.empty()) {
    print_problems(file, report.problems);
    return std::nullopt;
  }
  return LoadedShow{std::move(*show), std::move(*library), std::move(report)};
}

std::shared_ptr<ShowSource> ShowSource::add_to(Command& command) {
  auto source = std::make_shared<ShowSource>();
  command.add_option("show", source->file_, "Show document, or - for standard input")
      .type_name("SHOW.json")
      .required();
  add_catalogue_option(command, source->catalogue_files_);
  return source;
}

std::optional<LoadedShow> ShowSource::load() const {
  const auto text = read_text(file_);
  return text ? show_of_text(file_, *text, catalogue_files_) : std::nullopt;
}

}  // namespace widegate::cli
