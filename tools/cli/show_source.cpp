#include "tools/cli/show_source.h"

#include "tools/cli/files.h"

namespace widegate::cli {

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
  return text ? load_show(file_, *text, catalogue_files_) : std::nullopt;
}

}  // namespace widegate::cli
