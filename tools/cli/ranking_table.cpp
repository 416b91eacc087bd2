#include "tools/cli/ranking_table.h"

#include <algorithm>
#include <cstdint>

#include "core/base/number_text.h"
#include "core/plan/plan_fields.h"
#include "tools/cli/text_table.h"

namespace widegate::cli {
namespace {

constexpr std::size_t kPlaceWidth = 6;

std::string right(std::string_view text, std::size_t width) {
  return std::string(width - std::min(width, text.size()), ' ') + std::string(text);
}

/// The figures of one format, or the two lines above them.
struct FigureLine {
  std::string score, front, area, pixels, rate, data, minutes;
};

std::string line_of(const FigureLine& cells) {
  return std::string(kPlaceWidth + 2, ' ') + right(cells.score, 6) + right(cells.front, 7) +
         right(cells.area, 9) + right(cells.pixels, 8) + right(cells.rate, 11) +
         right(cells.data, 13) + right(cells.minutes, 12);
}

void add_figure_heads(TextTable& table) {
  table.line(line_of({.score = "score",
                      .front = "Pareto",
                      .area = "area",
                      .pixels = "frame",
                      .rate = "up to",
                      .data = "data rate",
                      .minutes = "on a card"}));
  table.line(line_of({.score = "",
                      .front = "front",
                      .area = "mm2",
                      .pixels = "MP",
                      .rate = "fps",
                      .data = "Mbit/s",
                      .minutes = "min"}));
}

std::string figures_text(const RankedFormat& format) {
  constexpr double kMega = 1e-6;
  const FormatFigures& figures = format.figures;
  const auto& ceiling = figures.rate_ceiling;
  return line_of(
      {.score = format.accepted ? print_fixed(format.score, 3) : "",
       .front = format.on_pareto_front ? "yes" : "",
       .area = print_fixed(figures.frame_area_mm2, 1),
       .pixels = print_fixed(figures.frame_photosites * kMega, 2),
       .rate = ceiling ? print_fixed(ceiling->to_double(), 2) : "any",
       .data = figures.bytes_per_s ? print_fixed(8 * kMega * figures.bytes_per_s->most, 1) : "-",
       .minutes =
           figures.minutes_per_card ? print_fixed(figures.minutes_per_card->least, 1) : "-"});
}

std::string ids_text(const FormatChoice& format) {
  return format.camera + " / " + format.mode + " / " + format.recording + " / " + format.codec;
}

void add_reasons(TextTable& table, const RankedFormat& format, const std::vector<Change>& changes) {
  for (std::size_t i = 0; i < format.figures.findings.size(); ++i) {
    const Finding& finding = format.figures.findings[i];
    if (!finding.met) table.marked("  fails", reason_text(static_cast<Requirement>(i), finding));
  }
  for (const Change& change : changes) table.marked("  change", change_text(change));
  if (changes.empty()) table.marked("  change", "no single one is enough");
  table.line("");
}

bool is_asked_for(const FieldInfo& field) {
  return field.pointer.starts_with("/choose/") || field.pointer.starts_with("/mandate/") ||
         field.pointer == "/run/sensor_rate";
}

/// The plan's value of a field in words.
std::string value_in_words(const Plan& plan, const FieldInfo& field) {
  const std::string text = field_text(plan, field.pointer);
  if (field.kind == FieldKind::flag) return text == "true" ? "yes" : "no";
  for (const ChoiceName& choice : field.choices) {
    if (choice.token == text) return std::string(choice.label);
  }
  const auto number = parse_rational(text);
  const bool count = field.kind == FieldKind::whole && number;
  const std::string unit = field.unit.empty() ? "" : " " + std::string(field.unit);
  return (count ? print_grouped(number->num()) : text) + unit;
}

void add_question(TextTable& table, const Plan& plan, const Ranking& ranking) {
  const auto count = [](std::size_t formats) {
    return print_grouped(static_cast<std::int64_t>(formats));
  };
  const std::size_t considered = ranking.formats.size();
  table.paragraph(count(considered) + " formats: " + count(ranking.accepted) + " accepted, " +
                  count(considered - ranking.accepted) + " rejected");
  table.section("Asked for");
  for (const FieldInfo& field : plan_fields()) {
    if (is_asked_for(field)) table.row(field.label, value_in_words(plan, field));
  }
  if (!ranking.cover_known) {
    table.row("Image circle", "not known: cover rejects nothing. Ask the maker or test the lens.");
  }
}

}  // namespace

std::string ranking_table(const Plan& plan, const Ranking& ranking,
                          std::span<const RankedFormat> shown,
                          std::span<const std::vector<Change>> changes) {
  TextTable table;
  add_question(table, plan, ranking);
  if (!shown.empty()) {
    table.section(shown.front().accepted ? "Accepted, best first" : "Rejected");
    add_figure_heads(table);
  }
  for (std::size_t i = 0; i < shown.size(); ++i) {
    const RankedFormat& format = shown[i];
    if (i > 0 && !format.accepted && shown[i - 1].accepted) table.section("Rejected");
    const std::string place = format.accepted ? std::to_string(i + 1) : "-";
    table.marked(right(place, kPlaceWidth), ids_text(format.format));
    table.line(figures_text(format));
    if (!format.accepted) add_reasons(table, format, changes[i]);
  }
  if (shown.size() < ranking.formats.size()) {
    table.section("Not all are listed: --limit sets how many, --rejected lists the others.");
  }
  return table.str();
}

}  // namespace widegate::cli
