#include "core/handover/json/ranking_json.h"

#include <cmath>
#include <nlohmann/json.hpp>
#include <string_view>

#include "core/base/number_text.h"
#include "core/report/report_fields.h"

namespace widegate {
namespace {

using Json = nlohmann::ordered_json;

Json number(double value) { return std::isfinite(value) ? Json(round_12(value)) : Json(); }

Json range(const std::optional<Span>& span, double scale) {
  if (!span) return {};
  const Json least = number(span->least * scale);
  const Json most = number(span->most * scale);
  return least == most ? least : Json{{"least", least}, {"most", most}};
}

Json format_json(const FormatChoice& format) {
  return {{"camera", format.camera},
          {"mode", format.mode},
          {"recording", format.recording},
          {"codec", format.codec}};
}

Json findings_json(const Findings& findings) {
  Json list = Json::array();
  for (std::size_t i = 0; i < findings.size(); ++i) {
    const Finding& finding = findings[i];
    if (!finding.applies) continue;
    const auto requirement = static_cast<Requirement>(i);
    const RequirementInfo& info = requirement_info(requirement);
    list.push_back({{"requirement", info.key},
                    {"met", finding.met},
                    {"have", number(finding.have)},
                    {"need", number(finding.need)},
                    {"margin", number(margin(requirement, finding))},
                    {"unit", info.unit_key}});
  }
  return list;
}

Json changes_json(const std::vector<Change>& changes) {
  Json list = Json::array();
  for (const Change& change : changes) {
    list.push_back({{"input", input_key(change.input)},
                    {"pointer", input_pointer(change.input)},
                    {"value", change.value},
                    {"now", change.now},
                    {"unit", input_unit(change.input)}});
  }
  return list;
}

void add_score(Json& row, const RankedFormat& format) {
  row["score"] = number(format.score);
  row["shares"] = {{"area", number(format.shares[0])},
                   {"pixels", number(format.shares[1])},
                   {"speed", number(format.shares[2])},
                   {"data", number(format.shares[3])}};
  row["on_pareto_front"] = format.on_pareto_front;
}

Json row_json(const RankedFormat& format, std::size_t place) {
  constexpr double kMega = 1e-6;
  const FormatFigures& figures = format.figures;
  const auto& ceiling = figures.rate_ceiling;
  Json row = {{"place", format.accepted ? Json(place) : Json()},
              {"format", format_json(format.format)},
              {"accepted", format.accepted}};
  if (format.accepted) add_score(row, format);
  row["frame_area_mm2"] = number(figures.frame_area_mm2);
  row["frame_megapixels"] = number(figures.frame_photosites * kMega);
  row["rate_ceiling_fps"] = ceiling ? number(ceiling->to_double()) : Json();
  row["rate_ceiling_exact"] = ceiling ? Json(print_rational(*ceiling)) : Json();
  row["rate_limited_by"] = rate_limit_key(figures.rate_limited_by);
  row["data_rate_megabits_per_s"] = range(figures.bytes_per_s, 8 * kMega);
  row["minutes_per_card"] = range(figures.minutes_per_card, 1);
  row["requirements"] = findings_json(figures.findings);
  return row;
}

std::string dumped(const Json& json) {
  return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

}  // namespace

std::string ranking_to_json(const Ranking& ranking, std::span<const RankedFormat> shown,
                            std::span<const std::vector<Change>> changes) {
  const std::size_t considered = ranking.formats.size();
  std::string text = "{\n  \"considered\": " + std::to_string(considered) +
                     ",\n  \"accepted\": " + std::to_string(ranking.accepted) +
                     ",\n  \"rejected\": " + std::to_string(considered - ranking.accepted) +
                     ",\n  \"image_circle_known\": " + (ranking.cover_known ? "true" : "false") +
                     ",\n  \"formats\": [";
  // Row by row: the whole document as objects would take several times its length.
  for (std::size_t i = 0; i < shown.size(); ++i) {
    Json row = row_json(shown[i], i + 1);
    if (!changes.empty()) row["changes"] = changes_json(changes[i]);
    text += (i == 0 ? "\n    " : ",\n    ") + dumped(row);
  }
  return text + (shown.empty() ? "]\n}" : "\n  ]\n}");
}

}  // namespace widegate
