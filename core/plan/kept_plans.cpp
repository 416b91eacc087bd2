#include "core/plan/kept_plans.h"

#include <algorithm>

#include "core/field/field_json.h"

namespace widegate {
namespace {

constexpr std::string_view kVersionKey = "widegate_plans";
constexpr std::int64_t kVersion = 1;
constexpr std::int64_t kMaxNumber = 1'000'000'000'000;

constexpr FieldSpec kNumber = {
    .label = "Number", .kind = FieldKind::whole, .low = 1, .high = kMaxNumber};
constexpr FieldSpec kText = {.label = "Text", .kind = FieldKind::text, .low = 0, .high = 20'000};

/// A member of an object by the limits of its spec; a default after a problem.
template <class T>
T member(const Json& object, std::string_view key, const FieldSpec& spec, const JsonPath& path,
         Problems& problems) {
  const JsonPath at = path.member(key);
  const auto found = object.find(std::string(key));
  if (found == object.end()) {
    add_problem(problems, at, "nothing", accepted_values(spec));
    return {};
  }
  const auto value = value_from_json(spec, *found, at, problems);
  return value ? std::get<T>(*value) : T{};
}

KeptPlan read_plan(const Json& row, const JsonPath& path, Problems& problems) {
  KeptPlan plan;
  plan.id = member<std::int64_t>(row, "id", kNumber, path, problems);
  plan.edition = member<std::int64_t>(row, "edition", kNumber, path, problems);
  plan.title = member<std::string_view>(row, "title", kText, path, problems);
  plan.link = member<std::string_view>(row, "link", kText, path, problems);
  return plan;
}

void read_plans(PlanShelf& shelf, const Json& rows, Problems& problems) {
  const JsonPath root;
  const JsonPath path = root.member("plans");
  if (!is_list(rows, path, problems)) return;
  for (std::size_t i = 0; i < rows.size() && i < kMaxKeptPlans; ++i) {
    const JsonPath at = path.item(i);
    if (!is_object(rows[i], at, problems)) continue;
    KeptPlan plan = read_plan(rows[i], at, problems);
    if (find_plan(shelf, plan.id) != nullptr || plan.id >= shelf.next_id) {
      add_problem(problems, at.member("id"), std::to_string(plan.id),
                  "a number of its own below next_id");
    }
    shelf.plans.push_back(std::move(plan));
  }
}

}  // namespace

std::string shelf_to_json(const PlanShelf& shelf) {
  Json document = Json::object();
  document[std::string(kVersionKey)] = kVersion;
  document["next_id"] = shelf.next_id;
  Json& rows = document["plans"] = Json::array();
  for (const KeptPlan& plan : shelf.plans) {
    rows.push_back(
        {{"id", plan.id}, {"edition", plan.edition}, {"title", plan.title}, {"link", plan.link}});
  }
  return print_json(document);
}

Checked<PlanShelf> shelf_from_json(std::string_view text) {
  const Checked<Json> document = parse_json(text);
  if (!document) return tl::make_unexpected(document.error());
  Problems problems;
  PlanShelf shelf;
  const JsonPath root;
  if (is_object(*document, root, problems) &&
      version_readable(*document, kVersionKey, kVersion, problems)) {
    shelf.next_id = member<std::int64_t>(*document, "next_id", kNumber, root, problems);
    const auto rows = document->find("plans");
    if (rows == document->end()) {
      add_problem(problems, root.member("plans"), "nothing", "a list");
    } else {
      read_plans(shelf, *rows, problems);
    }
  }
  if (!problems.empty()) return tl::make_unexpected(std::move(problems));
  return shelf;
}

const KeptPlan* find_plan(const PlanShelf& shelf, std::int64_t id) {
  for (const KeptPlan& plan : shelf.plans) {
    if (plan.id == id) return &plan;
  }
  return nullptr;
}

std::int64_t add_plan(PlanShelf& shelf, std::string_view title, std::string_view link) {
  if (shelf.plans.size() >= kMaxKeptPlans) return 0;
  const std::int64_t id = shelf.next_id++;
  shelf.plans.push_back({id, 1, std::string(title), std::string(link)});
  return id;
}

Kept keep_plan(PlanShelf& shelf, std::int64_t id, std::int64_t& edition, std::string_view title,
               std::string_view link) {
  const auto at = std::find_if(shelf.plans.begin(), shelf.plans.end(),
                               [id](const KeptPlan& plan) { return plan.id == id; });
  if (at == shelf.plans.end()) return Kept::gone;
  if (at->link == link && at->title == title) {
    edition = at->edition;
    return Kept::same;
  }
  if (at->edition != edition) return Kept::changed;
  edition = ++at->edition;
  at->title = title;
  at->link = link;
  return Kept::done;
}

bool remove_plan(PlanShelf& shelf, std::int64_t id) {
  return std::erase_if(shelf.plans, [id](const KeptPlan& plan) { return plan.id == id; }) > 0;
}

void restore_plan(PlanShelf& shelf, const KeptPlan& plan) {
  if (find_plan(shelf, plan.id) != nullptr) return;
  const auto after = std::find_if(shelf.plans.begin(), shelf.plans.end(),
                                  [&](const KeptPlan& each) { return each.id > plan.id; });
  shelf.plans.insert(after, plan);
}

}  // namespace widegate
