#include "web/view/ranking_rows.h"

#include "core/choose/requirement.h"
#include "core/choose/smallest_change.h"
#include "core/report/figure_text.h"

namespace widegate {
namespace {

constexpr std::string_view kSeparator = "/";

/// "1.5" and "1.5–2.1".
std::string span_words(Span span, int decimals) {
  const std::string least = short_number(span.least, decimals);
  const std::string most = short_number(span.most, decimals);
  return least == most ? least : least + "–" + most;
}

std::string figure_words(const FormatFigures& figures) {
  std::string text = short_number(figures.frame_photosites / 1e6, 1) + " MP";
  if (figures.rate_ceiling) {
    text += " · to " + short_number(figures.rate_ceiling->to_double(), 2) + " fps";
  }
  if (figures.minutes_per_card) {
    text += " · " + span_words(*figures.minutes_per_card, 0) + " min on a card";
  }
  return text;
}

std::string reason_words(const FormatFigures& figures) {
  std::string text;
  for (std::size_t i = 0; i < kRequirementCount; ++i) {
    const Finding& finding = figures.findings[i];
    if (!finding.applies || finding.met) continue;
    if (!text.empty()) text += ". ";
    text += reason_text(static_cast<Requirement>(i), finding);
  }
  return text;
}

/// What would help, of the many ways the ones nearest to the lens and the card.
std::string help_words(const App& app, const FormatChoice& format) {
  constexpr std::size_t kMostWays = 2;
  std::string text;
  std::size_t ways = 0;
  for (const Change& change : smallest_changes(app.plan(), app.library(), format)) {
    if (ways++ == kMostWays) break;
    text += (text.empty() ? ". Passes with " : ", or with ") + change_text(change);
  }
  return text.empty() ? ". No single change is enough" : text;
}

void put_names(RankingRow& row, const App& app) {
  const Plan& plan = app.plan();
  const Camera* camera = find_row(plan.own.cameras, app.library().cameras, row.format.camera);
  if (camera == nullptr) return;
  row.title = camera->name;
  const SensorMode* mode = find_row(camera->modes, row.format.mode);
  if (mode == nullptr) return;
  row.title += " · " + mode->name;
  const Recording* recording = find_row(mode->recordings, row.format.recording);
  if (recording != nullptr) row.detail = recording->name;
  const Codec* codec = find_row(plan.own.codecs, app.library().codecs, row.format.codec);
  if (codec != nullptr) row.detail += " · " + codec->name;
}

RankingRow make_row(const App& app, const RankedFormat& ranked) {
  RankingRow row;
  row.format = ranked.format;
  row.id = id_of_format(ranked.format);
  row.accepted = ranked.accepted;
  row.on_front = ranked.on_pareto_front;
  row.chosen = ranked.format == app.plan().format;
  for (std::size_t i = 0; i < kCriterionCount; ++i) {
    row.shares[i] = static_cast<float>(ranked.shares[i]);
  }
  put_names(row, app);
  row.words = ranked.accepted ? figure_words(ranked.figures) : reason_words(ranked.figures);
  if (ranked.on_pareto_front) row.words += " · best trade-off";
  return row;
}

bool belongs(const RankedFormat& ranked, RankingPart part) {
  switch (part) {
    case RankingPart::passing:
      return ranked.accepted;
    case RankingPart::trade_offs:
      return ranked.on_pareto_front;
    case RankingPart::rejected:
      return !ranked.accepted;
  }
  return false;
}

}  // namespace

std::string id_of_format(const FormatChoice& format) {
  std::string id = format.camera;
  for (const std::string* part : {&format.mode, &format.recording, &format.codec}) {
    id.append(kSeparator).append(*part);
  }
  return id;
}

RankingRows ranking_rows(const App& app, RankingPart part, std::size_t most) {
  RankingRows result;
  if (!app.report().problems.empty()) return result;
  const Ranking ranking = rank(app.plan(), app.library());
  result.accepted = ranking.accepted;
  result.total = ranking.formats.size();
  for (const RankedFormat& ranked : ranking.formats) {
    result.on_front += ranked.on_pareto_front ? 1 : 0;
    const bool listed = belongs(ranked, part);
    result.listed += listed ? 1 : 0;
    const bool chosen = ranked.format == app.plan().format;
    if (!chosen && !(listed && result.rows.size() < most)) continue;
    RankingRow& row = result.rows.emplace_back(make_row(app, ranked));
    if (!row.accepted) row.words += help_words(app, row.format);
  }
  return result;
}

std::optional<FormatChoice> format_from_id(std::string_view id) {
  FormatChoice format;
  std::array<std::string*, 4> parts = {&format.camera, &format.mode, &format.recording,
                                       &format.codec};
  for (std::size_t i = 0; i < parts.size(); ++i) {
    const std::size_t end = id.find(kSeparator);
    const bool last = i + 1 == parts.size();
    if (last != (end == std::string_view::npos)) return std::nullopt;
    *parts[i] = id.substr(0, end);
    if (!last) id.remove_prefix(end + 1);
  }
  return format;
}

}  // namespace widegate
