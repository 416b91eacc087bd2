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
    "as_good",
    "on_pareto_front",
    "cautions",
    "frame_area_mm2",
    "frame_megapixels",
    "true_megapixels",
    "recorded_width_pixels",
    "recorded_height_pixels",
    "upscaling_times",
    "focal_mm",
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
  for (std::size_t i = 0; i < kCriterionCount; ++i) {
    csv.text("share_" + std::string(criterion_info(static_cast<Criterion>(i)).key));
  }
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

std::string caution_keys(Cautions cautions) {
  std::string keys;
  for_each_caution(cautions, [&keys](Caution caution) {
    if (!keys.empty()) keys += ' ';
    keys += caution_info(caution).key;
  });
  return keys;
}

void add_figures(CsvWriter& csv, const RankedFormat& format) {
  constexpr double kMega = 1e-6;
  const FormatFigures& figures = format.figures;
  csv.text(caution_keys(figures.cautions));
  csv.number(format.picture.area_mm2).number(format.picture.photosites * kMega);
  csv.number(format.picture.true_pixels * kMega);
  csv.whole(figures.recorded_width_pixels).whole(figures.recorded_height_pixels);
  csv.number(figures.upscaling.scale).number(figures.lens.focal_mm);
  if (figures.rate_ceiling) {
    csv.number(figures.rate_ceiling->to_double());
  } else {
    csv.empty();
  }
  add_span(csv, figures.bytes_per_s, 8 * kMega);
  add_span(csv, figures.minutes_per_card, 1);
  for (const double share : format.shares) {
    if (format.accepted) {
      csv.number(share);
    } else {
      csv.empty();
    }
  }
}

void add_margins(CsvWriter& csv, const Findings& findings) {
  std::string failed;
  for (std::size_t i = 0; i < kRequirementCount; ++i) {
    const auto requirement = static_cast<Requirement>(i);
    const Finding finding = findings[requirement];
    if (finding.asked() && finding.met != Met::not_known) {
      csv.number(margin(requirement, finding));
    } else {
      csv.empty();
    }
    if (!finding.missed()) continue;
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
    csv.number(format.score).text(format.as_good ? "yes" : "no");
    csv.text(format.on_pareto_front ? "yes" : "no");
  } else {
    csv.empty().empty().empty();
  }
  add_figures(csv, format);
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
