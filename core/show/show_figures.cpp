#include "core/show/show_figures.h"

#include <array>
#include <cmath>

#include "core/base/number_text.h"
#include "core/report/figure_text.h"
#include "core/show/show_fields.h"

namespace widegate {
namespace {

/// How a figure is told.
enum class Told { bytes, hours, count, feet };

std::string dashed(const std::string& least, const std::string& most) {
  return least == most ? least : least + "–" + most;
}

std::string grouped(double value) { return print_grouped(std::llround(value)); }

/// At most one decimal, thousands set apart.
std::string hours(double value) {
  const double tenths = std::round(value * 10) / 10;
  const std::string fixed = print_fixed(tenths, 1);
  const std::string rest = fixed.ends_with(".0") ? "" : fixed.substr(fixed.find('.'));
  return grouped(std::trunc(tenths)) + rest;
}

/// "cards" for "2", "card" for "1".
std::string counted_as(std::string_view many, Span value) {
  const bool one = value.least == 1 && value.most == 1 && many.ends_with('s');
  return std::string(many.substr(0, many.size() - (one ? 1 : 0)));
}

struct Words {
  std::string text;
  std::string unit;
  std::string_view value_unit;
};

Words words_of(Told told, Span value, std::string_view unit) {
  switch (told) {
    case Told::bytes: {
      ScaledBytes bytes = scaled_bytes(value);
      return {std::move(bytes.text), std::string(bytes.unit), "bytes"};
    }
    case Told::hours:
      return {dashed(hours(value.least), hours(value.most)), "h", "h"};
    case Told::feet:
      return {dashed(grouped(value.least), grouped(value.most)), "ft", "ft"};
    case Told::count:
      break;
  }
  return {dashed(grouped(value.least), grouped(value.most)), counted_as(unit, value), ""};
}

Span as_span(ByteRange range) {
  return {static_cast<double>(range.least), static_cast<double>(range.most)};
}
Span as_span(std::int64_t count) {
  return {static_cast<double>(count), static_cast<double>(count)};
}

std::string short_words(Told told, Span value) {
  const Words words = words_of(told, value, "");
  return words.unit.empty() || told == Told::count ? words.text : words.text + " " + words.unit;
}

using Parts = const std::vector<PartReport>&;

/// "Main unit 4.1 TB + Drone 0.2 TB": what a sum over the parts is made of.
template <class Read>
std::string sum_of_parts(Parts parts, Told told, Read read) {
  std::string text;
  for (const PartReport& part : parts) {
    const Span value = read(part);
    if (value.most == 0) continue;
    text += (text.empty() ? "" : " + ") + part.name + " " + short_words(told, value);
  }
  return text;
}

std::string packed(const ShowReport& report, bool tape) {
  std::string text;
  for (const MediaSet& set : report.media) {
    if (set.tape != tape) continue;
    text += (text.empty() ? "" : " + ") +
            dashed(grouped(static_cast<double>(set.media.least)),
                   grouped(static_cast<double>(set.media.most))) +
            " " + set.name + " (" + set.parts + ")";
  }
  if (text.empty()) return text;
  return text + "; cards in one piece, the largest first, each where there is room";
}

std::string on_day(const ShowReport& report, std::int64_t number) {
  const ShowDay& day = report.days[static_cast<std::size_t>(number - 1)];
  const auto date = parse_day(day.date);
  return "shooting day " + std::to_string(number) + (date ? ", " + day_words(*date) : "");
}

struct TotalRow {
  std::string_view key;
  std::string_view label;
  Told told;
  std::string_view counted;
  Span (*read)(const ShowTotals&);
  std::string (*working)(const ShowReport&);
};

using R = const ShowReport&;
using T = const ShowTotals&;

constexpr auto kTotals = std::to_array<TotalRow>({
    {"totals.shooting_days", "Shooting days", Told::count, "days",
     [](T t) { return as_span(t.shooting_days); }, [](R) { return std::string(); }},
    {"totals.total_bytes", "Footage in all", Told::bytes, "", [](T t) { return t.total_bytes; },
     [](R r) {
       return sum_of_parts(r.parts, Told::bytes, [](const PartReport& p) { return p.total_bytes; });
     }},
    {"totals.copies_total_bytes", "All copies", Told::bytes, "",
     [](T t) { return t.copies_total_bytes; },
     [](R r) {
       std::string text;
       for (const PartReport& part : r.parts) {
         text += (text.empty() ? "" : " + ") + std::to_string(part.copies) + " · " +
                 short_words(Told::bytes, part.total_bytes);
       }
       return text;
     }},
    {"totals.average_day_bytes", "A day, on average", Told::bytes, "",
     [](T t) { return t.average_day_bytes; },
     [](R r) {
       return short_words(Told::bytes, r.totals.total_bytes) + " / " +
              std::to_string(r.totals.shooting_days) + " days";
     }},
    {"totals.least_day_bytes", "The smallest day", Told::bytes, "",
     [](T t) { return t.least_day_bytes; }, [](R) { return std::string(); }},
    {"totals.largest_day_bytes", "The largest day", Told::bytes, "",
     [](T t) { return t.largest_day_bytes; },
     [](R r) {
       const auto& day = r.days[static_cast<std::size_t>(r.totals.largest_day - 1)];
       std::string text;
       for (std::size_t i = 0; i < r.parts.size(); ++i) {
         if (day.part_bytes[i].most == 0) continue;
         text += (text.empty() ? "" : " + ") + r.parts[i].name + " " +
                 short_words(Told::bytes, day.part_bytes[i]);
       }
       return on_day(r, r.totals.largest_day) + ": " + text;
     }},
    {"totals.cards_to_have", "Cards to have", Told::count, "cards",
     [](T t) { return as_span(t.cards_to_have); },
     [](R r) {
       return sum_of_parts(r.parts, Told::count,
                           [](const PartReport& p) { return as_span(p.cards_to_have); });
     }},
    {"totals.drives", "Drives", Told::count, "drives", [](T t) { return as_span(t.drives); },
     [](R r) { return packed(r, false); }},
    {"totals.fewest_drives", "Drives, at the very least", Told::count, "drives",
     [](T t) { return as_span(t.fewest_drives); },
     [](R) { return std::string("bytes over capacity, rounded up, each copy by itself"); }},
    {"totals.tapes", "Tapes", Told::count, "tapes", [](T t) { return as_span(t.tapes); },
     [](R r) { return packed(r, true); }},
    {"totals.fewest_tapes", "Tapes, at the very least", Told::count, "tapes",
     [](T t) { return as_span(t.fewest_tapes); },
     [](R) { return std::string("bytes over capacity, rounded up, each copy by itself"); }},
    {"totals.copy_hours_per_day", "Copying, on the day with most", Told::hours, "",
     [](T t) { return t.copy_hours_per_day; },
     [](R r) {
       return sum_of_parts(r.parts, Told::hours,
                           [](const PartReport& p) { return p.copy_hours_per_day_all_units; }) +
              ", of the parts that shoot that day";
     }},
    {"totals.stations", "Copying stations, at least", Told::count, "stations",
     [](T t) { return as_span(t.stations); },
     [](R r) {
       return short_words(Told::hours, r.totals.copy_hours_per_day) + " / " +
              short_number(r.totals.station_hours_per_day, 1) +
              " h of one station, rounded up; one more for each unit that is elsewhere";
     }},
    {"totals.tape_hours", "Writing and checking tapes", Told::hours, "",
     [](T t) { return t.tape_hours; },
     [](R r) {
       return sum_of_parts(r.parts, Told::hours, [](const PartReport& p) { return p.tape_hours; });
     }},
    {"totals.upload_total_bytes", "Uploaded in all", Told::bytes, "",
     [](T t) { return t.upload_total_bytes; },
     [](R r) {
       return sum_of_parts(r.parts, Told::bytes,
                           [](const PartReport& p) { return p.upload_total_bytes; });
     }},
    {"totals.upload_hours_per_day", "Upload, on the day with most", Told::hours, "",
     [](T t) { return t.upload_hours_per_day; },
     [](R) { return std::string("bits uploaded that day over the speed of the line"); }},
    {"totals.film_feet", "Film", Told::feet, "",
     [](T t) {
       return Span{t.film_feet, t.film_feet};
     },
     [](R r) {
       return sum_of_parts(r.parts, Told::feet, [](const PartReport& p) {
         return Span{p.film_feet, p.film_feet};
       });
     }},
});

struct PartRow {
  std::string_view key;
  std::string_view label;
  Told told;
  std::string_view counted;
  Span (*read)(const PartReport&);
};

using P = const PartReport&;

constexpr auto kParts = std::to_array<PartRow>({
    {"days", "Days", Told::count, "days", [](P p) { return as_span(p.days); }},
    {"cameras", "Cameras", Told::count, "cameras", [](P p) { return as_span(p.cameras); }},
    {"recorded_hours_per_day", "Recorded a day, each camera", Told::hours, "",
     [](P p) {
       return Span{p.recorded_hours_per_day, p.recorded_hours_per_day};
     }},
    {"bytes_per_day", "A day", Told::bytes, "", [](P p) { return p.bytes_per_day; }},
    {"total_bytes", "In all", Told::bytes, "", [](P p) { return p.total_bytes; }},
    {"copies_total_bytes", "All copies", Told::bytes, "", [](P p) { return p.copies_total_bytes; }},
    {"cards_per_day", "Cards a day, each camera", Told::count, "cards",
     [](P p) { return as_span(p.cards_per_day); }},
    {"cards_in_rotation", "Cards for each camera, held and spare with them", Told::count, "cards",
     [](P p) { return as_span(p.cards_in_rotation); }},
    {"cards_to_have", "Cards to have", Told::count, "cards",
     [](P p) { return as_span(p.cards_to_have); }},
    {"copy_hours_per_day", "Copying a day, each unit", Told::hours, "",
     [](P p) { return p.copy_hours_per_day; }},
    {"drives", "Drives, kept on its own", Told::count, "drives",
     [](P p) { return as_span(p.drives); }},
    {"tapes", "Tapes, kept on its own", Told::count, "tapes", [](P p) { return as_span(p.tapes); }},
    {"tape_hours", "Writing and checking tapes", Told::hours, "", [](P p) { return p.tape_hours; }},
    {"upload_hours_per_day", "Upload a day", Told::hours, "",
     [](P p) { return p.upload_hours_per_day; }},
    {"film_feet", "Film", Told::feet, "",
     [](P p) {
       return Span{p.film_feet, p.film_feet};
     }},
});

ShowFigure figure_of(std::string_view key, std::string_view label, Told told,
                     std::string_view counted, Span value) {
  Words words = words_of(told, value, counted);
  return {.key = key,
          .label = label,
          .text = std::move(words.text),
          .unit = std::move(words.unit),
          .value = value,
          .value_unit = words.value_unit,
          .working = {}};
}

std::string day_list(const ShowReport& report, const std::vector<std::int64_t>& days) {
  constexpr std::size_t kShown = 4;
  std::string text;
  for (std::size_t i = 0; i < days.size() && i < kShown; ++i) {
    text += (i == 0 ? "" : "; ") + on_day(report, days[i]);
  }
  if (days.size() > kShown) {
    text += "; and " + std::to_string(days.size() - kShown) + " more, the last on " +
            on_day(report, days.back());
  }
  return text;
}

std::string counted(std::int64_t count, const std::string& one) {
  return std::to_string(count) + " " + one + (count == 1 ? "" : "s");
}

std::string kept(Keeping keeping) {
  return keeping == Keeping::shared ? "all parts of one model together" : "each part on its own";
}

}  // namespace

std::string with_unit(const ShowFigure& figure) {
  return figure.unit.empty() ? figure.text : figure.text + " " + figure.unit;
}

std::vector<ShowFigure> show_figures(const ShowReport& report) {
  std::vector<ShowFigure> figures;
  figures.reserve(kTotals.size());
  for (const TotalRow& row : kTotals) {
    const Span value = row.read(report.totals);
    const bool without = row.told != Told::bytes && value.most == 0;
    if (without) continue;
    ShowFigure& figure =
        figures.emplace_back(figure_of(row.key, row.label, row.told, row.counted, value));
    figure.working = row.working(report);
  }
  return figures;
}

std::vector<ShowFigure> part_figures(const PartReport& part) {
  std::vector<ShowFigure> figures;
  figures.reserve(kParts.size());
  for (const PartRow& row : kParts) {
    figures.push_back(figure_of(row.key, row.label, row.told, row.counted, row.read(part)));
  }
  return figures;
}

std::vector<Assumption> show_assumptions(const Show& show, const ShowReport& report) {
  std::vector<Assumption> rows;
  for (std::size_t i = 0; i < report.parts.size(); ++i) {
    const PartReport& part = report.parts[i];
    const Plan& plan = show.parts[i].plan;
    const Shooting& shooting = plan.shooting;
    const bool hours = shooting.by == ShootingBy::recorded_hours;
    rows.push_back(
        {part.name,
         std::to_string(part.days) + (part.days == 1 ? " day, " : " days from ") +
             on_day(report, part.first_day) + "; " + std::to_string(part.units) + " × " +
             counted(shooting.cameras_per_unit, "camera") + "; " +
             (hours ? short_number(shooting.recorded_hours_per_day, 2) + " h a day and camera"
                    : short_number(shooting.script_minutes, 1) + " min at " +
                          short_number(shooting.shooting_ratio, 1) + "∶1") +
             "; " + std::to_string(plan.store.drive_copies) + " copies on drives, " +
             std::to_string(part.copies - plan.store.drive_copies) + " on tape"});
    rows.push_back({part.name + ", format", part.format});
    if (!part.no_cards) {
      rows.push_back({part.name + ", cards",
                      part.card + "; held " + short_number(part.hold_hours, 1) + " h; " +
                          std::to_string(part.spare_cards) + " spare for each camera"});
    }
  }
  rows.push_back({"Drives are kept", kept(show.archive.drives)});
  rows.push_back({"Tapes are kept", kept(show.archive.tapes)});
  rows.push_back({"A copying station works",
                  short_number(show.archive.station_hours_per_day, 1) + " h a day"});
  if (show.archive.upload_megabits_per_s) {
    rows.push_back({"One line for all parts",
                    short_number(*show.archive.upload_megabits_per_s, 2) + " Mbit/s"});
  }
  return rows;
}

std::string money_text(Span cost, std::string_view currency) {
  return dashed(grouped(cost.least), grouped(cost.most)) + " " + std::string(currency);
}

std::string short_quantity(const MoneyLine& line) {
  return dashed(hours(line.quantity.least), hours(line.quantity.most)) + " " +
         counted_as(line.unit, line.quantity);
}

std::string price_text(const Price& price) {
  if (!price.amount) return "no price";
  const double amount = *price.amount;
  const bool whole = amount == std::trunc(amount);
  std::string text = (whole ? grouped(amount) : print_fixed(amount, 2)) + " " + price.currency;
  if (!price.date.empty()) text += ", " + price.date;
  if (!price.source.empty()) text += ", " + price.source;
  if (price.invented && price.source.find("invented") == std::string::npos) text += ", invented";
  return text;
}

std::string full_days_text(const ShowReport& report, const MediaSet& set) {
  if (set.full_days.empty()) return "not full before the last day";
  return day_list(report, set.full_days);
}

}  // namespace widegate
