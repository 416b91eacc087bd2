// What every verb that starts from a plan shares: the file, one's own libraries, changed fields.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/catalogue/catalogue.h"
#include "core/plan/plan.h"
#include "tools/cli/command.h"

namespace widegate::cli {

/// The built-in library with other catalogue files merged in, in turn. When one cannot be read,
/// says so on standard error and gives nothing.
[[nodiscard]] std::optional<Catalogue> load_library(const std::vector<std::string>& files);

/// Adds --catalogue FILE to a command.
void add_catalogue_option(Command& command, std::vector<std::string>& files);

/// A plan and the library it was checked against.
struct LoadedPlan {
  Plan plan;
  Catalogue library;
};

/// The values of the options PLAN.json, --catalogue and --set.
class PlanSource {
 public:
  /// Adds the options; the returned values are filled when the command line is parsed.
  [[nodiscard]] static std::shared_ptr<PlanSource> add_to(Command& command);

  /// Reads everything; problems go to standard error, one line each.
  [[nodiscard]] std::optional<LoadedPlan> load() const;

 private:
  std::string file_;
  std::vector<std::string> catalogue_files_;
  std::vector<std::string> settings_;
};

}  // namespace widegate::cli
