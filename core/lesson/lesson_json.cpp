#include "core/lesson/lesson_json.h"

#include "core/field/field_json.h"
#include "core/lesson/lesson_fields.h"
#include "core/plan/plan_document.h"

namespace widegate {
namespace {

constexpr std::string_view kVersionKey = "widegate_lesson";
constexpr std::int64_t kVersion = 1;
constexpr std::string_view kPlanVersionKey = "widegate_plan";

/// The field of the key, or nullptr; a field's pointer is "/" and its key.
template <class Owner>
const Field<Owner>* field_of(std::span<const Field<Owner>> fields, std::string_view key) {
  for (const Field<Owner>& info : fields) {
    if (info.pointer.substr(1) == key) return &info;
  }
  return nullptr;
}

template <class Owner>
std::string known_keys(std::span<const Field<Owner>> fields, std::string_view others) {
  std::string keys(others);
  for (const Field<Owner>& info : fields) {
    keys += (keys.empty() ? "" : ", ") + std::string(info.pointer.substr(1));
  }
  return keys;
}

/// Reads the scalars of an object; every other member goes to `other(key, value, path)`, which
/// returns false for a key it does not know. `others` names those it knows.
template <class Owner, class Other>
void read_members(Owner& owner, std::span<const Field<Owner>> fields, const Json& object,
                  const JsonPath& path, Problems& problems, std::string_view others, Other other) {
  for (const auto& member : object.items()) {
    const JsonPath at = path.member(member.key());
    if (const Field<Owner>* info = field_of(fields, member.key())) {
      const auto value = value_from_json(*info, member.value(), at, problems);
      if (value) info->write(owner, 0, *value);
    } else if (!other(std::string_view(member.key()), member.value(), at)) {
      add_unknown_key(problems, at, member.value(), known_keys(fields, others));
    }
  }
  for (const Field<Owner>& info : fields) {
    if (object.contains(std::string(info.pointer.substr(1)))) continue;
    if (value_accepted(info, info.read(owner, 0))) continue;
    add_problem(problems, path.below(info.pointer), "nothing", accepted_values(info));
  }
}

LessonFigure read_figure(const Json& json, const JsonPath& path, Problems& problems) {
  LessonFigure figure;
  if (!is_object(json, path, problems)) return figure;
  read_members(figure, lesson_figure_fields(), json, path, problems, "",
               [](std::string_view, const Json&, const JsonPath&) { return false; });
  return figure;
}

/// A list of at most `most` items, each read by `read`.
template <class Item, class Read>
std::vector<Item> read_list(const Json& json, const JsonPath& path, std::size_t most,
                            Problems& problems, Read read) {
  std::vector<Item> items;
  if (!is_list(json, path, problems)) return items;
  if (json.size() > most) {
    add_problem(problems, path, "a list of " + std::to_string(json.size()),
                "a list of 1 to " + std::to_string(most));
    return items;
  }
  for (std::size_t i = 0; i < json.size(); ++i) items.push_back(read(json[i], path.item(i)));
  return items;
}

/// Reads steps one after the other: each plan begins where the one before ended.
class StepReader {
 public:
  StepReader(const Catalogue& catalogue, Problems& problems)
      : catalogue_(catalogue), problems_(problems) {}

  LessonStep read(const Json& json, const JsonPath& path) {
    LessonStep step;
    if (!is_object(json, path, problems_)) return step;
    read_members(step, lesson_step_fields(), json, path, problems_, "plan, figures",
                 [&](std::string_view key, const Json& value, const JsonPath& at) {
                   if (key == "plan") {
                     read_plan(value, at);
                   } else if (key == "figures") {
                     step.figures =
                         read_list<LessonFigure>(value, at, kMaxLessonFigures, problems_,
                                                 [&](const Json& each, const JsonPath& place) {
                                                   return read_figure(each, place, problems_);
                                                 });
                   } else {
                     return false;
                   }
                   return true;
                 });
    step.plan = plan_;
    return step;
  }

 private:
  /// After a plan that is refused, differences to it are not judged.
  void read_plan(const Json& json, const JsonPath& path) {
    const bool whole = json.is_object() && json.contains(std::string(kPlanVersionKey));
    if (refused_ && !whole) return;
    auto plan = whole ? plan_from_object(json, path, catalogue_, problems_)
                      : plan_after(plan_, json, path, catalogue_, problems_);
    refused_ = !plan;
    if (plan) plan_ = std::move(*plan);
  }

  const Catalogue& catalogue_;
  Problems& problems_;
  Plan plan_;
  bool refused_ = false;
};

Lesson read_lesson(const Json& document, const Catalogue& catalogue, Problems& problems) {
  Lesson lesson;
  const JsonPath root;
  if (!is_object(document, root, problems) ||
      !version_readable(document, kVersionKey, kVersion, problems)) {
    return lesson;
  }
  StepReader steps(catalogue, problems);
  read_members(lesson, lesson_fields(), document, root, problems, "widegate_lesson, steps",
               [&](std::string_view key, const Json& value, const JsonPath& at) {
                 if (key != "steps") return key == kVersionKey;
                 lesson.steps = read_list<LessonStep>(value, at, kMaxLessonSteps, problems,
                                                      [&](const Json& each, const JsonPath& place) {
                                                        return steps.read(each, place);
                                                      });
                 return true;
               });
  return lesson;
}

/// Adds every field that is not as in a new one.
template <class Owner>
void add_fields(Json& object, std::span<const Field<Owner>> fields, const Owner& owner) {
  const Owner plain;
  for (const Field<Owner>& info : fields) {
    const FieldValue value = info.read(owner, 0);
    if (value == info.read(plain, 0)) continue;
    object[std::string(info.pointer.substr(1))] = value_to_json(info, value);
  }
}

Json step_object(const LessonStep& step, const Plan& before) {
  Json object = Json::object();
  add_fields(object, lesson_step_fields(), step);
  Json difference = plan_difference(before, step.plan);
  if (!difference.empty()) object["plan"] = std::move(difference);
  Json& figures = object["figures"] = Json::array();
  for (const LessonFigure& figure : step.figures) {
    Json& each = figures.emplace_back(Json::object());
    add_fields(each, lesson_figure_fields(), figure);
  }
  return object;
}

}  // namespace

Checked<Lesson> lesson_from_json(std::string_view text, const Catalogue& catalogue) {
  const Checked<Json> document = parse_json(text);
  if (!document) return tl::make_unexpected(document.error());
  Problems problems;
  Lesson lesson = read_lesson(*document, catalogue, problems);
  if (problems.empty()) problems = check_lesson(lesson, catalogue);
  if (!problems.empty()) return tl::make_unexpected(std::move(problems));
  return lesson;
}

std::string lesson_to_json(const Lesson& lesson) {
  Json document = Json::object();
  document[std::string(kVersionKey)] = kVersion;
  add_fields(document, lesson_fields(), lesson);
  Json& steps = document["steps"] = Json::array();
  Plan before;
  for (const LessonStep& step : lesson.steps) {
    steps.push_back(step_object(step, before));
    before = step.plan;
  }
  return print_json(document);
}

}  // namespace widegate
