#include "core/choose/format_figures.h"

#include <algorithm>

#include "core/cover/cover.h"
#include "core/film/film.h"
#include "core/frame/frame.h"
#include "core/optics/lens_squeeze.h"
#include "core/optics/mode_geometry.h"
#include "core/resolve/resolve.h"
#include "core/run/run.h"
#include "core/store/card_load.h"

namespace widegate {
namespace {

/// Rounding of a percentage that comes from a fraction; far below any push-in that matters.
constexpr double kPercentRounding = 1e-9;

Finding& finding_of(Findings& findings, Requirement requirement) {
  return findings[static_cast<std::size_t>(requirement)];
}

RectMm rect_to_cover(CoverArea area, const Geometry& geometry, const FrameReport& frame) {
  switch (area) {
    case CoverArea::none:
    case CoverArea::frame:
      return to_mm(frame.photosites, geometry);
    case CoverArea::protected_area:
      return to_mm(frame.protected_photosites, geometry);
    case CoverArea::mode:
      return mode_rect(geometry);
  }
  return {};
}

Finding cover_finding(const Conditions& conditions, const Geometry& geometry,
                      const FrameReport& frame) {
  const CoverArea area = conditions.choose.must_cover;
  const auto circle = image_circle(conditions.lens, conditions.lens_set);
  if (area == CoverArea::none || !circle) return {};
  const CoverFigures figures =
      cover_figures(rect_to_cover(area, geometry, frame), {circle->diameter_mm});
  return {.have = circle->diameter_mm,
          .need = figures.diagonal_mm,
          .applies = true,
          .met = figures.covered};
}

Finding mandate_finding(const Conditions& conditions, const MandateFigures& mandate) {
  if (!conditions.choose.must_meet_mandate || mandate.required == 0) return {};
  return {.have = mandate.have,
          .need = static_cast<double>(mandate.required),
          .applies = true,
          .met = mandate.met};
}

Finding at_least(double have, double need, double rounding = 0) {
  return {.have = have, .need = need, .applies = true, .met = have >= need - rounding};
}

Finding rate_finding(const std::optional<Rational>& ceiling, Rational rate) {
  if (!ceiling) return {};
  return {.have = ceiling->to_double(),
          .need = rate.to_double(),
          .applies = true,
          .met = *ceiling >= rate};
}

std::optional<Rational> lower_rate(const std::optional<Rational>& a,
                                   const std::optional<Rational>& b) {
  if (!a || !b) return a ? a : b;
  return *a < *b ? a : b;
}

Finding squeeze_finding(Rational squeeze, Rational desqueeze) {
  if (desqueeze == Rational(1)) return {};
  return {.have = squeeze.to_double(),
          .need = desqueeze.to_double(),
          .applies = true,
          .met = squeeze >= desqueeze};
}

/// What frames of one size mean for the card.
struct FormatLoad {
  std::int64_t stored_bytes = 0;
  double bytes_per_s = 0;
  double minutes = 0;
  double headroom = 0;
};

/// Nothing when not one frame fits the card, or a count is too large to be exact.
std::optional<FormatLoad> card_load(const Conditions& conditions, std::int64_t frame_bytes) {
  const auto stream = stream_of(frame_bytes, conditions.run, conditions.container);
  const auto usable = usable_bytes(conditions.card);
  if (!stream || !usable) return std::nullopt;
  const auto frames = frames_per_card(*stream, *usable);
  if (!frames || *frames == 0) return std::nullopt;
  return FormatLoad{.stored_bytes = stream->frame_bytes,
                    .bytes_per_s = stream->bytes_per_s().to_double(),
                    .minutes = minutes_of(*frames, stream->rate),
                    .headroom = write_headroom(*stream, conditions.card.write_bytes_per_s)};
}

/// The smaller and the larger bound of the data; equal for most codecs.
struct FormatLoads {
  FormatLoad light;
  FormatLoad heavy;
};

std::optional<FormatLoads> card_loads(const Conditions& conditions, const Geometry& geometry,
                                      const Codec& codec) {
  const auto bytes = bytes_per_frame(codec.form, geometry.recorded_width_pixels,
                                     geometry.recorded_height_pixels, conditions.run.sensor_rate);
  if (!bytes) return std::nullopt;
  const auto light = card_load(conditions, bytes->least);
  const auto heavy = bytes->exact() ? light : card_load(conditions, bytes->most);
  if (!light || !heavy) return std::nullopt;
  return FormatLoads{*light, *heavy};
}

void set_card_figures(FormatFigures& figures, const Conditions& conditions,
                      const std::optional<FormatLoads>& loads, bool film) {
  finding_of(figures.findings, Requirement::frame_size) = at_least(loads ? 1 : 0, 1);
  if (!loads) return;
  const auto& [light, heavy] = *loads;
  figures.bytes_per_s = {light.bytes_per_s, heavy.bytes_per_s};
  if (film) return;
  figures.minutes_per_card = {heavy.minutes, light.minutes};
  finding_of(figures.findings, Requirement::card_speed) = at_least(heavy.headroom, 1);
  const double wanted = conditions.choose.min_minutes_per_card;
  if (wanted > 0) {
    finding_of(figures.findings, Requirement::card_minutes) = at_least(heavy.minutes, wanted);
  }
}

}  // namespace

Conditions conditions_of(const Plan& plan, const Catalogue& catalogue) {
  Conditions conditions{
      .main = plan.deliverable.frame_lines.front(),
      .lens = plan.lens,
      .lens_set = find_row(plan.own.lens_sets, catalogue.lens_sets, plan.lens.set),
      .run = plan.run,
      .mandate = plan.mandate,
      .choose = plan.choose,
      .container = *find_row(plan.own.containers, catalogue.containers, plan.store.container),
      .card = *find_row(plan.own.cards, catalogue.cards, plan.store.card)};
  conditions.choose.cameras.clear();
  return conditions;
}

ModeFigures mode_figures(const Conditions& conditions, const Camera& camera,
                         const SensorMode& mode) {
  const Geometry geometry =
      make_geometry(mode, {}, lens_squeeze(conditions.lens, conditions.lens_set));
  const FrameReport frame = frame_report(conditions.main, geometry, nullptr);
  const PixelMandates mandates = pixel_mandates(conditions.mandate, geometry, frame);
  ModeFigures figures{.frame_area_mm2 = frame.width_mm * frame.height_mm,
                      .frame_photosites = mandates.photosites.have,
                      .findings = {},
                      .film = is_film(camera),
                      .camera_rate = camera.max_rate};
  Findings& findings = figures.findings;
  finding_of(findings, Requirement::cover) = cover_finding(conditions, geometry, frame);
  finding_of(findings, Requirement::mandate) = mandate_finding(conditions, mandates.photosites);
  finding_of(findings, Requirement::mandate_across) = mandate_finding(conditions, mandates.across);
  const double room = conditions.choose.min_push_in_percent;
  if (room > 0) {
    finding_of(findings, Requirement::push_in) =
        at_least(frame.room_protected_percent, room, kPercentRounding);
  }
  finding_of(findings, Requirement::mode_rate) =
      rate_finding(lower_rate(mode.max_rate, camera.max_rate), conditions.run.sensor_rate);
  return figures;
}

namespace {

/// An in-camera resample cannot add to what was read, only take away.
double kept_share(const Geometry& geometry) {
  const auto read = static_cast<double>(geometry.width_photosites * geometry.height_photosites);
  const auto written =
      static_cast<double>(geometry.recorded_width_pixels * geometry.recorded_height_pixels);
  return std::min(1.0, written / read);
}

}  // namespace

FormatFigures format_figures(const Conditions& conditions, const ModeFigures& mode_part,
                             const SensorMode& mode, const Recording& recording,
                             const Codec& codec) {
  FormatFigures figures;
  figures.frame_area_mm2 = mode_part.frame_area_mm2;
  figures.frame_photosites = mode_part.frame_photosites;
  figures.findings = mode_part.findings;
  const Rational squeeze = lens_squeeze(conditions.lens, conditions.lens_set);
  finding_of(figures.findings, Requirement::squeeze) =
      squeeze_finding(squeeze, recording.desqueeze);
  finding_of(figures.findings, Requirement::recording_rate) =
      rate_finding(recording.max_rate, conditions.run.sensor_rate);
  const Geometry geometry = make_geometry(mode, recording, squeeze);
  figures.frame_pixels = mode_part.frame_photosites * kept_share(geometry);
  const auto loads = card_loads(conditions, geometry, codec);
  set_card_figures(figures, conditions, loads, mode_part.film);
  const bool on_card = loads && !mode_part.film;
  const std::int64_t largest_frame =
      on_card ? card_bound_bytes(codec, loads->heavy.stored_bytes) : 0;
  const RateCeiling ceiling =
      rate_ceiling(mode, recording, conditions.card, largest_frame, mode_part.camera_rate);
  figures.rate_ceiling = ceiling.rate;
  figures.rate_limited_by = ceiling.limited_by;
  return figures;
}

}  // namespace widegate
