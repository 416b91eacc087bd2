#include "core/plan/plan_changes.h"

#include <algorithm>
#include <cmath>
#include <string_view>
#include <vector>

#include "core/base/number_text.h"
#include "core/plan/plan_fields.h"

namespace widegate {
namespace {

constexpr std::size_t kMostNamed = 3;

/// One value that is another one now.
struct ChangedField {
  const FieldInfo* info;
  std::size_t line;
};

std::vector<ChangedField> changed_fields(const Plan& before, const Plan& after) {
  const std::size_t lines =
      std::min(before.deliverable.frame_lines.size(), after.deliverable.frame_lines.size());
  std::vector<ChangedField> changed;
  for (const FieldInfo& info : plan_fields()) {
    for (std::size_t line = 0; line < (per_frame_line(info) ? lines : 1); ++line) {
      if (info.read(before, line) != info.read(after, line)) changed.push_back({&info, line});
    }
  }
  return changed;
}

/// The value as it is chosen from a list or typed, with its unit.
std::string value_words(const Plan& plan, const ChangedField& field, const Catalogue& catalogue) {
  const FieldInfo& info = *field.info;
  std::string text = value_text(info, info.read(plan, field.line));
  for (const FieldOption& option : field_options(plan, catalogue, info)) {
    if (option.value == text) return option.label;
  }
  if (text.empty()) return "not set";
  const auto fraction = parse_rational(text);
  if (fraction && info.unit != "s")
    text = print_number(std::round(fraction->to_double() * 1e3) / 1e3);
  if (info.unit.empty()) return text;
  return text + (info.unit == "deg" ? "°" : " " + std::string(info.unit));
}

/// What stands beside the table of fields.
std::vector<std::string> changed_lists(const Plan& before, const Plan& after) {
  std::vector<std::string> names;
  if (before.deliverable.frame_lines.size() != after.deliverable.frame_lines.size()) {
    names.emplace_back("Frame lines");
  }
  if (before.choose.cameras != after.choose.cameras) names.emplace_back("Cameras considered");
  if (before.own != after.own) names.emplace_back("Equipment of the plan");
  return names;
}

}  // namespace

std::string change_words(const Plan& before, const Plan& after, const Catalogue& catalogue) {
  const std::vector<ChangedField> fields = changed_fields(before, after);
  std::vector<std::string> names;
  for (const ChangedField& field : fields) names.emplace_back(field.info->label);
  for (std::string& name : changed_lists(before, after)) names.push_back(std::move(name));
  if (names.empty()) return "Nothing";
  if (fields.size() == 1 && names.size() == 1) {
    return names.front() + ": " + value_words(after, fields.front(), catalogue) + ", was " +
           value_words(before, fields.front(), catalogue);
  }
  std::string text;
  const std::size_t named = std::min(names.size(), kMostNamed);
  for (std::size_t i = 0; i < named; ++i) text += (i == 0 ? "" : ", ") + names[i];
  if (names.size() > named) text += " and " + std::to_string(names.size() - named) + " more";
  return text;
}

}  // namespace widegate
