// widegate show SHOW.json: what several plans come to together, as a table or as JSON.
#include "core/handover/json/report_json.h"
#include "core/report/notes.h"
#include "core/show/one_more.h"
#include "core/show/show_figures.h"
#include "core/show/show_notes.h"
#include "tools/cli/files.h"
#include "tools/cli/show_source.h"
#include "tools/cli/text_table.h"
#include "tools/cli/verb.h"

namespace widegate::cli {
namespace {

void add_parts(TextTable& table, const ShowReport& report) {
  for (const PartReport& part : report.parts) {
    table.section(part.name);
    table.row("Format", part.format);
    for (const ShowFigure& figure : part_figures(part)) {
      if (figure.value.most > 0) table.row(figure.label, with_unit(figure));
    }
    if (!part.rotation_sustainable) table.row("Cards", "copying never keeps up");
    if (!part.accepted) table.row("Commission", "missed: see this part's own plan");
  }
}

void add_totals(TextTable& table, const ShowReport& report) {
  table.section("The show");
  for (const ShowFigure& figure : show_figures(report)) {
    table.row(figure.label, with_unit(figure));
    if (!figure.working.empty()) table.row("", "= " + figure.working);
  }
}

void add_media(TextTable& table, const ShowReport& report) {
  table.section("Drives and tapes");
  for (const MediaSet& set : report.media) {
    table.row(set.name + " (" + set.parts + ")",
              std::to_string(set.media.most) + "; full on " + full_days_text(report, set));
  }
  for (const CardKind& kind : report.cards) {
    table.row(kind.name, std::to_string(kind.to_have.most) + " to have, " +
                             std::to_string(kind.at_once.most) + " out at once");
  }
}

void add_money(TextTable& table, const MoneyReport& money) {
  table.section("Money, as it was entered");
  for (const MoneyLine& line : money.lines) {
    if (!line.price.amount || line.quantity.most == 0) continue;
    table.row(line.part.empty() ? line.name : line.name + ", " + line.part,
              money_text(line.cost, line.price.currency) + " = " + short_quantity(line) + " · " +
                  price_text(line.price));
  }
  for (const MoneySum& sum : money.sums) {
    table.row("Sum", money_text(sum.cost, sum.currency) + (sum.invented ? ", invented" : ""));
  }
  if (money.sums.empty()) table.row("Sum", "no prices yet");
  for (const std::string& name : money.missing) table.row("No price", name);
}

std::string show_table(const LoadedShow& loaded) {
  const ShowReport& report = loaded.report;
  TextTable table;
  table.paragraph(loaded.show.title);
  add_totals(table, report);
  add_parts(table, report);
  add_media(table, report);
  add_money(table, report.money);
  table.section("What a little more costs");
  for (const ShowDifference& one : differences_of_one_more(loaded.show, report, loaded.library)) {
    table.row(report.parts[one.part].name + ": " + std::string(one_more_words(one.change)),
              difference_text(one));
  }
  table.section("What it rests on");
  for (const Assumption& row : show_assumptions(loaded.show, report)) {
    table.row(row.label, row.text);
  }
  table.section("Verdicts");
  for (const ShowNote& note : report.notes) table.marked(severity_key(note.severity), note.text);
  table.marked("always", show_standing_text());
  return table.str();
}

}  // namespace

Action set_up_show(Command& command) {
  struct Options {
    std::shared_ptr<ShowSource> source;
    bool json = false;
    bool strict = false;
  };
  auto options = std::make_shared<Options>();
  options->source = ShowSource::add_to(command);
  command.add_flag("--json", options->json, "Print the report as JSON");
  command.add_flag("--strict", options->strict, "Exit with 1 when a part misses a requirement");
  return [options] {
    const auto loaded = options->source->load();
    if (!loaded) return ExitCode::bad_input;
    const std::string text =
        options->json ? show_report_to_json(loaded->report) + "\n" : show_table(*loaded);
    if (!write_text("-", text)) return ExitCode::bad_input;
    bool met = true;
    for (const PartReport& part : loaded->report.parts) met = met && part.accepted;
    return options->strict && !met ? ExitCode::requirement_failed : ExitCode::fine;
  };
}

}  // namespace widegate::cli
