#include "core/plan/plan_json.h"

#include "core/base/number_text.h"
#include "core/catalogue/catalogue_object.h"
#include "core/field/field_json.h"
#include "core/plan/carried_rows.h"
#include "core/plan/carry_over.h"
#include "core/plan/plan_check.h"
#include "core/plan/plan_document.h"
#include "core/plan/plan_fields.h"

namespace widegate {
namespace {

constexpr std::string_view kVersionKey = "widegate_plan";
constexpr std::int64_t kVersion = 1;
constexpr std::string_view kOwnPointer = "/own";
constexpr std::string_view kWeightsPointer = "/choose/weights";
constexpr std::string_view kMandatePointer = "/mandate";  // An object of retired fields only.

/// The row with exactly this pattern ("#" and all), or nullptr.
const FieldInfo* row_of(std::string_view pattern) {
  for (const FieldInfo& info : plan_fields()) {
    if (info.pointer == pattern) return &info;
  }
  return nullptr;
}

/// The keys that may stand in the object at `pattern`.
std::string known_keys(std::string_view pattern) {
  std::string keys;
  std::string_view last;
  const auto add = [&](std::string_view pointer) {
    if (!pointer.starts_with(pattern) || pointer.size() <= pattern.size()) return;
    std::string_view key = pointer.substr(pattern.size() + 1);
    key = key.substr(0, key.find('/'));
    if (pointer[pattern.size()] != '/' || key == last || key == "#") return;
    keys += (keys.empty() ? "" : ", ") + std::string(key);
    last = key;
  };
  if (pattern.empty()) keys = kVersionKey;
  for (const FieldInfo& info : plan_fields()) add(info.pointer);
  for (const std::string_view pointer : {kCamerasPointer, kOwnPointer}) add(pointer);
  return keys;
}

/// Walks a document and writes what it finds into a plan.
class PlanReader {
 public:
  /// A whole plan: begins with a new one.
  [[nodiscard]] Plan read(const Json& document, const JsonPath& at) {
    const bool readable = is_object(document, at, problems_) &&
                          version_readable(document, kVersionKey, kVersion, problems_, at);
    if (readable) read_object(document, "", at);
    carry_over(plan_, retired_, retired_seen_);
    carry_over_weights(plan_, weights_said_);
    use_current_ids(plan_);
    return std::move(plan_);
  }
  /// A difference to `before`.
  [[nodiscard]] Plan read_onto(Plan before, const Json& difference, const JsonPath& at) {
    plan_ = std::move(before);
    whole_ = false;
    if (is_object(difference, at, problems_)) read_object(difference, "", at);
    use_current_ids(plan_);
    return std::move(plan_);
  }
  [[nodiscard]] Problems take_problems() { return std::move(problems_); }

 private:
  /// `pattern` is the object's place in terms of the table's pointers.
  void read_object(const Json& object, const std::string& pattern, const JsonPath& path) {
    for (const auto& member : object.items()) {
      const JsonPath at = path.member(member.key());
      const bool plain = member.key().find_first_of("/~#") == std::string::npos;
      if (plain && read_member(member.value(), pattern + "/" + member.key(), at)) continue;
      add_unknown_key(problems_, at, member.value(), known_keys(pattern));
    }
  }

  /// False when there is nothing of this name.
  bool read_member(const Json& json, const std::string& pattern, const JsonPath& path) {
    if (pattern.substr(1) == kVersionKey) return whole_;
    if (pattern == kFrameLinesPointer) return read_frame_lines(json, path);
    if (pattern == kCamerasPointer) return read_cameras(json, path);
    if (pattern == kOwnPointer) {
      plan_.own = catalogue_from_object(json, "", path, problems_);
      return true;
    }
    if (const FieldInfo* info = row_of(pattern)) {
      const auto value = value_from_json(*info, json, path, problems_);
      if (value) info->write(plan_, line_, *value);
      weights_said_ = weights_said_ || pattern == kWeightsPointer;
      return true;
    }
    if (const auto* retired = whole_ ? retired_field(pattern) : nullptr) {
      const auto value = value_from_json(*retired, json, path, problems_);
      if (value) retired->write(retired_, 0, *value);
      retired_seen_.add(*retired);
      return true;
    }
    if (known_keys(pattern).empty() && !(whole_ && pattern == kMandatePointer)) return false;
    if (is_object(json, path, problems_)) read_object(json, pattern, path);
    return true;
  }

  bool read_frame_lines(const Json& json, const JsonPath& path) {
    if (!is_list(json, path, problems_)) return true;
    if (json.empty() || json.size() > kMaxFrameLines) {
      add_problem(problems_, path, "a list of " + std::to_string(json.size()),
                  "a list of 1 to " + std::to_string(kMaxFrameLines) + " frame lines");
      return true;
    }
    if (whole_) plan_.deliverable.frame_lines.clear();
    plan_.deliverable.frame_lines.resize(json.size());
    for (line_ = 0; line_ < json.size(); ++line_) {
      const JsonPath at = path.item(line_);
      if (!is_object(json[line_], at, problems_)) continue;
      read_object(json[line_], std::string(kFrameLinesPointer) + "/#", at);
    }
    line_ = 0;
    return true;
  }

  bool read_cameras(const Json& json, const JsonPath& path) {
    if (!is_list(json, path, problems_)) return true;
    plan_.choose.cameras.clear();
    for (std::size_t i = 0; i < json.size(); ++i) {
      if (json[i].is_string()) {
        plan_.choose.cameras.push_back(json[i].get<std::string>());
      } else {
        add_problem(problems_, path.item(i), shown_json(json[i]), "a camera id");
      }
    }
    return true;
  }

  Plan plan_;
  RetiredChoices retired_;
  RetiredSeen retired_seen_;
  bool weights_said_ = false;
  bool whole_ = true;  ///< False: a difference to another plan.
  Problems problems_;
  std::size_t line_ = 0;  ///< Frame line that "#" stands for.
};

/// The value at a pointer, made on the way: digits step into a list (one past its end adds an
/// item), anything else into an object.
Json& place_at(Json& document, std::string_view pointer) {
  Json* at = &document;
  while (!pointer.empty()) {
    pointer.remove_prefix(1);
    const std::string_view step = pointer.substr(0, pointer.find('/'));
    pointer.remove_prefix(step.size());
    const auto index = parse_rational(step);
    at = index ? &(*at)[static_cast<std::size_t>(index->num())] : &(*at)[std::string(step)];
  }
  return *at;
}

/// The plan when reading and its check found nothing wrong; what they found otherwise.
std::optional<Plan> checked_plan(Plan plan, Problems found, const JsonPath& path,
                                 const Catalogue& catalogue, Problems& problems) {
  if (found.empty()) {
    found = check_plan(plan, catalogue);
    for (Problem& problem : found) problem.pointer = path.text() + problem.pointer;
  }
  if (found.empty()) return plan;
  problems.insert(problems.end(), std::make_move_iterator(found.begin()),
                  std::make_move_iterator(found.end()));
  return std::nullopt;
}

/// Frame lines as a difference: every line, with what its line of before does not have.
void add_line_differences(Json& document, const Plan& before, const Plan& after) {
  Plan plain;
  plain.deliverable.frame_lines.assign(1, FrameLine{});
  const std::size_t had = before.deliverable.frame_lines.size();
  for (std::size_t line = 0; line < after.deliverable.frame_lines.size(); ++line) {
    place_at(document, std::string(kFrameLinesPointer) + "/" + std::to_string(line)) =
        Json::object();
    for (const FieldInfo& info : plan_fields()) {
      if (!per_frame_line(info)) continue;
      const FieldValue value = info.read(after, line);
      if (value == (line < had ? info.read(before, line) : info.read(plain, 0))) continue;
      place_at(document, pointer_of(info, line)) = value_to_json(info, value);
    }
  }
}

}  // namespace

std::optional<Plan> plan_from_object(const Json& object, const JsonPath& path,
                                     const Catalogue& catalogue, Problems& problems) {
  PlanReader reader;
  Plan plan = reader.read(object, path);
  return checked_plan(std::move(plan), reader.take_problems(), path, catalogue, problems);
}

std::optional<Plan> plan_after(const Plan& before, const Json& difference, const JsonPath& path,
                               const Catalogue& catalogue, Problems& problems) {
  PlanReader reader;
  Plan plan = reader.read_onto(before, difference, path);
  return checked_plan(std::move(plan), reader.take_problems(), path, catalogue, problems);
}

Checked<Plan> plan_from_document(const Json& document, const Catalogue& catalogue) {
  Problems problems;
  auto plan = plan_from_object(document, JsonPath(), catalogue, problems);
  if (!plan) return tl::make_unexpected(std::move(problems));
  return std::move(*plan);
}

Checked<Plan> plan_from_json(std::string_view text, const Catalogue& catalogue) {
  const Checked<Json> document = parse_json(text);
  if (!document) return tl::make_unexpected(document.error());
  return plan_from_document(*document, catalogue);
}

Json plan_document(const Plan& plan) {
  Json document = Json::object();
  document[std::string(kVersionKey)] = kVersion;
  for (const FieldInfo& info : plan_fields()) {
    if (per_frame_line(info)) continue;
    place_at(document, info.pointer) = value_to_json(info, info.read(plan, 0));
  }
  for (std::size_t line = 0; line < plan.deliverable.frame_lines.size(); ++line) {
    for (const FieldInfo& info : plan_fields()) {
      if (!per_frame_line(info)) continue;
      place_at(document, pointer_of(info, line)) = value_to_json(info, info.read(plan, line));
    }
  }
  place_at(document, kCamerasPointer) = plan.choose.cameras;
  Json& own = document["own"] = Json::object();
  add_catalogue(own, plan.own);
  return document;
}

Json plan_difference(const Plan& before, const Plan& after) {
  Json document = Json::object();
  for (const FieldInfo& info : plan_fields()) {
    if (per_frame_line(info)) continue;
    const FieldValue value = info.read(after, 0);
    if (value == info.read(before, 0)) continue;
    place_at(document, info.pointer) = value_to_json(info, value);
  }
  if (before.deliverable.frame_lines != after.deliverable.frame_lines) {
    add_line_differences(document, before, after);
  }
  if (before.choose.cameras != after.choose.cameras) {
    place_at(document, kCamerasPointer) = after.choose.cameras;
  }
  if (!(before.own == after.own)) {
    Json& own = document["own"] = Json::object();
    add_catalogue(own, after.own);
  }
  return document;
}

std::string plan_to_json(const Plan& plan) { return print_json(plan_document(plan)); }

}  // namespace widegate
