#include "core/report/differences.h"

#include <array>
#include <cmath>
#include <cstddef>

#include "core/report/figure_text.h"

namespace widegate {
namespace {

/// Where a figure comes from and how it is rounded.
struct FigureRow {
  std::string_view key, label, unit;
  int decimals;
  Span (*value)(const Report&);
};

Span one(double value) { return {value, value}; }

constexpr std::array kRows = {
    FigureRow{"mode.width_mm", "Mode, width", "mm", 2,
              [](const Report& r) { return one(r.mode.width_mm); }},
    FigureRow{"mode.height_mm", "Mode, height", "mm", 2,
              [](const Report& r) { return one(r.mode.height_mm); }},
    FigureRow{"mode.diagonal_mm", "Image circle needed", "mm", 2,
              [](const Report& r) { return one(r.mode.diagonal_mm); }},
    FigureRow{"see.horizontal_fov_deg", "Field of view", "°", 1,
              [](const Report& r) { return one(r.see.horizontal_fov_deg); }},
    FigureRow{"see.width_at_focus_m", "Frame at the focus", "m", 2,
              [](const Report& r) { return one(r.see.width_at_focus_m); }},
    FigureRow{"headline.frame_megapixels", "Frame line", "MP", 2,
              [](const Report& r) { return one(r.headline.frame_megapixels); }},
    FigureRow{
        "resolve.recorded_width_pixels", "Recorded, width", "px", 0,
        [](const Report& r) { return one(static_cast<double>(r.resolve.recorded_width_pixels)); }},
    FigureRow{"headline.minutes_per_card", "On a card", "min", 1,
              [](const Report& r) { return r.headline.minutes_per_card; }},
    FigureRow{"headline.data_rate_megabits_per_s", "Data rate", "Mbit/s", 0,
              [](const Report& r) { return r.headline.data_rate_megabits_per_s; }},
};

/// Behind the field of view.
constexpr std::ptrdiff_t kSameViewPlace = 4;

std::string words(Span value, int decimals) {
  const std::string least = short_number(value.least, decimals);
  const std::string most = short_number(value.most, decimals);
  return least == most ? least : least + "–" + most;
}

std::string change_words(double first, double second) {
  constexpr double kSame = 0.0005;
  if (!(first > 0)) return {};
  const double share = second / first - 1;
  if (std::abs(share) < kSame) return "the same";
  const double percent = 100 * std::abs(share);
  return (share > 0 ? "+" : "−") + short_number(percent, percent < 10 ? 1 : 0) + " %";
}

/// The first's focal length beside the one that sees as much on the second's mode.
Difference same_view(const Report& first, const Report& second) {
  constexpr int kDecimals = 1;
  const double here = first.see.focal_mm;
  const double there = here * second.see.matched_extent_mm / first.see.matched_extent_mm;
  return {"see.focal_mm",
          "Focal length, same view",
          "mm",
          words(one(here), kDecimals),
          words(one(there), kDecimals),
          change_words(here, there)};
}

}  // namespace

std::vector<Difference> differences(const Report& first, const Report& second) {
  std::vector<Difference> rows;
  if (!first.problems.empty() || !second.problems.empty()) return rows;
  for (const FigureRow& row : kRows) {
    const Span a = row.value(first);
    const Span b = row.value(second);
    rows.push_back({row.key, row.label, row.unit, words(a, row.decimals), words(b, row.decimals),
                    change_words(a.least, b.least)});
  }
  rows.insert(rows.begin() + kSameViewPlace, same_view(first, second));
  return rows;
}

}  // namespace widegate
