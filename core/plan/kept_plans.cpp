#include "core/plan/kept_plans.h"

#include <algorithm>
#include <optional>

#include "core/field/field_json.h"

namespace widegate {
namespace {

constexpr std::string_view kVersionKey = "widegate_plans";
constexpr std::string_view kUnreadKey = "unread";
constexpr std::int64_t kVersion = 1;
constexpr std::int64_t kMaxNumber = 1'000'000'000'000;

constexpr FieldSpec kNumber = {
    .label = "Number", .kind = FieldKind::whole, .low = 1, .high = kMaxNumber};
constexpr FieldSpec kText = {
    .label = "Text", .kind = FieldKind::text, .low = 0, .high = kMaxKeptText};

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

/// A row as a plan; nothing when it is none.
std::optional<KeptPlan> read_plan(const Json& row) {
  Problems problems;
  const JsonPath path;
  if (!is_object(row, path, problems)) return std::nullopt;
  KeptPlan plan;
  plan.id = member<std::int64_t>(row, "id", kNumber, path, problems);
  plan.edition = member<std::int64_t>(row, "edition", kNumber, path, problems);
  plan.title = member<std::string_view>(row, "title", kText, path, problems);
  plan.link = member<std::string_view>(row, "link", kText, path, problems);
  if (!problems.empty()) return std::nullopt;
  return plan;
}

/// Every row finds a place: among the plans, or among what is kept as it is.
void take_row(PlanShelf& shelf, const Json& row) {
  std::optional<KeptPlan> plan = read_plan(row);
  if (!plan || shelf.plans.size() >= kMaxKeptPlans) {
    shelf.unread.push_back(print_json(row));
    return;
  }
  if (find_plan(shelf, plan->id) != nullptr) plan->id = shelf.next_id;
  shelf.next_id = std::max(shelf.next_id, plan->id + 1);
  shelf.plans.push_back(*std::move(plan));
}

void read_rows(PlanShelf& shelf, const Json& document, std::string_view key, Problems& problems) {
  const JsonPath root;
  const auto rows = document.find(std::string(key));
  if (rows == document.end()) {
    add_problem(problems, root.member(key), "nothing", "a list");
  } else if (is_list(*rows, root.member(key), problems)) {
    for (const Json& row : *rows) take_row(shelf, row);
  }
}

/// "Shared" of "Shared (2)".
std::string_view without_number(std::string_view title) {
  const auto open = title.rfind(" (");
  if (open == title.npos || !title.ends_with(')')) return title;
  const std::string_view number = title.substr(open + 2, title.size() - open - 3);
  const bool digits = !number.empty() && number.find_first_not_of("0123456789") == number.npos;
  return digits ? title.substr(0, open) : title;
}

bool has_title(const PlanShelf& shelf, std::string_view title) {
  return std::any_of(shelf.plans.begin(), shelf.plans.end(),
                     [title](const KeptPlan& plan) { return plan.title == title; });
}

bool fits(std::string_view title, std::string_view link) {
  return title.size() <= kMaxKeptText && link.size() <= kMaxKeptText;
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
  if (!shelf.unread.empty()) {
    Json& kept = document[std::string(kUnreadKey)] = Json::array();
    for (const std::string& row : shelf.unread) kept.push_back(*parse_json(row));
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
    read_rows(shelf, *document, "plans", problems);
    if (document->contains(kUnreadKey)) read_rows(shelf, *document, kUnreadKey, problems);
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
  if (shelf.plans.size() >= kMaxKeptPlans || !fits(title, link)) return 0;
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
  if (!fits(title, link)) return Kept::too_long;
  edition = ++at->edition;
  at->title = title;
  at->link = link;
  return Kept::done;
}

std::string free_title(const PlanShelf& shelf, std::string_view title) {
  const std::string_view name = without_number(title);
  for (std::size_t number = 2;; ++number) {
    std::string numbered(name);
    numbered.append(" (").append(std::to_string(number)).append(")");
    if (!has_title(shelf, numbered)) return numbered;
  }
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
