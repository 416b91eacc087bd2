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

Json finding_json(const Plan& plan, Requirement requirement, const Finding& finding) {
  const RequirementInfo& info = requirement_info(requirement);
  const bool known = finding.met != Met::not_known;
  const Json line = info.of_a_line ? Json(plan.deliverable.frame_lines[finding.line].name) : Json();
  return {{"requirement", info.key},
          {"line", line},
          {"met", known ? Json(!finding.missed()) : Json()},
          {"have", known ? number(finding.have) : Json()},
          {"need", number(finding.need)},
          {"margin", number(margin(requirement, finding))},
          {"unit", info.unit_key},
          {"have_text", have_text(requirement, finding)},
          {"need_text", need_text(requirement, finding)}};
}

Json findings_json(const Plan& plan, const Findings& findings) {
  Json list = Json::array();
  for_each_asked(findings, [&](Requirement requirement, const Finding& finding) {
    list.push_back(finding_json(plan, requirement, finding));
  });
  return list;
}

Json cautions_json(Cautions cautions) {
  Json list = Json::array();
  for_each_caution(cautions,
                   [&list](Caution caution) { list.push_back(caution_info(caution).key); });
  return list;
}

Json change_json(const Change& change) {
  Json patch = Json::array();
  for (const TypedField& field : change.patch) {
    patch.push_back({{"pointer", field.pointer}, {"value", field.text}});
  }
  return {{"input", input_key(change.input)},
          {"pointer", change.patch.empty() ? std::string() : change.patch.front().pointer},
          {"value", change.value},
          {"now", change.now},
          {"unit", input_unit(change.input)},
          {"text", change_text(change)},
          {"patch", std::move(patch)}};
}

Json changes_json(const std::vector<Change>& changes) {
  Json list = Json::array();
  for (const Change& change : changes) list.push_back(change_json(change));
  return list;
}

void add_score(Json& row, const RankedFormat& format) {
  row["score"] = number(format.score);
  Json& shares = row["shares"] = Json::object();
  for (std::size_t i = 0; i < kCriterionCount; ++i) {
    shares[std::string(criterion_info(static_cast<Criterion>(i)).key)] = number(format.shares[i]);
  }
  row["as_good"] = format.as_good;
  row["on_pareto_front"] = format.on_pareto_front;
}

Json row_json(const Plan& plan, const RankedFormat& format, std::size_t place) {
  constexpr double kMega = 1e-6;
  const FormatFigures& figures = format.figures;
  const auto& ceiling = figures.rate_ceiling;
  const auto& circle = figures.lens.image_circle_mm;
  Json row = {{"place", format.accepted ? Json(place) : Json()},
              {"format", format_json(format.format)},
              {"accepted", format.accepted},
              {"cautions", cautions_json(figures.cautions)}};
  if (format.accepted) add_score(row, format);
  row["frame_area_mm2"] = number(format.picture.area_mm2);
  row["frame_megapixels"] = number(format.picture.photosites * kMega);
  row["true_megapixels"] = number(format.picture.true_pixels * kMega);
  row["served"] = number(format.picture.served);
  row["recorded_width_pixels"] = figures.recorded_width_pixels;
  row["recorded_height_pixels"] = figures.recorded_height_pixels;
  row["upscaling_times"] = number(figures.upscaling.scale);
  row["compression_ratio"] = figures.compression ? number(*figures.compression) : Json();
  row["focal_mm"] = number(figures.lens.focal_mm);
  row["image_circle_mm"] = circle ? number(*circle) : Json();
  row["view_times"] = number(figures.lens.view_ratio);
  row["rate_ceiling_fps"] = ceiling ? number(ceiling->to_double()) : Json();
  row["rate_ceiling_exact"] = ceiling ? Json(print_rational(*ceiling)) : Json();
  row["rate_limited_by"] = rate_limit_key(figures.rate_limited_by);
  row["data_rate_megabits_per_s"] = range(figures.bytes_per_s, 8 * kMega);
  row["minutes_per_card"] = range(figures.minutes_per_card, 1);
  row["requirements"] = findings_json(plan, figures.findings);
  return row;
}

Json binding_json(const Binding& binding) {
  return {{"requirement", binding.key()},
          {"missed_by", binding.missed_by},
          {"would_pass", binding.would_pass}};
}

Json way_json(const WayOut& way) {
  return {{"would_pass", way.would_pass},
          {"format", format_json(way.format)},
          {"change", change_json(way.change)}};
}

std::string dumped(const Json& json) {
  return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

std::string list_text(std::string_view key, const std::vector<std::string>& rows) {
  std::string text = ",\n  \"" + std::string(key) + "\": [";
  for (std::size_t i = 0; i < rows.size(); ++i) text += (i == 0 ? "\n    " : ",\n    ") + rows[i];
  return text + (rows.empty() ? "]" : "\n  ]");
}

std::string header_text(const Ranking& ranking) {
  const std::size_t considered = ranking.formats.size();
  return "{\n  \"considered\": " + std::to_string(considered) +
         ",\n  \"accepted\": " + std::to_string(ranking.accepted) +
         ",\n  \"without_caution\": " + std::to_string(ranking.without_caution) +
         ",\n  \"rejected\": " + std::to_string(considered - ranking.accepted) +
         ",\n  \"image_circle_known\": " + (ranking.cover_known ? "true" : "false") +
         ",\n  \"lens_given\": \"" + std::string(lens_given_key(ranking.lens_given)) + "\"";
}

}  // namespace

std::string_view lens_given_key(LensGiven given) {
  constexpr std::string_view kKeys[] = {"same_view", "same_lens",       "one_camera",
                                        "no_set",    "camera_left_out", "not_covered"};
  return kKeys[static_cast<std::size_t>(given)];
}

std::string ranking_to_json(const Plan& plan, const Ranking& ranking,
                            std::span<const std::string> above, std::span<const RankedFormat> shown,
                            std::span<const std::vector<Change>> changes,
                            std::span<const WayOut> ways) {
  std::string text = header_text(ranking);
  std::vector<std::string> sentences;
  for (const std::string& line : above) sentences.push_back(dumped(line));
  text += list_text("above", sentences);
  if (ranking.accepted == 0) {
    std::vector<std::string> rows;
    for (const Binding& binding : what_binds(ranking.formats)) {
      rows.push_back(dumped(binding_json(binding)));
    }
    text += list_text("binding", rows);
    rows.clear();
    for (const WayOut& way : ways) rows.push_back(dumped(way_json(way)));
    text += list_text("ways_out", rows);
  }
  text += ",\n  \"formats\": [";
  // Row by row: the whole document as objects would take several times its length.
  for (std::size_t i = 0; i < shown.size(); ++i) {
    Json row = row_json(plan, shown[i], i + 1);
    if (!changes.empty()) row["changes"] = changes_json(changes[i]);
    text += (i == 0 ? "\n    " : ",\n    ") + dumped(row);
  }
  return text + (shown.empty() ? "]\n}" : "\n  ]\n}");
}

}  // namespace widegate
