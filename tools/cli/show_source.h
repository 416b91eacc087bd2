// What a verb that takes only a show reads: the file and one's own libraries.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "tools/cli/plan_source.h"

namespace widegate::cli {

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
