#include "core/handover/table/show_csv.h"

#include <cmath>
#include <string_view>

#include "core/encode/csv.h"
#include "core/report/notes.h"
#include "core/show/show_figures.h"
#include "core/show/show_notes.h"

namespace widegate {
namespace {

/// Six digits are more than anybody orders by; counts stay whole.
double sensible(double value) {
  if (value == std::round(value) && std::abs(value) < 1e6) return value;
  const double scale = std::pow(10, 5 - std::floor(std::log10(std::abs(value))));
  return std::round(value * scale) / scale;
}

/// Bytes are told in TB, which spreadsheets and people can read.
struct Told {
  double factor;
  std::string_view unit;
};
Told told(const ShowFigure& figure) {
  if (figure.value_unit == "bytes") return {1e-12, "TB"};
  return {1, figure.value_unit.empty() ? std::string_view(figure.unit) : figure.value_unit};
}

class Table {
 public:
  Table() {
    for (const char* name : {"what", "of", "least", "most", "unit", "note"}) csv_.text(name);
    csv_.end_row();
  }

  void words(std::string_view what, std::string_view of, std::string_view note) {
    csv_.text(what).text(of).empty().empty().empty().text(note).end_row();
  }
  void numbers(std::string_view what, std::string_view of, Span value, std::string_view unit,
               std::string_view note) {
    csv_.text(what).text(of).number(sensible(value.least)).number(sensible(value.most));
    csv_.text(unit).text(note).end_row();
  }
  void figure(const ShowFigure& figure, std::string_view of) {
    const Told unit = told(figure);
    const Span value = {figure.value.least * unit.factor, figure.value.most * unit.factor};
    numbers(figure.label, of, value, unit.unit, figure.working);
  }
  [[nodiscard]] const std::string& str() const { return csv_.str(); }

 private:
  CsvWriter csv_;
};

Span as_span(ByteRange range) {
  return {static_cast<double>(range.least), static_cast<double>(range.most)};
}

std::string with_id(const std::string& name, const std::string& id) {
  return name + " (" + id + ")";
}

void add_models(Table& table, const ShowReport& report) {
  for (const CardKind& kind : report.cards) {
    const std::string of = with_id(kind.name, kind.id);
    table.numbers("Cards to have", of, as_span(kind.to_have), "cards", "");
    table.numbers("Cards out at once", of, as_span(kind.at_once), "cards", "");
  }
  for (const MediaSet& set : report.media) {
    table.numbers(set.tape ? "Tapes" : "Drives", with_id(set.name, set.id), as_span(set.media),
                  set.tape ? "tapes" : "drives",
                  set.parts + "; full on " + full_days_text(report, set));
  }
}

void add_money(Table& table, const MoneyReport& money) {
  for (const MoneyLine& line : money.lines) {
    if (!line.price.amount || line.quantity.most == 0) continue;
    table.numbers("Cost: " + line.name, line.part, line.cost, line.price.currency,
                  short_quantity(line) + " at " + price_text(line.price));
  }
  for (const MoneySum& sum : money.sums) {
    table.numbers("Cost in all", "", sum.cost, sum.currency, sum.invented ? "invented" : "");
  }
  for (const std::string& name : money.missing) table.words("No price", name, "in no sum");
}

}  // namespace

std::string show_to_csv(const Show& show, const ShowReport& report) {
  Table table;
  table.words("Show", show.title, "");
  for (const Assumption& row : show_assumptions(show, report)) {
    table.words("Rests on", row.label, row.text);
  }
  for (const ShowFigure& figure : show_figures(report)) table.figure(figure, "the show");
  for (const PartReport& part : report.parts) {
    for (const ShowFigure& figure : part_figures(part)) {
      if (figure.value.most > 0) table.figure(figure, part.name);
    }
  }
  add_models(table, report);
  add_money(table, report.money);
  for (const ShowNote& note : report.notes) {
    table.words("Note", severity_key(note.severity), note.text);
  }
  table.words("Note", "always", show_standing_text());
  return table.str();
}

std::string show_days_to_csv(const ShowReport& report) {
  constexpr double kTerabytes = 1e-12;
  CsvWriter csv;
  csv.text("shooting day").text("date").text("footage, TB");
  for (const PartReport& part : report.parts) csv.text(part.name + ", TB");
  csv.text("footage so far, TB").text("all copies so far, TB");
  csv.text("copying, h").text("upload, h").text("drives so far").text("tapes so far");
  for (const MoneySum& sum : report.money.sums) {
    csv.text("money so far, " + sum.currency + (sum.invented ? ", invented" : ""));
  }
  csv.end_row();
  std::int64_t number = 0;
  for (const ShowDay& day : report.days) {
    csv.whole(++number).text(day.date).number(sensible(day.bytes.most * kTerabytes));
    for (const Span& bytes : day.part_bytes) csv.number(sensible(bytes.most * kTerabytes));
    csv.number(sensible(day.bytes_so_far.most * kTerabytes));
    csv.number(sensible(day.copies_so_far_bytes.most * kTerabytes));
    csv.number(sensible(day.copy_hours.most)).number(sensible(day.upload_hours.most));
    csv.whole(day.drives_so_far.most).whole(day.tapes_so_far.most);
    for (const Span& money : day.money_so_far) csv.number(std::round(money.most * 100) / 100);
    csv.end_row();
  }
  return csv.str();
}

}  // namespace widegate
