#include "core/handover/table/ranking_csv.h"

#include <optional>
#include <string_view>

#include "core/encode/csv.h"

namespace widegate {
namespace {

constexpr std::string_view kColumns[] = {
    "place",
    "accepted",
    "camera",
    "mode",
    "recording",
    "codec",
    "score",
    "on_pareto_front",
    "frame_area_mm2",
    "frame_megapixels",
    "rate_ceiling_fps",
    "data_rate_least_megabits_per_s",
    "data_rate_most_megabits_per_s",
    "minutes_per_card_least",
    "minutes_per_card_most",
};

std::string margin_column(const RequirementInfo& info) {
  std::string name = "margin_" + std::string(info.key);
  if (!info.unit_key.empty()) (name += '_') += info.unit_key;
  return name;
}

void add_header(CsvWriter& csv) {
  for (const std::string_view column : kColumns) csv.text(column);
  for (std::size_t i = 0; i < kRequirementCount; ++i) {
    csv.text(margin_column(requirement_info(static_cast<Requirement>(i))));
  }
  csv.text("failed").end_row();
}

void add_span(CsvWriter& csv, const std::optional<Span>& span, double scale) {
  if (span) {
    csv.number(span->least * scale).number(span->most * scale);
  } else {
    csv.empty().empty();
  }
}

void add_figures(CsvWriter& csv, const FormatFigures& figures) {
  constexpr double kMega = 1e-6;
  csv.number(figures.frame_area_mm2).number(figures.frame_photosites * kMega);
  if (figures.rate_ceiling) {
    csv.number(figures.rate_ceiling->to_double());
  } else {
    csv.empty();
  }
  add_span(csv, figures.bytes_per_s, 8 * kMega);
  add_span(csv, figures.minutes_per_card, 1);
}

void add_margins(CsvWriter& csv, const Findings& findings) {
  std::string failed;
  for (std::size_t i = 0; i < findings.size(); ++i) {
    const auto requirement = static_cast<Requirement>(i);
    if (findings[i].applies) {
      csv.number(margin(requirement, findings[i]));
    } else {
      csv.empty();
    }
    if (findings[i].met) continue;
    if (!failed.empty()) failed += ' ';
    failed += requirement_info(requirement).key;
  }
  csv.text(failed);
}

void add_row(CsvWriter& csv, const RankedFormat& format, std::size_t place) {
  const FormatChoice& ids = format.format;
  if (format.accepted) {
    csv.whole(static_cast<std::int64_t>(place)).text("yes");
  } else {
    csv.empty().text("no");
  }
  csv.text(ids.camera).text(ids.mode).text(ids.recording).text(ids.codec);
  if (format.accepted) {
    csv.number(format.score).text(format.on_pareto_front ? "yes" : "no");
  } else {
    csv.empty().empty();
  }
  add_figures(csv, format.figures);
  add_margins(csv, format.figures.findings);
  csv.end_row();
}

}  // namespace

std::string ranking_to_csv(std::span<const RankedFormat> shown) {
  CsvWriter csv;
  add_header(csv);
  for (std::size_t i = 0; i < shown.size(); ++i) add_row(csv, shown[i], i + 1);
  return csv.str();
}

}  // namespace widegate
