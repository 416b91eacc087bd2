// What every verb that starts from a plan shares: the file, one's own libraries, changed fields.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/catalogue/catalogue.h"
#include "core/lesson/lesson.h"
#include "core/plan/plan.h"
#include "core/show/report.h"
#include "core/show/show.h"
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

/// A show, the library it was checked against, and what follows from it.
struct LoadedShow {
  Show show;
  Catalogue library;
  ShowReport report;
};

/// A show's document, evaluated; problems go to standard error, one line each.
[[nodiscard]] std::optional<LoadedShow> load_show(const std::string& file, const std::string& text,
                                                  const std::vector<std::string>& catalogue_files);

/// A lesson and the library it was checked against.
struct LoadedLesson {
  Lesson lesson;
  Catalogue library;
};

/// The values of the options PLAN.json, --catalogue and --set. Verbs that also take a show ask
/// which one the file holds.
class PlanSource {
 public:
  /// Adds the options; the returned values are filled when the command line is parsed.
  [[nodiscard]] static std::shared_ptr<PlanSource> add_to(Command& command);

  /// Reads everything; problems go to standard error, one line each.
  [[nodiscard]] std::optional<LoadedPlan> load() const;

  /// True when the file is a JSON document with the version key of a show.
  [[nodiscard]] bool holds_show() const;
  /// Reads it as a show, which takes no --set.
  [[nodiscard]] std::optional<LoadedShow> load_as_show() const;

  /// True when the file is a JSON document with the version key of a lesson.
  [[nodiscard]] bool holds_lesson() const;
  /// Reads it as a lesson, which takes no --set.
  [[nodiscard]] std::optional<LoadedLesson> load_as_lesson() const;

 private:
  /// True when the file is a JSON object with this key.
  [[nodiscard]] bool has_root_key(const char* key) const;
  /// False after saying that the kind of document takes no --set.
  [[nodiscard]] bool nothing_set(const char* kind) const;
  /// The file's text, read once.
  [[nodiscard]] const std::optional<std::string>& text() const;

  mutable std::optional<std::optional<std::string>> text_;
  std::string file_;
  std::vector<std::string> catalogue_files_;
  std::vector<std::string> settings_;
};

}  // namespace widegate::cli
