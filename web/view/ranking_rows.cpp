#include "web/view/ranking_rows.h"

#include <algorithm>

#include "core/choose/binding.h"
#include "core/choose/ranking_words.h"
#include "core/choose/requirement.h"
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

/// What becomes of the recorded pixels in the deliverable; half a per cent is rounding.
std::string scale_words(double scale) {
  constexpr double kRounding = 0.005;
  if (scale > 1 + kRounding) return "upscaled " + short_number(scale, 2) + "×";
  if (scale < 1 - kRounding) return "oversampled " + short_number(1 / scale, 2) + "×";
  return "pixel for pixel";
}

std::string figure_words(const RankedFormat& format) {
  const FormatFigures& figures = format.figures;
  std::string text = std::to_string(figures.recorded_width_pixels) + " × " +
                     std::to_string(figures.recorded_height_pixels) + " in the file, " +
                     scale_words(figures.upscaling.scale);
  text += " · " + short_number(figures.lens.focal_mm, 1) + " mm";
  if (figures.rate_ceiling) {
    text += " · to " + short_number(figures.rate_ceiling->to_double(), 2) + " fps";
  }
  if (figures.minutes_per_card) {
    text += " · " + span_words(*figures.minutes_per_card, 0) + " min on a card";
  }
  if (figures.cautions.none()) return text;
  return text + ". Caution: " + caution_words(figures.cautions);
}

std::string reason_words(const FormatFigures& figures) {
  std::string text;
  for_each_asked(figures.findings, [&](Requirement requirement, const Finding& finding) {
    if (!finding.missed()) return;
    if (!text.empty()) text += ". ";
    text += reason_text(requirement, finding);
  });
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

Severity severity_of(const RankedFormat& ranked) {
  if (!ranked.accepted) return Severity::fail;
  return ranked.figures.cautions.none() ? Severity::ok : Severity::caution;
}

RankingRow make_row(const App& app, const RankedFormat& ranked) {
  RankingRow row;
  row.format = ranked.format;
  row.id = id_of_format(ranked.format);
  row.severity = severity_of(ranked);
  row.accepted = ranked.accepted;
  row.on_front = ranked.on_pareto_front;
  row.chosen = ranked.format == app.plan().format;
  for (std::size_t i = 0; i < kCriterionCount; ++i) {
    row.shares[i] = static_cast<float>(ranked.shares[i]);
  }
  put_names(row, app);
  row.words = ranked.accepted ? figure_words(ranked) : reason_words(ranked.figures);
  if (ranked.on_pareto_front) row.words += " · best trade-off";
  if (!row.accepted) row.words += help_words(app, row.format);
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

bool is_desqueezed(const App& app, const FormatChoice& format) {
  const Camera* camera = find_row(app.plan().own.cameras, app.library().cameras, format.camera);
  const SensorMode* mode = camera != nullptr ? find_row(camera->modes, format.mode) : nullptr;
  const Recording* recording =
      mode != nullptr ? find_row(mode->recordings, format.recording) : nullptr;
  return recording != nullptr && recording->desqueeze != Rational(1);
}

bool is_of_kind(const App& app, const RankedFormat& ranked, RankingKind kind) {
  if (kind == RankingKind::all) return true;
  if (kind == RankingKind::without_caution) return ranked.figures.cautions.none();
  if (kind == RankingKind::desqueezed) return is_desqueezed(app, ranked.format);
  const Codec* codec = find_row(app.plan().own.codecs, app.library().codecs, ranked.format.codec);
  const auto raw = codec != nullptr ? is_sensor_raw(codec->facts) : std::nullopt;
  return raw == (kind == RankingKind::raw);
}

/// Which formats have a row, in their order, and for how many recordings of its mode each stands.
struct ListedFormats {
  std::vector<std::size_t> formats;
  std::vector<std::size_t> stands_for;
};

/// The group of each format.
std::vector<std::size_t> groups_of(const Ranking& ranking) {
  std::vector<std::size_t> groups(ranking.formats.size());
  std::size_t number = 0;
  for (const FormatGroup& group : grouped(ranking.formats)) {
    for (const std::size_t i : group.rows) groups[i] = number;
    ++number;
  }
  return groups;
}

ListedFormats listed_formats(const App& app, const Ranking& ranking, const PanelState& state) {
  const bool one_a_mode = state.ranking_listing == RankingListing::best_of_mode;
  const std::vector<std::size_t> groups = groups_of(ranking);
  constexpr auto kNone = static_cast<std::size_t>(-1);
  std::vector<std::size_t> row_of(groups.size(), kNone);
  ListedFormats listed;
  for (std::size_t i = 0; i < groups.size(); ++i) {
    const RankedFormat& ranked = ranking.formats[i];
    if (!belongs(ranked, state.ranking_part) || !is_of_kind(app, ranked, state.ranking_kind)) {
      continue;
    }
    std::size_t& row = row_of[groups[i]];
    if (one_a_mode && row != kNone) {
      ++listed.stands_for[row];
      continue;
    }
    row = listed.formats.size();
    listed.formats.push_back(i);
    listed.stands_for.push_back(1);
  }
  return listed;
}

/// The sentences above the list as one paragraph.
std::string lead_words(const App& app, const Ranking& ranking) {
  std::string text;
  for (const std::string& line : words_above_ranking(app.plan(), app.library(), ranking)) {
    text += (text.empty() ? "" : " ") + line;
  }
  return text;
}

std::vector<std::string> binding_words(const Ranking& ranking) {
  constexpr std::size_t kMost = 4;
  std::vector<std::string> words;
  for (const Binding& binding : what_binds(ranking.formats)) {
    if (words.size() == kMost) break;
    words.push_back(std::string(binding.label()) + ": missed by " +
                    std::to_string(binding.missed_by) + "; without it " +
                    std::to_string(binding.would_pass) + " would pass");
  }
  return words;
}

}  // namespace

std::string id_of_format(const FormatChoice& format) {
  std::string id = format.camera;
  for (const std::string* part : {&format.mode, &format.recording, &format.codec}) {
    id.append(kSeparator).append(*part);
  }
  return id;
}

RankingRows ranking_rows(const App& app, const PanelState& state) {
  RankingRows result;
  if (!app.report().problems.empty()) return result;
  const Ranking ranking = rank(app.plan(), app.library());
  result.accepted = ranking.accepted;
  result.total = ranking.formats.size();
  result.lead = lead_words(app, ranking);
  for (const RankedFormat& ranked : ranking.formats) {
    result.on_front += ranked.on_pareto_front ? 1 : 0;
  }
  const ListedFormats listed = listed_formats(app, ranking, state);
  result.listed = listed.formats.size();
  bool own_listed = false;
  for (std::size_t i = 0; i < listed.formats.size(); ++i) {
    const RankedFormat& ranked = ranking.formats[listed.formats[i]];
    const bool own = ranked.format == app.plan().format;
    if (!own && result.rows.size() >= state.formats_shown) continue;
    RankingRow& row = result.rows.emplace_back(make_row(app, ranked));
    own_listed = own_listed || own;
    if (listed.stands_for[i] > 1) {
      row.words +=
          " · first of " + std::to_string(listed.stands_for[i]) + " recordings of this mode";
    }
  }
  for (const RankedFormat& ranked : ranking.formats) {
    if (own_listed || ranked.format != app.plan().format) continue;
    result.rows.push_back(make_row(app, ranked));
  }
  if (ranking.accepted == 0 && !state.drag) {
    result.binding = binding_words(ranking);
    result.ways = ways_out(app.plan(), app.library(), ranking);
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
