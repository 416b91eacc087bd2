#include "tools/cli/plan_source.h"

#include "core/catalogue/catalogue_json.h"
#include "core/encode/json_text.h"
#include "core/lesson/lesson_json.h"
#include "core/plan/plan_fields.h"
#include "core/plan/plan_json.h"
#include "core/show/evaluate_show.h"
#include "core/show/show_json.h"
#include "tools/cli/files.h"

namespace widegate::cli {
namespace {

/// "/lens/focal_mm=50" in two; a text without "=" has an empty value, which its field may refuse.
TypedField split_setting(const std::string& setting) {
  const auto equals = setting.find('=');
  if (equals == std::string::npos) return {setting, ""};
  return {setting.substr(0, equals), setting.substr(equals + 1)};
}

/// The value, or nothing after its problems have been printed.
template <class T>
std::optional<T> value_or_print(const std::string& file, Checked<T> checked) {
  if (checked) return std::move(*checked);
  print_problems(file, checked.error());
  return std::nullopt;
}

}  // namespace

std::optional<Catalogue> load_library(const std::vector<std::string>& files) {
  std::optional<Catalogue> library = value_or_print("built-in library", built_in_catalogue());
  for (const std::string& file : files) {
    const auto text = library ? read_text(file) : std::nullopt;
    if (!text) return std::nullopt;
    auto added = value_or_print(file, catalogue_from_json(*text, *library));
    if (!added) return std::nullopt;
    library = merged_catalogue(std::move(*library), std::move(*added));
  }
  return library;
}

void add_catalogue_option(Command& command, std::vector<std::string>& files) {
  command.add_option("--catalogue", files, "Own cameras, lenses, cards and codecs (repeatable)")
      .type_name("FILE")
      .one_value_each();
}

std::optional<LoadedShow> load_show(const std::string& file, const std::string& text,
                                    const std::vector<std::string>& catalogue_files) {
  auto library = load_library(catalogue_files);
  if (!library) return std::nullopt;
  auto show = value_or_print(file, show_from_json(text, *library));
  if (!show) return std::nullopt;
  ShowReport report = evaluate_show(*show, *library);
  if (!report.problems.empty()) {
    print_problems(file, report.problems);
    return std::nullopt;
  }
  return LoadedShow{std::move(*show), std::move(*library), std::move(report)};
}

std::shared_ptr<PlanSource> PlanSource::add_to(Command& command) {
  auto source = std::make_shared<PlanSource>();
  command.add_option("plan", source->file_, "Plan document, or - for standard input")
      .type_name("PLAN.json")
      .required();
  add_catalogue_option(command, source->catalogue_files_);
  command.add_option("--set", source->settings_, "Change a field: /lens/focal_mm=50 (repeatable)")
      .type_name("POINTER=VALUE")
      .one_value_each();
  return source;
}

const std::optional<std::string>& PlanSource::text() const {
  if (!text_) text_ = read_text(file_);
  return *text_;
}

bool PlanSource::has_root_key(const char* key) const {
  if (!text()) return false;
  const Checked<Json> document = parse_json(*text());
  return document && document->contains(key);
}

bool PlanSource::nothing_set(const char* kind) const {
  if (settings_.empty()) return true;
  print_problems("--set", {{.pointer = "",
                            .value = settings_.front(),
                            .accepted = std::string("nothing to set: the file is a ") + kind}});
  return false;
}

bool PlanSource::holds_show() const { return has_root_key("widegate_show"); }
bool PlanSource::holds_lesson() const { return has_root_key("widegate_lesson"); }

std::optional<LoadedShow> PlanSource::load_as_show() const {
  if (!nothing_set("show") || !text()) return std::nullopt;
  return load_show(file_, *text(), catalogue_files_);
}

std::optional<LoadedLesson> PlanSource::load_as_lesson() const {
  if (!nothing_set("lesson") || !text()) return std::nullopt;
  auto library = load_library(catalogue_files_);
  if (!library) return std::nullopt;
  auto lesson = value_or_print(file_, lesson_from_json(*text(), *library));
  if (!lesson) return std::nullopt;
  return LoadedLesson{std::move(*lesson), std::move(*library)};
}

std::optional<LoadedPlan> PlanSource::load() const {
  auto library = load_library(catalogue_files_);
  if (!library) return std::nullopt;
  if (!text()) return std::nullopt;
  auto plan = value_or_print(file_, plan_from_json(*text(), *library));
  if (!plan) return std::nullopt;
  std::vector<TypedField> fields;
  for (const std::string& setting : settings_) fields.push_back(split_setting(setting));
  plan = value_or_print("--set", with_fields(*plan, fields, *library));
  if (!plan) return std::nullopt;
  return LoadedPlan{std::move(*plan), std::move(*library)};
}

}  // namespace widegate::cli
