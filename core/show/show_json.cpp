#include "core/show/show_json.h"

#include <algorithm>

#include "core/field/field_json.h"
#include "core/plan/plan_document.h"
#include "core/show/show_check.h"
#include "core/show/show_fields.h"

namespace widegate {
namespace {

constexpr std::string_view kVersionKey = "widegate_show";
constexpr std::int64_t kVersion = 1;

/// True when the pointer leads into a part of its row: "/price/date" into "/price".
bool leads_into(std::string_view pointer, std::string_view part) {
  return pointer.size() > part.size() && pointer.starts_with(part) && pointer[part.size()] == '/';
}

/// The keys of a part of a row ("" for the row itself), and those handled beside the table.
template <class Row>
std::string known_keys(std::string_view part, std::string_view beside) {
  std::string keys;
  std::string_view last;
  for (const Field<Row>& info : show_fields<Row>()) {
    if (!leads_into(info.pointer, part)) continue;
    std::string_view key = info.pointer.substr(part.size() + 1);
    key = key.substr(0, key.find('/'));
    if (key != last) keys += (keys.empty() ? "" : ", ") + std::string(key);
    last = key;
  }
  return beside.empty() ? keys : keys + ", " + std::string(beside);
}

class ShowReader {
 public:
  explicit ShowReader(const Catalogue& catalogue) : catalogue_(catalogue) {}

  Show read(const Json& document) {
    const JsonPath root;
    if (!is_object(document, root, problems_)) return {};
    if (!version_readable(document, kVersionKey, kVersion, problems_)) return {};
    read_part(show_, "", document, root);
    return std::move(show_);
  }
  [[nodiscard]] Problems take_problems() { return std::move(problems_); }

 private:
  /// Every member of a part of a row: a scalar, what is handled beside the table, a part below.
  template <class Row>
  void read_part(Row& row, const std::string& part, const Json& json, const JsonPath& path) {
    const auto fields = show_fields<Row>();
    for (const auto& member : json.items()) {
      const JsonPath at = path.member(member.key());
      const std::string pointer = part + "/" + member.key();
      const auto info = std::find_if(fields.begin(), fields.end(), [&](const Field<Row>& field) {
        return field.pointer == pointer;
      });
      if (info != fields.end()) {
        const auto value = value_from_json(*info, member.value(), at, problems_);
        if (value) info->write(row, 0, *value);
        continue;
      }
      if (read_beside(row, pointer, member.value(), at)) continue;
      const bool below = std::any_of(fields.begin(), fields.end(), [&](const Field<Row>& field) {
        return leads_into(field.pointer, pointer);
      });
      if (!below) {
        add_unknown_key(problems_, at, member.value(), known_keys<Row>(part, beside(row, part)));
      } else if (is_object(member.value(), at, problems_)) {
        read_part(row, pointer, member.value(), at);
      }
    }
  }

  // What the tables do not hold.
  template <class Row>
  static std::string_view beside(const Row&, std::string_view) {
    return {};
  }
  static std::string_view beside(const ShowPart&, std::string_view) { return "plan"; }
  static std::string_view beside(const Show&, std::string_view part) {
    if (part.empty()) return "parts, cards, prices, people, rent";
    return part == "/calendar" ? "weekdays_off, days_off" : "";
  }

  template <class Row>
  bool read_beside(Row&, std::string_view, const Json&, const JsonPath&) {
    return false;
  }
  bool read_beside(ShowPart& part, std::string_view pointer, const Json& json,
                   const JsonPath& path) {
    if (pointer != "/plan") return false;
    Checked<Plan> plan = plan_from_document(json, catalogue_);
    if (plan) {
      part.plan = std::move(*plan);
      return true;
    }
    const std::string above = path.text();
    for (Problem& problem : plan.error()) {
      problem.pointer.insert(0, above);
      if (problems_.size() < kMaxProblems) problems_.push_back(std::move(problem));
    }
    return true;
  }
  bool read_beside(Show& show, std::string_view pointer, const Json& json, const JsonPath& path) {
    if (pointer.substr(1) == kVersionKey) return true;
    if (pointer == "/calendar/weekdays_off") return read_weekdays(json, path);
    if (pointer == "/calendar/days_off") return read_days_off(json, path);
    if (pointer == "/parts") return read_list(show.parts, json, path, kMaxShowParts);
    bool found = false;
    for_show_lists(show, [&](std::string_view key, auto& rows) {
      if (pointer.substr(1) != key) return;
      found = read_list(rows, json, path, kMaxShowRows);
    });
    return found;
  }

  template <class Row>
  bool read_list(std::vector<Row>& rows, const Json& json, const JsonPath& path, std::size_t most) {
    if (!is_list(json, path, problems_)) return true;
    if (json.size() > most) {
      add_problem(problems_, path, "a list of " + std::to_string(json.size()),
                  "a list of at most " + std::to_string(most));
      return true;
    }
    rows.reserve(json.size());
    for (std::size_t i = 0; i < json.size(); ++i) {
      const JsonPath at = path.item(i);
      if (is_object(json[i], at, problems_)) read_part(rows.emplace_back(), "", json[i], at);
    }
    return true;
  }

  bool read_weekdays(const Json& json, const JsonPath& path) {
    const FieldSpec spec{.label = "Weekday", .kind = FieldKind::choice, .choices = weekday_names()};
    if (!is_list(json, path, problems_)) return true;
    for (std::size_t i = 0; i < json.size(); ++i) {
      const auto value = value_from_json(spec, json[i], path.item(i), problems_);
      const auto* number = value ? std::get_if<std::int64_t>(&*value) : nullptr;
      if (number != nullptr) {
        show_.calendar.weekdays_off.push_back(static_cast<Weekday>(*number));
      }
    }
    return true;
  }

  bool read_days_off(const Json& json, const JsonPath& path) {
    if (!is_list(json, path, problems_)) return true;
    for (std::size_t i = 0; i < json.size(); ++i) {
      if (json[i].is_string()) {
        show_.calendar.days_off.push_back(json[i].get<std::string>());
      } else {
        add_problem(problems_, path.item(i), shown_json(json[i]),
                    "a day of the calendar as YYYY-MM-DD");
      }
    }
    return true;
  }

  const Catalogue& catalogue_;
  Show show_;
  Problems problems_;
};

/// The value at a pointer of names, made on the way.
Json& place_at(Json& object, std::string_view pointer) {
  Json* at = &object;
  while (!pointer.empty()) {
    pointer.remove_prefix(1);
    const std::string_view step = pointer.substr(0, pointer.find('/'));
    pointer.remove_prefix(step.size());
    at = &(*at)[std::string(step)];
  }
  return *at;
}

template <class Row>
Json row_object(const Row& row) {
  Json object = Json::object();
  for (const Field<Row>& info : show_fields<Row>()) {
    place_at(object, info.pointer) = value_to_json(info, info.read(row, 0));
  }
  return object;
}

}  // namespace

Checked<Show> show_from_json(std::string_view text, const Catalogue& catalogue) {
  const Checked<Json> document = parse_json(text);
  if (!document) return tl::make_unexpected(document.error());
  ShowReader reader(catalogue);
  Show show = reader.read(*document);
  Problems problems = reader.take_problems();
  if (problems.empty()) problems = check_show(show, catalogue);
  if (!problems.empty()) return tl::make_unexpected(std::move(problems));
  return show;
}

std::string show_to_json(const Show& show) {
  Json document = Json::object();
  document[std::string(kVersionKey)] = kVersion;
  document.update(row_object(show));
  Json parts = Json::array();
  for (const ShowPart& part : show.parts) {
    Json& object = parts.emplace_back(row_object(part));
    object["plan"] = plan_document(part.plan);
  }
  document["parts"] = std::move(parts);
  for_show_lists(show, [&](std::string_view key, const auto& rows) {
    Json& list = document[std::string(key)] = Json::array();
    for (const auto& row : rows) list.push_back(row_object(row));
  });
  Json weekdays = Json::array();
  for (const Weekday day : show.calendar.weekdays_off) {
    weekdays.push_back(std::string(weekday_names()[static_cast<std::size_t>(day)].token));
  }
  document["calendar"]["weekdays_off"] = std::move(weekdays);
  document["calendar"]["days_off"] = show.calendar.days_off;
  return print_json(document);
}

}  // namespace widegate
