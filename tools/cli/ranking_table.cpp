#include "tools/cli/ranking_table.h"

#include <algorithm>
#include <cstdint>

#include "core/base/number_text.h"
#include "core/choose/binding.h"
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
  std::string score, front, area, pixels, raster, scale, rate, data;
};

std::string line_of(const FigureLine& cells) {
  return std::string(kPlaceWidth, ' ') + right(cells.score, 6) + right(cells.front, 7) +
         right(cells.area, 8) + right(cells.pixels, 7) + right(cells.raster, 12) +
         right(cells.scale, 9) + right(cells.rate, 9) + right(cells.data, 11);
}

void add_figure_heads(TextTable& table) {
  table.line(line_of({.score = "score",
                      .front = "Pareto",
                      .area = "area",
                      .pixels = "true",
                      .raster = "recorded",
                      .scale = "enlarged",
                      .rate = "up to",
                      .data = "data rate"}));
  table.line(line_of({.score = "",
                      .front = "front",
                      .area = "mm2",
                      .pixels = "MP",
                      .raster = "pixels",
                      .scale = "times",
                      .rate = "fps",
                      .data = "Mbit/s"}));
}

std::string figures_text(const RankedFormat& format) {
  constexpr double kMega = 1e-6;
  const FormatFigures& figures = format.figures;
  const auto& ceiling = figures.rate_ceiling;
  return line_of(
      {.score = format.accepted ? print_fixed(format.score, 3) : "",
       .front = format.on_pareto_front ? "yes" : "",
       .area = print_fixed(format.picture.area_mm2, 1),
       .pixels = print_fixed(format.picture.true_pixels * kMega, 2),
       .raster = std::to_string(figures.recorded_width_pixels) + "x" +
                 std::to_string(figures.recorded_height_pixels),
       .scale = print_fixed(figures.upscaling.scale, 3),
       .rate = ceiling ? print_fixed(ceiling->to_double(), 2) : "any",
       .data = figures.bytes_per_s ? print_fixed(8 * kMega * figures.bytes_per_s->most, 1) : "-"});
}

std::string ids_text(const FormatChoice& format) {
  return format.camera + " / " + format.mode + " / " + format.recording + " / " + format.codec;
}

void add_cautions(TextTable& table, Cautions cautions) {
  for_each_caution(cautions, [&table](Caution caution) {
    table.marked("  caution", caution_info(caution).words);
  });
}

void add_reasons(TextTable& table, const RankedFormat& format, const std::vector<Change>& changes) {
  for_each_asked(format.figures.findings, [&](Requirement requirement, const Finding& finding) {
    if (finding.missed()) table.marked("  fails", reason_text(requirement, finding));
  });
  for (const Change& change : changes) table.marked("  change", change_text(change));
  if (changes.empty()) table.marked("  change", "no single one is enough");
  table.line("");
}

std::string counted(std::size_t formats) {
  return print_grouped(static_cast<std::int64_t>(formats));
}

/// What binds when nothing passes, and what would let something pass.
void add_binding(TextTable& table, const Ranking& ranking, std::span<const WayOut> ways) {
  constexpr std::size_t kMostShown = 6;
  const auto bindings = what_binds(ranking.formats);
  table.section("Nothing passes. What binds");
  for (std::size_t i = 0; i < std::min(kMostShown, bindings.size()); ++i) {
    const Binding& binding = bindings[i];
    table.row(binding.label(), counted(binding.would_pass) + " would pass without it; " +
                                   counted(binding.missed_by) + " miss it");
  }
  if (ways.empty()) return table.paragraph("No single change lets anything pass.");
  table.section("Smallest changes that let something pass");
  for (const WayOut& way : ways) {
    table.marked("  change", change_text(way.change) + ": " + counted(way.would_pass) +
                                 " pass, first " + ids_text(way.format));
  }
}

/// The weights of a named set are not the plan's.
bool is_asked_for(const Plan& plan, const FieldInfo& field) {
  if (field.pointer.starts_with("/choose/weight_") && plan.choose.weights != WeightSet::own) {
    return false;
  }
  return field.pointer.starts_with("/choose/") || field.pointer.starts_with("/commission/") ||
         field.pointer == "/run/sensor_rate";
}

/// The plan's value of a field in words.
std::string value_in_words(const Plan& plan, const FieldInfo& field) {
  const std::string text = field_text(plan, field.pointer);
  if (field.kind == FieldKind::flag) return text == "true" ? "yes" : "no";
  for (const ChoiceName& choice : field.choices) {
    if (choice.token == text) return std::string(choice.label);
  }
  if (text.empty()) {
    return field.ids == IdList::commission ? "Follows the deliverable" : "";
  }
  const auto number = parse_rational(text);
  const bool count = field.kind == FieldKind::whole && number;
  const std::string unit = field.unit.empty() ? "" : " " + std::string(field.unit);
  return (count ? print_grouped(number->num()) : text) + unit;
}

void add_question(TextTable& table, const Plan& plan) {
  table.section("Asked for");
  for (const FieldInfo& field : plan_fields()) {
    if (!is_asked_for(plan, field)) continue;
    const std::string words = value_in_words(plan, field);
    if (!words.empty()) table.row(field.label, words);
  }
}

}  // namespace

std::string ranking_table(const Plan& plan, const Ranking& ranking,
                          std::span<const std::string> above, std::span<const RankedFormat> shown,
                          std::span<const std::vector<Change>> changes,
                          std::span<const WayOut> ways) {
  TextTable table;
  for (const std::string& line : above) table.paragraph(line);
  add_question(table, plan);
  if (ranking.accepted == 0) add_binding(table, ranking, ways);
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
    if (format.accepted) {
      add_cautions(table, format.figures.cautions);
    } else {
      add_reasons(table, format, changes[i]);
    }
  }
  if (shown.size() < ranking.formats.size()) {
    table.section("Not all are listed: --limit sets how many, --rejected lists the others.");
  }
  return table.str();
}

}  // namespace widegate::cli
