#include "core/report/told_figure.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/base/number_text.h"
#include "core/report/figure_text.h"
#include "core/report/flat_figures.h"
#include "core/report/working.h"

namespace widegate {
namespace {

/// Decimals that matter in a unit.
struct UnitRow {
  std::string_view unit;
  int decimals;
};
constexpr auto kUnits = std::to_array<UnitRow>({
    {"°", 1},
    {"mm", 2},
    {"m", 2},
    {"µm", 2},
    {"×", 3},
    {"∶1", 3},
    {"%", 1},
    {"MP", 2},
    {"photosites", 1},
    {"px", 1},
    {"fps", 3},
    {"Mbit/s", 0},
    {"stops", 2},
    {"h", 1},
    {"GiB", 0},
    {"ft", 1},
});

/// Figures that are yes or no have no formula to be named by.
struct FlagRow {
  std::string_view key, label;
};
constexpr auto kFlags = std::to_array<FlagRow>({
    {"cover.mode.covered", "The mode is covered"},
    {"cover.protected.covered", "The protected area is covered"},
    {"cover.frame.covered", "The frame line is covered"},
    {"commission.met", "The commission is met"},
    {"resolve.mandate.met", "Enough photosites"},
    {"run.flicker.safe", "Steady under these lights"},
    {"run.flicker.bands", "Bands across the picture"},
    {"store.card_guaranteed", "The card's speed is guaranteed"},
});

/// Decimals for about four digits in all.
int decimals_of(double value) {
  constexpr int kMost = 9;
  if (value == 0) return 0;
  const int before = static_cast<int>(std::floor(std::log10(std::abs(value)))) + 1;
  return std::clamp(4 - before, 0, kMost);
}

std::string plain_text(double value, int decimals) {
  constexpr double kGroupFrom = 10'000;
  constexpr double kGroupTo = 9e15;
  const double size = std::abs(value);
  // A small number shows its first three digits, unless it is the trace of a sum.
  constexpr double kSmall = 0.1;
  constexpr double kTrace = 1e-6;
  if (size < kSmall && size > kTrace) decimals = std::max(decimals, decimals_of(value) - 1);
  if (size >= kGroupFrom && size < kGroupTo) return print_grouped(std::llround(value));
  return short_number(value, decimals);
}

/// "covers_mode" -> "Covers mode"
std::string words_of(std::string_view key) {
  std::string words(key.substr(key.rfind('.') + 1));
  std::replace(words.begin(), words.end(), '_', ' ');
  if (!words.empty() && words.front() >= 'a' && words.front() <= 'z') {
    words.front() = static_cast<char>(words.front() - 'a' + 'A');
  }
  return words;
}

ToldFigure told_text(std::string_view key, const std::string& text) {
  ToldFigure told{.label = words_of(key), .text = text, .unit = {}};
  const auto row = std::find_if(kFlags.begin(), kFlags.end(),
                                [&](const FlagRow& flag) { return flag.key == key; });
  if (row != kFlags.end()) told.label = row->label;
  if (text == "true" || text == "false") told.text = text == "true" ? "yes" : "no";
  return told;
}

bool is_money(std::string_view key) {
  return key.starts_with("store.") && (key.ends_with("_cost") || key == "store.cost");
}

}  // namespace

ToldNumber told_number(Span value, std::string_view unit) {
  if (unit == "bytes") {
    ScaledBytes scaled = scaled_bytes(value);
    return {std::move(scaled.text), std::string(scaled.unit)};
  }
  if (unit == "min") {
    ScaledTime scaled = scaled_minutes(value, 1);
    return {std::move(scaled.text), std::string(scaled.unit)};
  }
  const auto row = std::find_if(kUnits.begin(), kUnits.end(),
                                [&](const UnitRow& each) { return each.unit == unit; });
  const auto text = [&](double number) {
    return plain_text(number, row != kUnits.end() ? row->decimals : decimals_of(number));
  };
  std::string least = text(value.least);
  const std::string most = text(value.most);
  if (least != most) least += "–" + most;
  return {std::move(least), std::string(unit)};
}

std::optional<ToldFigure> told_figure(const Plan& plan, const Report& report,
                                      std::string_view key) {
  for (const Reading& reading : readings(plan, report)) {
    if (reading.key != key || reading.pair) continue;
    return ToldFigure{std::string(reading.label), reading.text, std::string(reading.unit)};
  }
  const std::vector<Figure> figures = figures_of(report);
  const Figure* figure = find_figure(figures, key);
  if (figure == nullptr) return std::nullopt;
  if (figure->text() != nullptr) return told_text(key, *figure->text());
  const auto working = working_of(report, key);
  ToldNumber number = told_number(*figure->number(), working ? working->unit : std::string());
  if (is_money(key)) number.unit = plan.store.currency;
  return ToldFigure{working ? working->title : words_of(key), std::move(number.text),
                    std::move(number.unit)};
}

}  // namespace widegate
