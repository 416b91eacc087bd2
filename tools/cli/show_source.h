// What every verb that starts from a show shares: the file and one's own libraries.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/show/report.h"
#include "core/show/show.h"
#include "tools/cli/plan_source.h"

namespace widegate::cli {

/// A show, the library it was checked against, and what follows from it.
struct LoadedShow {
  Show show;
  Catalogue library;
  ShowReport report;
};

/// True when the text is a JSON document with the version key of a show.
[[nodiscard]] bool is_show_text(const std::string& text);

/// A show of this text, evaluated; problems go to standard error, one line each.
[[nodiscard]] std::optional<LoadedShow> show_of_text(const std::string& file,
                                                     const std::string& text,
                                                     const std::vector<std::string>& catalogues);

/// The values of the options SHOW.json and --catalogue.
class ShowSource {
 public:
  /// Adds the options; the returned values are filled when the command line is parsed.
  [[nodiscard]] static std::shared_ptr<ShowSource> add_to(Command& command);
  [[nodiscard]] std::optional<LoadedShow> load() const;

 private:
  std::string file_;
  std::vector<std::string> catalogue_files_;
};

}  // namespace widegate::cli
