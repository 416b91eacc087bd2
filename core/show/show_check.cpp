#include "core/show/show_check.h"

#include <algorithm>

#include "core/base/plain_text.h"
#include "core/encode/json_path.h"
#include "core/plan/plan_check.h"
#include "core/show/shoot_days.h"
#include "core/show/show_fields.h"
#include "core/show/show_rows.h"

namespace widegate {
namespace {

template <class Row>
void check_scalars(const Row& row, const JsonPath& path, Problems& problems) {
  for (const Field<Row>& info : show_fields<Row>()) {
    const FieldValue value = info.read(row, 0);
    if (value_accepted(info, value)) continue;
    add_problem(problems, path.below(info.pointer), shown_value(info, value),
                accepted_values(info));
  }
}

void check_day(const std::string& text, bool optional, const JsonPath& path, Problems& problems) {
  if ((optional && text.empty()) || parse_day(text)) return;
  add_problem(problems, path, in_quotes(text),
              std::string(optional ? "empty text, or " : "") +
                  "a day of the calendar as YYYY-MM-DD, 1900 to 2999");
}

void check_price(const Price& price, const JsonPath& row, Problems& problems) {
  const JsonPath path = row.member("price");
  check_day(price.date, true, path.member("date"), problems);
  if (price.amount.has_value() == price.currency.empty()) {
    add_problem(
        problems, path.member("currency"), in_quotes(price.currency),
        price.amount ? "the currency of the amount" : "empty text while there is no amount");
  }
}

const ShowPart* find_part(const Show& show, std::string_view name) {
  const auto at = std::find_if(show.parts.begin(), show.parts.end(),
                               [name](const ShowPart& part) { return part.name == name; });
  return at == show.parts.end() ? nullptr : &*at;
}

void check_part_name(const Show& show, const std::string& name, const JsonPath& row,
                     Problems& problems) {
  if (name.empty() || find_part(show, name) != nullptr) return;
  std::string names = "empty text, or the name of a part";
  for (const ShowPart& part : show.parts) {
    names += (&part == show.parts.data() ? ": " : ", ") + part.name;
  }
  add_problem(problems, row.member("part"), in_quotes(name), names);
}

void check_row(const Show& show, const CardsAtHand& row, const ShowRows& rows, const JsonPath& path,
               Problems& problems) {
  (void)show;
  if (rows.card(row.card) != nullptr) return;
  add_problem(problems, path.member("card"), in_quotes(row.card),
              "a card of the library or of a part's plan");
}

void check_row(const Show& show, const PriceRow& row, const ShowRows& rows, const JsonPath& path,
               Problems& problems) {
  (void)show;
  check_price(row.price, path, problems);
  const bool known = (row.what == Priced::card && rows.card(row.id) != nullptr) ||
                     (row.what == Priced::drive && rows.drive(row.id) != nullptr) ||
                     (row.what == Priced::tape && rows.tape(row.id) != nullptr) ||
                     (!priced_by_model(row.what) && row.id.empty());
  if (known) return;
  add_problem(problems, path.member("id"), in_quotes(row.id),
              priced_by_model(row.what) ? "a model of the library or of a part's plan"
                                        : "empty text: this price is for no model");
}

template <class Row>
void check_row(const Show& show, const Row& row, const ShowRows&, const JsonPath& path,
               Problems& problems) {
  check_price(row.price, path, problems);
  check_part_name(show, row.part, path, problems);
}

bool same_thing(const PriceRow& a, const PriceRow& b) { return a.what == b.what && a.id == b.id; }
bool same_thing(const CardsAtHand& a, const CardsAtHand& b) { return a.card == b.card; }
bool same_thing(const Person&, const Person&) { return false; }
bool same_thing(const Rental&, const Rental&) { return false; }

void check_lists(const Show& show, const ShowRows& library, Problems& problems) {
  const JsonPath root;
  for_show_lists(show, [&](std::string_view key, const auto& rows) {
    const JsonPath list = root.member(key);
    if (rows.size() > kMaxShowRows) {
      add_problem(problems, list, "a list of " + std::to_string(rows.size()),
                  "a list of at most " + std::to_string(kMaxShowRows));
      return;
    }
    for (std::size_t i = 0; i < rows.size(); ++i) {
      const JsonPath path = list.item(i);
      check_scalars(rows[i], path, problems);
      check_row(show, rows[i], library, path, problems);
      const bool twice = std::any_of(rows.begin(), rows.begin() + static_cast<std::ptrdiff_t>(i),
                                     [&](const auto& row) { return same_thing(row, rows[i]); });
      if (twice) add_problem(problems, path, "an object", "each thing once");
    }
  });
}

void check_parts(const Show& show, const Catalogue& catalogue, Problems& problems) {
  const JsonPath root;
  const JsonPath list = root.member("parts");
  if (show.parts.empty() || show.parts.size() > kMaxShowParts) {
    add_problem(problems, list, "a list of " + std::to_string(show.parts.size()),
                "a list of 1 to " + std::to_string(kMaxShowParts) + " parts");
    return;
  }
  for (std::size_t i = 0; i < show.parts.size(); ++i) {
    const ShowPart& part = show.parts[i];
    const JsonPath path = list.item(i);
    check_scalars(part, path, problems);
    if (find_part(show, part.name) != &part) {
      add_problem(problems, path.member("name"), in_quotes(part.name),
                  "a name that no other part has");
    }
    for (Problem& problem : problems_of_part(i, check_plan(part.plan, catalogue))) {
      if (problems.size() < kMaxProblems) problems.push_back(std::move(problem));
    }
  }
}

void check_calendar(const Show& show, Problems& problems) {
  const JsonPath root;
  const JsonPath path = root.member("calendar");
  const ShowCalendar& calendar = show.calendar;
  check_day(calendar.start, true, path.member("start"), problems);
  const auto& off = calendar.weekdays_off;
  const auto rises = [](const auto& list) {
    return std::adjacent_find(list.begin(), list.end(),
                              [](const auto& a, const auto& b) { return !(a < b); }) == list.end();
  };
  if (off.size() > 6 || !rises(off)) {
    add_problem(problems, path.member("weekdays_off"), "a list of " + std::to_string(off.size()),
                "days of the week in their order, each once, and not all seven");
  }
  const JsonPath days = path.member("days_off");
  for (std::size_t i = 0; i < calendar.days_off.size(); ++i) {
    check_day(calendar.days_off[i], false, days.item(i), problems);
  }
  if (calendar.days_off.size() > kMaxShowDaysOff || !rises(calendar.days_off)) {
    add_problem(problems, days, "a list of " + std::to_string(calendar.days_off.size()),
                "at most " + std::to_string(kMaxShowDaysOff) + " days, rising, each once");
  }
  const std::int64_t needed = days_needed(show);
  if (calendar.shooting_days && *calendar.shooting_days < needed) {
    add_problem(problems, path.member("shooting_days"), std::to_string(*calendar.shooting_days),
                "at least the " + std::to_string(needed) + " days that the parts take");
  }
}

}  // namespace

Problems problems_of_part(std::size_t part, Problems problems) {
  const std::string above = "/parts/" + std::to_string(part) + "/plan";
  for (Problem& problem : problems) problem.pointer.insert(0, above);
  return problems;
}

Problems check_show(const Show& show, const Catalogue& catalogue) {
  Problems problems;
  const JsonPath root;
  check_scalars(show, root, problems);
  check_parts(show, catalogue, problems);
  if (!problems.empty()) return problems;
  const ShowRows rows(show, catalogue);
  check_lists(show, rows, problems);
  check_calendar(show, problems);
  return problems;
}

}  // namespace widegate
