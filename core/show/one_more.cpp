#include "core/show/one_more.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/base/number_text.h"
#include "core/report/figure_text.h"
#include "core/show/evaluate_show.h"
#include "core/show/show_figures.h"

namespace widegate {
namespace {

constexpr std::array kChanges = {OneMore::day, OneMore::camera, OneMore::footage};
constexpr std::array<std::string_view, 3> kWords = {"One day more", "One camera more in each unit",
                                                    "A fifth more footage (12∶1 instead of 10∶1)"};

/// 12:1 over 10:1.
constexpr double kMoreFootage = 1.2;

Span minus(Span a, Span b) { return {a.least - b.least, a.most - b.most}; }
Span minus(ByteRange a, ByteRange b) {
  return {static_cast<double>(a.least - b.least), static_cast<double>(a.most - b.most)};
}

Span cost_in(const MoneyReport& money, const std::string& currency) {
  const auto at = std::find_if(money.sums.begin(), money.sums.end(),
                               [&](const MoneySum& sum) { return sum.currency == currency; });
  return at == money.sums.end() ? Span{} : at->cost;
}

ShowDifference difference(const ShowReport& before, const ShowReport& after) {
  const ShowTotals& a = after.totals;
  const ShowTotals& b = before.totals;
  ShowDifference result{.total_bytes = minus(a.total_bytes, b.total_bytes),
                        .copies_total_bytes = minus(a.copies_total_bytes, b.copies_total_bytes),
                        .largest_day_bytes = minus(a.largest_day_bytes, b.largest_day_bytes),
                        .cards_to_have = minus(a.cards_to_have, b.cards_to_have),
                        .drives = minus(a.drives, b.drives),
                        .tapes = minus(a.tapes, b.tapes),
                        .copy_hours_per_day = minus(a.copy_hours_per_day, b.copy_hours_per_day),
                        .money = {}};
  for (const MoneySum& sum : after.money.sums) {
    result.money.push_back({.currency = sum.currency,
                            .cost = minus(sum.cost, cost_in(before.money, sum.currency)),
                            .invented = sum.invented});
  }
  return result;
}

bool is_nothing(Span value) { return std::abs(value.least) < 1e-9 && std::abs(value.most) < 1e-9; }

std::string sign_of(Span value) { return value.most < 0 ? "−" : "+"; }
Span size_of(Span value) {
  const double a = std::abs(value.least);
  const double b = std::abs(value.most);
  return {std::min(a, b), std::max(a, b)};
}

void add_words(std::string& text, const std::string& words) {
  text += (text.empty() ? "" : ", ") + words;
}

void add_bytes(std::string& text, Span value, std::string_view what) {
  if (is_nothing(value)) return;
  const ScaledBytes bytes = scaled_bytes(size_of(value));
  add_words(text, sign_of(value) + bytes.text + " " + std::string(bytes.unit) + std::string(what));
}

void add_count(std::string& text, Span value, std::string_view one, std::string_view many) {
  if (is_nothing(value)) return;
  const Span size = size_of(value);
  const auto whole = [](double count) { return print_grouped(std::llround(count)); };
  const std::string count =
      size.least == size.most ? whole(size.most) : whole(size.least) + "–" + whole(size.most);
  add_words(text, sign_of(value) + count + " " + std::string(size.most == 1 ? one : many));
}

}  // namespace

std::string_view one_more_words(OneMore change) { return kWords[static_cast<std::size_t>(change)]; }

Show with_one_more(Show show, std::size_t part, OneMore change) {
  Shooting& shooting = show.parts[part].plan.shooting;
  switch (change) {
    case OneMore::day:
      ++shooting.days;
      // Its own days may end after those of the show.
      if (show.calendar.shooting_days) ++*show.calendar.shooting_days;
      break;
    case OneMore::camera:
      ++shooting.cameras_per_unit;
      break;
    case OneMore::footage:
      (shooting.by == ShootingBy::ratio ? shooting.shooting_ratio
                                        : shooting.recorded_hours_per_day) *= kMoreFootage;
      break;
  }
  return show;
}

std::vector<ShowDifference> differences_of_one_more(const Show& show, const ShowReport& report,
                                                    const Catalogue& catalogue) {
  std::vector<ShowDifference> all;
  for (std::size_t part = 0; part < show.parts.size(); ++part) {
    for (const OneMore change : kChanges) {
      const ShowReport after = evaluate_show(with_one_more(show, part, change), catalogue);
      if (!after.problems.empty()) continue;
      ShowDifference& one = all.emplace_back(difference(report, after));
      one.part = part;
      one.change = change;
    }
  }
  return all;
}

std::string difference_text(const ShowDifference& difference) {
  std::string text;
  add_bytes(text, difference.total_bytes, "");
  add_bytes(text, difference.largest_day_bytes, " on the largest day");
  add_count(text, difference.cards_to_have, "card", "cards");
  add_count(text, difference.drives, "drive", "drives");
  add_count(text, difference.tapes, "tape", "tapes");
  for (const MoneySum& sum : difference.money) {
    if (is_nothing(sum.cost)) continue;
    add_words(text, sign_of(sum.cost) + money_text(size_of(sum.cost), sum.currency) +
                        (sum.invented ? " (invented)" : ""));
  }
  return text.empty() ? "nothing" : text;
}

}  // namespace widegate
