#include "core/choose/ranking.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <string_view>
#include <tuple>
#include <utility>

#include "core/choose/pareto.h"
#include "core/plan/plan_check.h"

namespace widegate {
namespace {

/// Scores this near to the first are no worse.
constexpr double kAsGood = 0.01;

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

using Cameras = std::vector<const Camera*>;

/// Those the plan names; otherwise those of the medium of the plan's own camera.
Cameras cameras_considered(const Plan& plan, const Catalogue& catalogue) {
  const RowsById<Camera> cameras(plan.own.cameras, catalogue.cameras);
  Cameras chosen;
  for (const std::string& id : plan.choose.cameras) chosen.push_back(&cameras[id]);
  if (!chosen.empty()) return chosen;
  const Medium medium = cameras[plan.format.camera].medium;
  for (const Camera* camera : cameras.all()) {
    if (camera->medium == medium) chosen.push_back(camera);
  }
  return chosen;
}

std::size_t count_formats(const Cameras& cameras) {
  std::size_t count = 0;
  for (const Camera* camera : cameras) {
    for (const SensorMode& mode : camera->modes) {
      for (const Recording& recording : mode.recordings) count += recording.codecs.size();
    }
  }
  return count;
}

/// Whether the plan's lens covers what has to be covered on the plan's own mode.
bool covers_own_format(const Conditions& conditions, const Camera& camera, const SensorMode& mode,
                       std::span<const FrameReport> frames) {
  const ModeFigures figures = mode_figures(conditions, camera, mode, frames);
  return !figures.findings.missed(Requirement::cover);
}

/// Decides with which lens formats are compared and sets the conditions' view.
LensGiven give_lens(Conditions& conditions, const Cameras& cameras) {
  const Plan& plan = *conditions.plan;
  if (plan.choose.compare == CompareWith::same_lens) return LensGiven::same_lens;
  if (conditions.lens_set == nullptr || plan.lens.image_circle_mm) return LensGiven::no_set;
  if (cameras.size() == 1) return LensGiven::one_camera;
  const auto own = std::find_if(cameras.begin(), cameras.end(), [&](const Camera* camera) {
    return camera->id == plan.format.camera;
  });
  if (own == cameras.end()) return LensGiven::camera_left_out;
  const SensorMode& mode = *find_row((*own)->modes, plan.format.mode);
  const auto frames = frames_on(conditions, mode);
  if (!covers_own_format(conditions, **own, mode, frames)) return LensGiven::not_covered;
  conditions.view = WantedView{.width_mm = frames.front().width_mm, .focal_mm = plan.lens.focal_mm};
  return LensGiven::same_view;
}

Shares shares_of(const Wants& wants, const FormatRows& rows, const RankedFormat& format,
                 const DataFigures& data) {
  const bool film = rows.camera->medium == Medium::film;
  const double bits = stored_bits_per_pixel(rows, format.figures, data);
  return {format.picture.area, format.picture.pixels, fidelity_share(rows.codec->facts, bits, film),
          speed_share(wants, format.figures), data_share(wants, format.handled_bytes_per_s)};
}

/// Judges and scores the formats one after the other.
class Judge {
 public:
  Judge(const Plan& plan, const Catalogue& catalogue, const Conditions& conditions,
        const Wants& wants)
      : codecs_(plan.own.codecs, catalogue.codecs), conditions_(conditions), wants_(wants) {}

  void judge(const Camera& camera, std::vector<RankedFormat>& formats) const {
    for (const SensorMode& mode : camera.modes) {
      const auto frames = frames_on(conditions_, mode);
      const ModeFigures mode_part = mode_figures(conditions_, camera, mode, frames);
      const auto merits = line_merits(conditions_, mode, frames);
      for (const Recording& recording : mode.recordings) {
        for (const std::string& id : recording.codecs) {
          const FormatRows rows{&camera, &mode, &recording, &codecs_[id]};
          judge_one(rows, mode_part, frames, merits, formats.emplace_back());
        }
      }
    }
  }

 private:
  void judge_one(const FormatRows& rows, const ModeFigures& mode_part,
                 std::span<const FrameReport> frames, std::span<const LineMerit> merits,
                 RankedFormat& format) const {
    format.format = {rows.camera->id, rows.mode->id, rows.recording->id, rows.codec->id};
    const auto data = data_figures(conditions_, rows);
    format.figures = format_figures(conditions_, mode_part, rows, frames, data);
    format.picture = picture_figures(conditions_, rows, merits);
    format.accepted = all_met(format.figures.findings);
    if (!data) return;
    const Span bytes = data->bytes_per_s;
    format.bytes_per_s =
        bytes.least == bytes.most ? bytes.most : std::sqrt(bytes.least * bytes.most);
    if (!format.accepted) return;
    format.handled_bytes_per_s = handled_data(wants_, rows.codec->facts, format.bytes_per_s);
    format.shares = shares_of(wants_, rows, format, *data);
    format.score = score_of(wants_, format.shares);
  }

  RowsById<Codec> codecs_;
  const Conditions& conditions_;
  const Wants& wants_;
};

bool stands_first(const RankedFormat& format) {
  return format.accepted && format.figures.cautions.none();
}

/// The shares before they were rounded by logarithms: what is equal is equal, and beyond an end
/// point nothing is gained.
Merits merits_of(const RankedFormat& format, const Wants& wants) {
  const auto& ceiling = format.figures.rate_ceiling;
  const double speed =
      ceiling ? std::min(wants.full_speed, ceiling->to_double()) : wants.full_speed;
  return {format.picture.area_product, format.picture.served_product,
          format.shares[static_cast<std::size_t>(Criterion::fidelity)], speed,
          -std::max(wants.target_bytes_per_s, format.handled_bytes_per_s)};
}

void mark_pareto_front(std::vector<RankedFormat>& formats, const Wants& wants) {
  std::vector<Merits> merits;
  for (const RankedFormat& format : formats) {
    if (stands_first(format)) merits.push_back(merits_of(format, wants));
  }
  const std::vector<bool> front = pareto_front(merits);
  std::size_t next = 0;
  for (RankedFormat& format : formats) {
    if (stands_first(format)) format.on_pareto_front = front[next++];
  }
}

/// What the order goes by before the ids; rows are large, so these are sorted.
struct Place {
  std::size_t reasons = 0;  ///< Requirements missed.
  bool caution = false;
  double score = 0;
  double bytes_per_s = 0;
  std::size_t row = 0;
};

/// Moves every row to its place, each once.
void put_in_order(std::vector<RankedFormat>& formats, std::vector<Place> places) {
  for (std::size_t start = 0; start < places.size(); ++start) {
    std::size_t at = start;
    while (places[at].row != start) {
      const std::size_t from = places[at].row;
      std::swap(formats[at], formats[from]);
      places[at].row = at;
      at = from;
    }
    places[at].row = at;
  }
}

void sort_formats(std::vector<RankedFormat>& formats) {
  std::vector<Place> places(formats.size());
  for (std::size_t row = 0; row < formats.size(); ++row) {
    const RankedFormat& format = formats[row];
    places[row] = {.reasons = format.figures.findings.count(Met::missed),
                   .caution = format.accepted && !format.figures.cautions.none(),
                   .score = format.score,
                   .bytes_per_s = format.accepted ? format.bytes_per_s : 0,
                   .row = row};
  }
  const auto ids = [&](const Place& place) {
    const FormatChoice& format = formats[place.row].format;
    return std::tie(format.camera, format.mode, format.recording, format.codec);
  };
  std::sort(places.begin(), places.end(), [&](const Place& a, const Place& b) {
    if (a.reasons != b.reasons) return a.reasons < b.reasons;
    if (a.caution != b.caution) return b.caution;
    if (a.score != b.score) return a.score > b.score;
    if (a.bytes_per_s != b.bytes_per_s) return a.bytes_per_s < b.bytes_per_s;
    return ids(a) < ids(b);
  });
  put_in_order(formats, std::move(places));
}

void finish(Ranking& ranking) {
  for (RankedFormat& format : ranking.formats) {
    const RankedFormat& first = ranking.formats.front();
    format.as_good = format.accepted && stands_first(format) == stands_first(first) &&
                     format.score >= first.score - kAsGood;
    ranking.accepted += format.accepted ? 1 : 0;
    ranking.without_caution += stands_first(format) ? 1 : 0;
  }
}

}  // namespace

RankingConditions::RankingConditions(const Plan& plan, const Catalogue& catalogue)
    : conditions_(conditions_of(plan, catalogue)),
      cameras_(cameras_considered(plan, catalogue)),
      lens_given_(give_lens(conditions_, cameras_)) {}

Ranking rank(const Plan& plan, const Catalogue& catalogue) {
  Ranking ranking;
  ranking.problems = check_plan(plan, catalogue);
  if (!ranking.problems.empty()) return ranking;
  const RankingConditions judged_by(plan, catalogue);
  const Conditions& conditions = judged_by.conditions();
  const Cameras& cameras = judged_by.cameras();
  ranking.lens_given = judged_by.lens_given();
  ranking.cover_known = conditions.lens_set != nullptr || plan.lens.image_circle_mm.has_value();
  ranking.wants = wants_of(conditions);
  ranking.formats.reserve(count_formats(cameras));
  const Judge judge(plan, catalogue, conditions, ranking.wants);
  for (const Camera* camera : cameras) judge.judge(*camera, ranking.formats);
  mark_pareto_front(ranking.formats, ranking.wants);
  sort_formats(ranking.formats);
  finish(ranking);
  return ranking;
}

std::vector<FormatGroup> grouped(std::span<const RankedFormat> formats) {
  std::map<std::pair<std::string_view, std::string_view>, std::size_t> group_of;
  std::vector<FormatGroup> groups;
  for (std::size_t row = 0; row < formats.size(); ++row) {
    const FormatChoice& format = formats[row].format;
    const auto [at, added] = group_of.try_emplace({format.camera, format.mode}, groups.size());
    if (added) groups.emplace_back();
    groups[at->second].rows.push_back(row);
  }
  return groups;
}

Plan with_format(Plan plan, const RankedFormat& ranked) {
  plan.format = ranked.format;
  plan.lens.focal_mm = ranked.figures.lens.focal_mm;
  return plan;
}

}  // namespace widegate
