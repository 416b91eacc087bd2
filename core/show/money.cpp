#include "core/show/money.h"

#include <algorithm>
#include <functional>

#include "core/show/shoot_days.h"
#include "core/show/show_fields.h"

namespace widegate {
namespace {

constexpr double kTerabyte = 1e12;

/// A line, and which share of it is spent by the end of a day.
struct CostedLine {
  MoneyLine line;
  std::function<double(std::int64_t day)> spent;
};

double share(std::int64_t part, std::int64_t whole) {
  return whole == 0 ? 0 : static_cast<double>(part) / static_cast<double>(whole);
}

Span as_span(ByteRange range) {
  return {static_cast<double>(range.least), static_cast<double>(range.most)};
}

class Lines {
 public:
  explicit Lines(const Costed& costed) : costed_(costed) {}

  std::vector<CostedLine> all() {
    add_cards();
    add_media(false);
    add_media(true);
    for (const EvaluatedPart& part : costed_.parts) add_film(part);
    add_copying();
    add_upload();
    for (const Person& person : costed_.show.people) add_person(person);
    for (const Rental& rental : costed_.show.rent) add_rental(rental);
    return std::move(lines_);
  }

 private:
  const PriceRow* row_of(Priced what, std::string_view id) const {
    for (const PriceRow& row : costed_.show.prices) {
      if (row.what == what && row.id == id) return &row;
    }
    return nullptr;
  }
  Price price_of(Priced what, std::string_view id = {}) const {
    const PriceRow* row = row_of(what, id);
    return row == nullptr ? Price{} : row->price;
  }

  void add(MoneyLine line, std::function<double(std::int64_t)> spent) {
    line.cost = times(line.quantity, line.price.amount.value_or(0));
    lines_.push_back({std::move(line), std::move(spent)});
  }

  const EvaluatedPart* part_named(std::string_view name) const {
    for (const EvaluatedPart& part : costed_.parts) {
      if (part.part->name == name) return &part;
    }
    return nullptr;
  }

  /// Days of a part, or of the show; and those past by the end of a day.
  std::int64_t days_of(const EvaluatedPart* part) const {
    return part == nullptr ? costed_.days : part->plan().shooting.days;
  }
  std::function<double(std::int64_t)> day_by_day(const EvaluatedPart* part) const {
    const std::int64_t days = days_of(part);
    return [part, days](std::int64_t day) {
      return share(part == nullptr ? day : part->days_by(day), days);
    };
  }

  void add_cards() {
    for (const CardKind& kind : costed_.cards) {
      const std::int64_t have = kind.at_hand.value_or(0);
      const ByteRange bought = {std::max<std::int64_t>(0, kind.to_have.least - have),
                                std::max<std::int64_t>(0, kind.to_have.most - have)};
      std::int64_t first = costed_.days;
      for (const EvaluatedPart& part : costed_.parts) {
        const bool of_kind = !part.report.store.no_cards && part.card->id == kind.id;
        if (of_kind) first = std::min(first, part.part->first_day);
      }
      add({.name = kind.name,
           .part = "",
           .quantity = as_span(bought),
           .unit = "cards",
           .price = price_of(Priced::card, kind.id),
           .cost = {}},
          [first](std::int64_t day) { return day >= first ? 1.0 : 0.0; });
    }
  }

  /// Drives or tapes of one model, over all sets.
  void add_media(bool tape) {
    std::vector<std::string_view> done;
    for (const FilledMedia& first : costed_.media) {
      const std::string_view id = first.set.id;
      const bool seen = std::find(done.begin(), done.end(), id) != done.end();
      if (first.set.tape != tape || seen) continue;
      done.push_back(id);
      std::vector<const FilledMedia*> sets;
      ByteRange count;
      for (const FilledMedia& media : costed_.media) {
        if (media.set.tape != tape || media.set.id != id) continue;
        sets.push_back(&media);
        count = plus(count, media.set.media);
      }
      add({.name = first.set.name,
           .part = "",
           .quantity = as_span(count),
           .unit = tape ? "tapes" : "drives",
           .price = price_of(tape ? Priced::tape : Priced::drive, id),
           .cost = {}},
          [sets, count](std::int64_t day) {
            std::int64_t begun = 0;
            for (const FilledMedia* media : sets) {
              begun += media->by_day[static_cast<std::size_t>(day - 1)].most;
            }
            return share(begun, count.most);
          });
    }
  }

  void add_film(const EvaluatedPart& part) {
    const auto& film = part.report.film;
    if (!film || !film->frames_per_foot) return;
    struct Row {
      Priced what;
      const char* name;
    };
    for (const Row& row :
         {Row{Priced::stock_foot, "Film stock"}, Row{Priced::processing_foot, "Processing of film"},
          Row{Priced::scanning_foot, "Scanning of film"}}) {
      add({.name = row.name,
           .part = part.part->name,
           .quantity = {film->feet, film->feet},
           .unit = "ft",
           .price = price_of(row.what),
           .cost = {}},
          day_by_day(&part));
    }
  }

  /// By the hour only where somebody entered a price for it: most wranglers come by the day.
  void add_copying() {
    if (row_of(Priced::copying_hour, "") == nullptr) return;
    for (const EvaluatedPart& part : costed_.parts) {
      const Shooting& shooting = part.plan().shooting;
      const auto unit_days = static_cast<double>(shooting.units * shooting.days);
      add({.name = "Copying",
           .part = part.part->name,
           .quantity = times(part.report.store.offload_hours_per_day, unit_days),
           .unit = "h",
           .price = price_of(Priced::copying_hour),
           .cost = {}},
          day_by_day(&part));
    }
  }

  void add_upload() {
    if (row_of(Priced::upload_terabyte, "") == nullptr) return;
    for (const EvaluatedPart& part : costed_.parts) {
      add({.name = "Upload",
           .part = part.part->name,
           .quantity = times(part.report.store.upload_total_bytes, 1 / kTerabyte),
           .unit = "TB",
           .price = price_of(Priced::upload_terabyte),
           .cost = {}},
          day_by_day(&part));
    }
  }

  void add_person(const Person& person) {
    const EvaluatedPart* part = part_named(person.part);
    const std::int64_t days = person.days.value_or(days_of(part));
    const double quantity = static_cast<double>(person.count * days) *
                            (person.hours_per_day ? *person.hours_per_day : 1);
    add({.name = person.name,
         .part = person.part,
         .quantity = {quantity, quantity},
         .unit = person.hours_per_day ? "h" : "days",
         .price = person.price,
         .cost = {}},
        day_by_day(part));
  }

  void add_rental(const Rental& rental) {
    const EvaluatedPart* part = part_named(rental.part);
    const std::int64_t first = part == nullptr ? 1 : part->part->first_day;
    const std::int64_t last = first + days_of(part) - 1;
    const ShowCalendar& calendar = costed_.show.calendar;
    const std::int64_t by_days = weeks_between(calendar, costed_.dates, first, last);
    const std::int64_t weeks = rental.weeks.value_or(by_days);
    const auto quantity = static_cast<double>(rental.count * (rental.bought ? 1 : weeks));
    MoneyLine line{.name = rental.name,
                   .part = rental.part,
                   .quantity = {quantity, quantity},
                   .unit = rental.bought ? "pieces" : "weeks",
                   .price = rental.price,
                   .cost = {}};
    if (rental.bought) {
      add(std::move(line), [first](std::int64_t day) { return day >= first ? 1.0 : 0.0; });
      return;
    }
    const Costed& costed = costed_;
    add(std::move(line), [&costed, first, last, by_days](std::int64_t day) {
      const std::int64_t until = std::min(day, last);
      return share(weeks_between(costed.show.calendar, costed.dates, first, until), by_days);
    });
  }

  const Costed& costed_;
  std::vector<CostedLine> lines_;
};

std::string named(const MoneyLine& line) {
  return line.part.empty() ? line.name : line.name + ", " + line.part;
}

std::vector<MoneySum> sums_of(const std::vector<MoneyLine>& lines) {
  std::vector<MoneySum> sums;
  for (const MoneyLine& line : lines) {
    if (!line.price.amount) continue;
    const bool known = std::any_of(sums.begin(), sums.end(), [&](const MoneySum& sum) {
      return sum.currency == line.price.currency;
    });
    if (!known) sums.push_back({.currency = line.price.currency, .cost = {}});
  }
  std::sort(sums.begin(), sums.end(),
            [](const MoneySum& a, const MoneySum& b) { return a.currency < b.currency; });
  for (MoneySum& sum : sums) {
    std::vector<Span> costs;
    for (const MoneyLine& line : lines) {
      if (!line.price.amount || line.price.currency != sum.currency) continue;
      costs.push_back(line.cost);
      sum.invented = sum.invented || line.price.invented;
    }
    sum.cost = sum_of(std::move(costs));
  }
  return sums;
}

}  // namespace

Span sum_of(std::vector<Span> parts) {
  Span sum;
  std::sort(parts.begin(), parts.end(), [](Span a, Span b) { return a.least < b.least; });
  for (const Span& part : parts) sum.least += part.least;
  std::sort(parts.begin(), parts.end(), [](Span a, Span b) { return a.most < b.most; });
  for (const Span& part : parts) sum.most += part.most;
  return sum;
}

MoneyReport money_of(const Costed& costed) {
  MoneyReport money;
  for (CostedLine& costed_line : Lines(costed).all()) {
    MoneyLine& line = costed_line.line;
    if (!line.price.amount && line.quantity.most > 0) money.missing.push_back(named(line));
    money.lines.push_back(std::move(line));
  }
  money.sums = sums_of(money.lines);
  return money;
}

std::vector<std::vector<Span>> money_by_day(const Costed& costed, const MoneyReport& money) {
  const std::vector<CostedLine> lines = Lines(costed).all();
  std::vector<std::vector<Span>> by_day;
  by_day.reserve(static_cast<std::size_t>(costed.days));
  for (std::int64_t day = 1; day <= costed.days; ++day) {
    std::vector<Span>& sums = by_day.emplace_back();
    for (const MoneySum& sum : money.sums) {
      std::vector<Span> costs;
      for (const CostedLine& line : lines) {
        const Price& price = line.line.price;
        if (!price.amount || price.currency != sum.currency) continue;
        costs.push_back(times(line.line.cost, line.spent(day)));
      }
      sums.push_back(sum_of(std::move(costs)));
    }
  }
  return by_day;
}

}  // namespace widegate
