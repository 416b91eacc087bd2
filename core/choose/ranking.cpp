#include "core/choose/ranking.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>
#include <string_view>
#include <tuple>
#include <utility>

#include "core/choose/pareto.h"
#include "core/optics/lens_squeeze.h"
#include "core/plan/plan_check.h"

namespace widegate {
namespace {

/// Rows by id, one's own before the library's; built once, asked for every format.
template <class Row>
class RowsById {
 public:
  RowsById(const std::vector<Row>& own, const std::vector<Row>& library) {
    rows_.reserve(own.size() + library.size());
    for (const auto* part : {&own, &library}) {
      for (const Row& row : *part) rows_.push_back(&row);
    }
    std::stable_sort(rows_.begin(), rows_.end(),
                     [](const Row* a, const Row* b) { return a->id < b->id; });
    const auto end = std::unique(rows_.begin(), rows_.end(),
                                 [](const Row* a, const Row* b) { return a->id == b->id; });
    rows_.erase(end, rows_.end());
  }
  [[nodiscard]] const Row& operator[](std::string_view id) const {
    return **std::lower_bound(rows_.begin(), rows_.end(), id,
                              [](const Row* row, std::string_view key) { return row->id < key; });
  }
  [[nodiscard]] const std::vector<const Row*>& all() const { return rows_; }

 private:
  std::vector<const Row*> rows_;
};

std::vector<const Camera*> cameras_considered(const Plan& plan, const Catalogue& catalogue) {
  const RowsById<Camera> cameras(plan.own.cameras, catalogue.cameras);
  if (plan.choose.cameras.empty()) return cameras.all();
  std::vector<const Camera*> chosen;
  chosen.reserve(plan.choose.cameras.size());
  for (const std::string& id : plan.choose.cameras) chosen.push_back(&cameras[id]);
  return chosen;
}

std::size_t count_formats(const std::vector<const Camera*>& cameras) {
  std::size_t count = 0;
  for (const Camera* camera : cameras) {
    for (const SensorMode& mode : camera->modes) {
      for (const Recording& recording : mode.recordings) count += recording.codecs.size();
    }
  }
  return count;
}

std::vector<RankedFormat> judged_formats(const Plan& plan, const Catalogue& catalogue,
                                         const Conditions& conditions) {
  const RowsById<Codec> codecs(plan.own.codecs, catalogue.codecs);
  const auto cameras = cameras_considered(plan, catalogue);
  std::vector<RankedFormat> formats;
  formats.reserve(count_formats(cameras));
  for (const Camera* camera : cameras) {
    for (const SensorMode& mode : camera->modes) {
      const ModeFigures mode_part = mode_figures(conditions, *camera, mode);
      for (const Recording& recording : mode.recordings) {
        for (const std::string& codec : recording.codecs) {
          RankedFormat& format = formats.emplace_back();
          format.format = {camera->id, mode.id, recording.id, codec};
          format.figures = format_figures(conditions, mode_part, mode, recording, codecs[codec]);
          format.accepted = all_met(format.figures.findings);
        }
      }
    }
  }
  return formats;
}

/// What the shares are shares of: more is better but for the data.
using Values = std::array<double, kCriterionCount>;
constexpr auto kData = static_cast<std::size_t>(Criterion::data);

Values values_of(const FormatFigures& figures, double sensor_rate) {
  const double spare_speed =
      figures.rate_ceiling ? std::max(0.0, 1 - sensor_rate / figures.rate_ceiling->to_double()) : 1;
  return {figures.frame_area_mm2, figures.frame_pixels, spare_speed,
          figures.bytes_per_s ? figures.bytes_per_s->most : 0};
}

Values best_of(const std::vector<RankedFormat>& formats, double sensor_rate) {
  Values best{0, 0, 0, std::numeric_limits<double>::infinity()};
  for (const RankedFormat& format : formats) {
    if (!format.accepted) continue;
    const Values values = values_of(format.figures, sensor_rate);
    for (std::size_t i = 0; i < best.size(); ++i) {
      best[i] = i == kData ? std::min(best[i], values[i]) : std::max(best[i], values[i]);
    }
  }
  return best;
}

double share(std::size_t criterion, double value, double best) {
  if (criterion == kData) return best / value;
  return best > 0 ? value / best : 1;
}

/// Nine decimals: rounding in the last places must not decide an order that names should decide.
double to_nine_decimals(double value) {
  constexpr double kUnits = 1e9;
  return std::round(value * kUnits) / kUnits;
}

void score(std::vector<RankedFormat>& formats, const Plan& plan) {
  const Choosing& choose = plan.choose;
  const Values weights{choose.weight_area, choose.weight_pixels, choose.weight_speed,
                       choose.weight_data};
  const double all_weights = weights[0] + weights[1] + weights[2] + weights[3];
  const double sensor_rate = plan.run.sensor_rate.to_double();
  const Values best = best_of(formats, sensor_rate);
  for (RankedFormat& format : formats) {
    if (!format.accepted) continue;
    const Values values = values_of(format.figures, sensor_rate);
    double sum = 0;
    for (std::size_t i = 0; i < kCriterionCount; ++i) {
      format.shares[i] = share(i, values[i], best[i]);
      sum += weights[i] * format.shares[i];
    }
    format.score = all_weights > 0 ? to_nine_decimals(sum / all_weights) : 0;
  }
}

Merits merits_of(const FormatFigures& figures) {
  const double ceiling = figures.rate_ceiling ? figures.rate_ceiling->to_double()
                                              : std::numeric_limits<double>::infinity();
  return {figures.frame_area_mm2, figures.frame_pixels, ceiling,
          figures.bytes_per_s ? -figures.bytes_per_s->most : 0};
}

void mark_pareto_front(std::vector<RankedFormat>& formats) {
  std::vector<Merits> merits;
  for (const RankedFormat& format : formats) {
    if (format.accepted) merits.push_back(merits_of(format.figures));
  }
  const std::vector<bool> front = pareto_front(merits);
  std::size_t next = 0;
  for (RankedFormat& format : formats) {
    if (format.accepted) format.on_pareto_front = front[next++];
  }
}

/// What the order goes by before the ids, best first; rows are large, so these are sorted.
struct Place {
  double score = 0;
  std::size_t reasons = 0;
  std::size_t row = 0;
};

std::vector<RankedFormat> in_order(std::vector<RankedFormat> formats) {
  std::vector<Place> places(formats.size());
  for (std::size_t row = 0; row < formats.size(); ++row) {
    const Findings& findings = formats[row].figures.findings;
    const auto reasons = std::count_if(findings.begin(), findings.end(),
                                       [](const Finding& finding) { return !finding.met; });
    places[row] = {formats[row].score, static_cast<std::size_t>(reasons), row};
  }
  const auto ids = [&](const Place& place) {
    const FormatChoice& format = formats[place.row].format;
    return std::tie(format.camera, format.mode, format.recording, format.codec);
  };
  std::sort(places.begin(), places.end(), [&](const Place& a, const Place& b) {
    if (a.reasons != b.reasons) return a.reasons < b.reasons;
    if (a.score != b.score) return a.score > b.score;
    return ids(a) < ids(b);
  });
  std::vector<RankedFormat> ordered;
  ordered.reserve(formats.size());
  for (const Place& place : places) ordered.push_back(std::move(formats[place.row]));
  return ordered;
}

}  // namespace

Ranking rank(const Plan& plan, const Catalogue& catalogue) {
  Ranking ranking;
  ranking.problems = check_plan(plan, catalogue);
  if (!ranking.problems.empty()) return ranking;
  const Conditions conditions = conditions_of(plan, catalogue);
  ranking.cover_known = image_circle(conditions.lens, conditions.lens_set).has_value();
  std::vector<RankedFormat> formats = judged_formats(plan, catalogue, conditions);
  score(formats, plan);
  mark_pareto_front(formats);
  ranking.formats = in_order(std::move(formats));
  for (const RankedFormat& format : ranking.formats) ranking.accepted += format.accepted ? 1 : 0;
  return ranking;
}

}  // namespace widegate
