#include "core/choose/format_figures.h"

#include <algorithm>
#include <cmath>

#include "core/cover/cover.h"
#include "core/film/film.h"
#include "core/frame/frame.h"
#include "core/optics/lens_squeeze.h"
#include "core/optics/mode_geometry.h"
#include "core/run/run.h"
#include "core/store/card_load.h"
#include "core/store/footage.h"

namespace widegate {
namespace {

/// Rounding of a figure that comes from fractions; far below anything that matters.
constexpr double kRounding = 1e-9;
/// A file may be a little smaller than a raster that is asked for: 4096 x 1712 for 4096 x 1714.
/// @source common practice, no source.
constexpr Rational kRasterTolerance = Rational(995, 1000);
constexpr Rational kCountTolerance = Rational(101, 100);
constexpr double kTightCircleMm = 0.3;
constexpr double kUnnoticedUpscaling = 1.005;
constexpr double kComfortableHeadroom = 1.2;
/// What a card only claims it may hold to a third of when it is full and warm.
/// @source common practice, no source.
constexpr double kTrustedClaim = 3;
constexpr double kShapeTolerance = 0.01;  // rasters are rounded to whole, often even, pixels
constexpr std::int64_t kFewestBits = 10;
/// AVC intra class 100, which broadcasters take, comes to 11:1 at 29.97.
/// @source common practice, no source.
constexpr Rational kMostCompression = 11;

Finding at_least(double have, double need, double rounding = 0) {
  const bool met = have >= need - rounding;
  return {.have = have, .need = need, .met = met ? Met::met : Met::missed};
}

Finding decided(double have, double need, bool met) {
  return {.have = have, .need = need, .met = met ? Met::met : Met::missed};
}

Finding unknown(double need) { return {.need = need, .met = Met::not_known}; }

/// Something a format has or has not, against a wish.
Finding wish_finding(Wish wish, std::optional<bool> has) {
  if (wish == Wish::either) return {};
  const double need = wish == Wish::wanted ? 1 : 0;
  if (!has) return unknown(need);
  return decided(*has ? 1 : 0, need, *has == (wish == Wish::wanted));
}

Finding only_finding(bool asked, std::optional<bool> has) {
  return wish_finding(asked ? Wish::wanted : Wish::either, has);
}

// ---- the lens ----------------------------------------------------------------------------------

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

/// Circle needed by the line that needs most.
Finding cover_finding(CoverArea area, double circle_mm, const Geometry& geometry,
                      std::span<const FrameReport> frames) {
  Finding worst{.have = circle_mm};
  for (std::size_t i = 0; i < frames.size(); ++i) {
    const double need = circle_needed_mm(rect_to_cover(area, geometry, frames[i]));
    if (i > 0 && need <= worst.need) continue;
    worst.need = need;
    worst.line = static_cast<std::uint8_t>(i);
  }
  worst.met = circle_covers(circle_mm, worst.need) ? Met::met : Met::missed;
  return worst;
}

/// The focal length of the set that comes nearest to the plan's view, in proportion.
LensThere lens_for_view(const Conditions& conditions, const WantedView& view, double width_mm) {
  const double wanted = view.focal_mm * width_mm / view.width_mm;
  double nearest = 0;
  double nearest_ratio = 0;
  for (const Lens& lens : conditions.lens_set->lenses) {
    const double ratio = std::max(lens.focal_mm / wanted, wanted / lens.focal_mm);
    if (nearest != 0 && ratio >= nearest_ratio) continue;
    nearest = lens.focal_mm;
    nearest_ratio = ratio;
  }
  LensChoice there = conditions.plan->lens;
  there.focal_mm = nearest;
  const auto circle = image_circle(there, conditions.lens_set);
  LensThere lens{.focal_mm = nearest, .view_ratio = wanted / nearest};
  if (circle) lens.image_circle_mm = circle->diameter_mm;
  return lens;
}

LensThere lens_there(const Conditions& conditions, const FrameReport& main, bool own_mode) {
  if (conditions.view && !own_mode)
    return lens_for_view(conditions, *conditions.view, main.width_mm);
  const LensChoice& lens = conditions.plan->lens;
  const auto circle = image_circle(lens, conditions.lens_set);
  LensThere there{.focal_mm = lens.focal_mm};
  if (circle) there.image_circle_mm = circle->diameter_mm;
  return there;
}

bool is_own_mode(const Conditions& conditions, const Camera& camera, const SensorMode& mode) {
  const FormatChoice& own = conditions.plan->format;
  return own.camera == camera.id && own.mode == mode.id;
}

void judge_lens(ModeFigures& figures, const Conditions& conditions, const Geometry& geometry,
                std::span<const FrameReport> frames) {
  constexpr double kNearView = 1.1;
  const double ratio = figures.lens.view_ratio;
  if (std::max(ratio, 1 / ratio) > kNearView) figures.cautions.add(Caution::other_view);
  const CoverArea area = conditions.plan->choose.must_cover;
  const auto circle = figures.lens.image_circle_mm;
  if (area == CoverArea::none || !circle) return;
  const Finding cover = cover_finding(area, *circle, geometry, frames);
  figures.findings.set(Requirement::cover, cover);
  if (cover.missed()) return;
  const double whole = circle_needed_mm(mode_rect(geometry));
  const bool outside = !circle_covers(*circle, whole);
  if (outside) figures.cautions.add(Caution::outside_circle);
  const bool tight = *circle - cover.need < kTightCircleMm;
  const bool tight_mode = !outside && *circle - whole < kTightCircleMm;
  if (tight || tight_mode) figures.cautions.add(Caution::tight_circle);
}

// ---- size --------------------------------------------------------------------------------------

/// width x height >= required, exactly: terms below 2^44 stay within 128 bits.
bool holds_photosites(const ExactRect& rect, std::int64_t required) {
  const Int128 have = Int128{rect.width.num()} * rect.height.num();
  const Int128 unit = Int128{rect.width.den()} * rect.height.den();
  return have >= unit * required;
}

Finding photosites_finding(const Conditions& conditions, const Camera& camera,
                           const SensorMode& mode, const FrameReport& main) {
  const std::int64_t required = conditions.terms.photosites;
  if (required == 0) return {};
  const auto need = static_cast<double>(required);
  if (conditions.terms.counted_on == CountedOn::frame && !is_film(camera)) {
    const double have = main.photosites.width.to_double() * main.photosites.height.to_double();
    return decided(have, need, holds_photosites(main.photosites, required));
  }
  double have = photosites_counted(conditions, camera, mode);
  if (conditions.terms.counted_on == CountedOn::frame) {
    const double inside = main.photosites.width.to_double() * main.photosites.height.to_double();
    const double per_mm = conditions.plan->commission.film_pixels_per_mm;
    have = picture_pixels(inside, main.width_mm * main.height_mm, per_mm);
  }
  return at_least(have, need);
}

double least_room_percent(const FrameReport& frame, const SensorMode& mode) {
  const double across =
      frame.photosites.width.to_double() / static_cast<double>(mode.width_photosites);
  const double down =
      frame.photosites.height.to_double() / static_cast<double>(mode.height_photosites);
  return 100 * (1 - std::max(across, down));
}

Finding room_finding(const Conditions& conditions, const SensorMode& mode,
                     std::span<const FrameReport> frames) {
  const double need = conditions.plan->choose.min_room_percent;
  if (need <= 0) return {};
  double least = 100;
  std::uint8_t line = 0;
  for (std::size_t i = 0; i < frames.size(); ++i) {
    const double room = least_room_percent(frames[i], mode);
    if (room >= least) continue;
    least = room;
    line = static_cast<std::uint8_t>(i);
  }
  Finding finding = at_least(least, need, kRounding);
  finding.line = line;
  return finding;
}

Finding protection_finding(const Conditions& conditions) {
  const Rational need = conditions.terms.protection;
  if (need == Rational(0)) return {};
  const auto lines = conditions.lines();
  std::size_t least = 0;
  for (std::size_t i = 1; i < lines.size(); ++i) {
    if (lines[i].protection < lines[least].protection) least = i;
  }
  const Rational have = lines[least].protection;
  Finding finding = decided(100 * have.to_double(), 100 * need.to_double(), have >= need);
  finding.line = static_cast<std::uint8_t>(least);
  return finding;
}

/// The file's raster against what is asked for; width and squeeze left in it together.
void judge_raster(Findings& findings, const TermsInForce& terms, const Geometry& geometry) {
  const Rational left = geometry.squeeze / geometry.in_camera_desqueeze;
  const Rational width = Rational(geometry.recorded_width_pixels) * left;
  const Rational height = geometry.recorded_height_pixels;
  const auto side = [](Rational have, Rational need) -> Finding {
    if (need == Rational(0)) return {};
    return decided(have.to_double(), need.to_double(), have >= need * kRasterTolerance);
  };
  findings.set(Requirement::raster_width, side(width, terms.width_pixels));
  findings.set(Requirement::raster_height, side(height, terms.height_pixels));
  const Rational count = terms.width_pixels * terms.height_pixels;
  if (count == Rational(0)) return;
  const Rational have = Rational(geometry.recorded_width_pixels) * height;
  findings.set(Requirement::raster_count,
               decided(have.to_double(), count.to_double(), have * kCountTolerance >= count));
}

/// One axis: delivered pixels over recorded ones inside the line after de-squeeze.
struct AxisScale {
  Rational delivered;
  Rational inside;  ///< Photosites inside the line.
  std::int64_t recorded = 1;
  std::int64_t read = 1;
  Rational squeeze = 1;  ///< Left in the file.

  [[nodiscard]] double value() const {
    return delivered.to_double() * static_cast<double>(read) /
           (inside.to_double() * static_cast<double>(recorded) * squeeze.to_double());
  }
  /// Exactly, where the fractions can be written.
  [[nodiscard]] bool at_most(Rational limit) const {
    const double scale = value() / limit.to_double();
    if (std::abs(scale - 1) > kRounding) return scale < 1;
    const Rational have = delivered * Rational(read);
    const Rational may = inside * Rational(recorded) * squeeze * limit;
    return have.ok() && may.ok() ? have <= may : scale <= 1;
  }
};

std::array<AxisScale, 2> axes_of(const LineRaster& picture, const FrameReport& frame,
                                 const Geometry& geometry) {
  return {AxisScale{.delivered = picture.width_pixels,
                    .inside = frame.photosites.width,
                    .recorded = geometry.recorded_width_pixels,
                    .read = geometry.width_photosites,
                    .squeeze = geometry.squeeze / geometry.in_camera_desqueeze},
          AxisScale{.delivered = picture.height_pixels,
                    .inside = frame.photosites.height,
                    .recorded = geometry.recorded_height_pixels,
                    .read = geometry.height_photosites}};
}

void judge_scale(FormatFigures& figures, const Conditions& conditions, const Geometry& geometry,
                 std::span<const FrameReport> frames) {
  const Rational limit = conditions.terms.largest_upscaling;
  bool within = true;
  Upscaling& worst = figures.upscaling;
  for (std::size_t i = 0; i < frames.size(); ++i) {
    for (const AxisScale& axis : axes_of(conditions.pictures[i], frames[i], geometry)) {
      if (limit != Rational(0)) within = within && axis.at_most(limit);
      const double scale = axis.value();
      if (scale > worst.scale) worst = {scale, static_cast<std::uint8_t>(i)};
    }
  }
  if (worst.scale > kUnnoticedUpscaling) figures.cautions.add(Caution::upscaled);
  if (limit != Rational(0)) {
    Finding finding = decided(worst.scale, limit.to_double(), within);
    finding.line = worst.line;
    figures.findings.set(Requirement::upscaling, finding);
  }
  const double push_in = conditions.plan->choose.min_push_in_percent;
  if (push_in <= 0) return;
  Finding finding = at_least(std::max(0.0, 100 * (1 - worst.scale)), push_in, kRounding);
  finding.line = worst.line;
  figures.findings.set(Requirement::push_in, finding);
}

// ---- rates, card and codec ---------------------------------------------------------------------

Finding rate_finding(const std::optional<Rational>& ceiling, Rational rate) {
  if (!ceiling) return {};
  return decided(ceiling->to_double(), rate.to_double(), *ceiling >= rate);
}

std::optional<Rational> lower(const std::optional<Rational>& a, const std::optional<Rational>& b) {
  if (!a || !b) return a ? a : b;
  return *b < *a ? b : a;
}

Finding project_rate_finding(const Conditions& conditions) {
  const auto* rates = conditions.terms.rates;
  if (rates == nullptr) return {};
  const Rational rate = conditions.plan->run.project_rate;
  const bool allowed = std::find(rates->begin(), rates->end(), rate) != rates->end();
  return decided(allowed ? 1 : 0, 1, allowed);
}

Finding desqueeze_finding(const Conditions& conditions, const Recording& recording) {
  if (recording.desqueeze == Rational(1)) return {};
  return decided(recording.desqueeze.to_double(), conditions.squeeze.to_double(),
                 recording.desqueeze == conditions.squeeze);
}

/// A spherical lens leaves nothing to de-squeeze.
Finding desqueeze_wish_finding(const Conditions& conditions, const Recording& recording) {
  if (conditions.squeeze == Rational(1)) return {};
  return wish_finding(conditions.terms.in_camera_desqueeze, recording.desqueeze != Rational(1));
}

Finding media_finding(const Camera& camera, const Card& card) {
  if (camera.media.empty() || card.kind.empty()) return {};
  const bool takes =
      std::find(camera.media.begin(), camera.media.end(), card.kind) != camera.media.end();
  return decided(takes ? 1 : 0, 1, takes);
}

void judge_data(FormatFigures& figures, const Conditions& conditions, const FormatRows& format,
                const std::optional<DataFigures>& data) {
  Findings& findings = figures.findings;
  findings.set(Requirement::frame_size, at_least(data ? 1 : 0, 1));
  if (!data) return;
  figures.bytes_per_s = data->bytes_per_s;
  if (is_film(*format.camera)) return;
  figures.minutes_per_card = data->minutes_per_card;
  findings.set(Requirement::card_speed, at_least(data->write_headroom, 1));
  if (data->write_headroom < kComfortableHeadroom) {
    figures.cautions.add(Caution::slow_card);
  } else if (conditions.card->guarantee.empty() && data->write_headroom < kTrustedClaim) {
    figures.cautions.add(Caution::claimed_card);
  }
  const double wanted = conditions.plan->choose.min_minutes_per_card;
  if (wanted <= 0) return;
  findings.set(Requirement::card_minutes, at_least(data->minutes_per_card.least, wanted));
}

/// Uncompressed bits over stored bits of the same raster; nothing where a fact is missing.
std::optional<Rational> compression_of(const CodecFacts& facts, const Geometry& geometry,
                                       const std::optional<DataFigures>& data) {
  if (facts.lossless.value_or(false)) return Rational(1);
  if (!facts.bit_depth || !facts.chroma || !data) return std::nullopt;
  const Rational pixels =
      Rational(geometry.recorded_width_pixels) * Rational(geometry.recorded_height_pixels);
  const Rational bits = Rational(*facts.bit_depth) * samples_per_pixel(*facts.chroma) * pixels;
  const Rational ratio = bits / (Rational(8) * Rational(data->frame_bytes.most));
  return ratio.ok() ? std::optional(ratio) : std::nullopt;
}

Finding chroma_finding(std::optional<Chroma> least, std::optional<Chroma> chroma) {
  if (!least) return {};
  const auto need = static_cast<double>(*least);
  if (!chroma) return unknown(need);
  return at_least(static_cast<double>(*chroma), need);
}

void judge_codec(FormatFigures& figures, const Conditions& conditions, const Geometry& geometry,
                 const FormatRows& format, const std::optional<DataFigures>& data) {
  const CodecFacts& facts = format.codec->facts;
  const TermsInForce& terms = conditions.terms;
  Findings& findings = figures.findings;
  if (terms.bit_depth > 0) {
    const auto need = static_cast<double>(terms.bit_depth);
    findings.set(Requirement::bit_depth, facts.bit_depth
                                             ? at_least(static_cast<double>(*facts.bit_depth), need)
                                             : unknown(need));
  }
  findings.set(Requirement::chroma, chroma_finding(terms.chroma, facts.chroma));
  // A scan has no raw of a sensor: what is kept of film is the negative.
  if (!is_film(*format.camera)) {
    findings.set(Requirement::sensor_raw, wish_finding(terms.sensor_raw, is_sensor_raw(facts)));
  }
  findings.set(Requirement::lossless, only_finding(terms.lossless, facts.lossless));
  findings.set(Requirement::intra, only_finding(terms.intra, facts.intra));
  findings.set(Requirement::plays_at_once, only_finding(terms.plays_at_once, facts.plays_at_once));
  const auto ratio = compression_of(facts, geometry, data);
  if (ratio) figures.compression = ratio->to_double();
  if (terms.compression > Rational(0)) {
    const double most = terms.compression.to_double();
    findings.set(
        Requirement::compression,
        ratio ? decided(ratio->to_double(), most, *ratio <= terms.compression) : unknown(most));
  }
  if (facts.bit_depth.value_or(kFewestBits) < kFewestBits) figures.cautions.add(Caution::few_bits);
  if (ratio && *ratio > kMostCompression) figures.cautions.add(Caution::much_compressed);
}

/// The bounds of the data over frames of one size.
struct StreamFigures {
  std::int64_t stored_bytes = 0;
  double bytes_per_s = 0;
  double minutes = 0;
  double headroom = 0;
};

std::optional<StreamFigures> stream_figures(const Conditions& conditions, bool on_card,
                                            std::int64_t frame_bytes) {
  const auto stream = stream_of(frame_bytes, conditions.plan->run, *conditions.container);
  if (!stream) return std::nullopt;
  StreamFigures figures{.stored_bytes = stream->frame_bytes,
                        .bytes_per_s = stream->bytes_per_s().to_double()};
  if (!on_card) return figures;
  const auto usable = usable_bytes(*conditions.card);
  if (!usable) return std::nullopt;
  const auto frames = frames_per_card(*stream, *usable);
  if (!frames || *frames == 0) return std::nullopt;
  figures.minutes = minutes_of(*frames, stream->rate);
  figures.headroom = write_headroom(*stream, conditions.card->write_bytes_per_s);
  return figures;
}

}  // namespace

Conditions conditions_of(const Plan& plan, const Catalogue& library) {
  Conditions conditions{
      .plan = &plan,
      .pictures = {},
      .lens_set = find_row(plan.own.lens_sets, library.lens_sets, plan.lens.set),
      .container = find_row(plan.own.containers, library.containers, plan.store.container),
      .card = find_row(plan.own.cards, library.cards, plan.store.card),
      .terms = terms_in_force(plan, library)};
  conditions.squeeze = lens_squeeze(plan.lens, conditions.lens_set);
  for (std::size_t i = 0; i < plan.deliverable.frame_lines.size(); ++i) {
    conditions.pictures[i] = line_raster(plan.deliverable, plan.deliverable.frame_lines[i]);
  }
  return conditions;
}

std::vector<FrameReport> frames_on(const Conditions& conditions, const SensorMode& mode) {
  const Geometry geometry = make_geometry(mode, {}, conditions.squeeze);
  std::vector<FrameReport> frames;
  frames.reserve(conditions.lines().size());
  for (const FrameLine& line : conditions.lines()) {
    frames.push_back(frame_report(line, geometry, frames.empty() ? nullptr : frames.data()));
  }
  return frames;
}

double photosites_counted(const Conditions& conditions, const Camera& camera,
                          const SensorMode& mode) {
  const auto count = static_cast<double>(mode.width_photosites * mode.height_photosites);
  if (!is_film(camera)) return count;
  const double per_mm = conditions.plan->commission.film_pixels_per_mm;
  return picture_pixels(count, mode.width_mm * mode.height_mm, per_mm);
}

ModeFigures mode_figures(const Conditions& conditions, const Camera& camera, const SensorMode& mode,
                         std::span<const FrameReport> frames) {
  const Geometry geometry = make_geometry(mode, {}, conditions.squeeze);
  ModeFigures figures;
  figures.lens = lens_there(conditions, frames.front(), is_own_mode(conditions, camera, mode));
  if (mode.squeeze && *mode.squeeze != conditions.squeeze) {
    figures.cautions.add(Caution::other_squeeze);
  }
  if (mode.binned) figures.cautions.add(Caution::binned);
  judge_lens(figures, conditions, geometry, frames);
  Findings& findings = figures.findings;
  findings.set(Requirement::photosites,
               photosites_finding(conditions, camera, mode, frames.front()));
  findings.set(Requirement::room, room_finding(conditions, mode, frames));
  findings.set(Requirement::protection, protection_finding(conditions));
  findings.set(Requirement::project_rate, project_rate_finding(conditions));
  findings.set(Requirement::mode_rate, rate_finding(lower(mode.max_rate, camera.max_rate),
                                                    conditions.plan->run.sensor_rate));
  if (!is_film(camera)) {
    findings.set(Requirement::media, media_finding(camera, *conditions.card));
  }
  return figures;
}

std::optional<DataFigures> data_figures(const Conditions& conditions, const FormatRows& format) {
  const Geometry geometry = make_geometry(*format.mode, *format.recording, conditions.squeeze);
  const auto bytes =
      bytes_per_frame(format.codec->form, geometry.recorded_width_pixels,
                      geometry.recorded_height_pixels, conditions.plan->run.sensor_rate);
  if (!bytes) return std::nullopt;
  const bool on_card = !is_film(*format.camera);
  const auto light = stream_figures(conditions, on_card, bytes->least);
  const auto heavy = bytes->exact() ? light : stream_figures(conditions, on_card, bytes->most);
  if (!light || !heavy) return std::nullopt;
  return DataFigures{.frame_bytes = *bytes,
                     .stored_bytes = {light->stored_bytes, heavy->stored_bytes},
                     .bytes_per_s = {light->bytes_per_s, heavy->bytes_per_s},
                     .minutes_per_card = {heavy->minutes, light->minutes},
                     .write_headroom = heavy->headroom};
}

FormatFigures format_figures(const Conditions& conditions, const ModeFigures& mode_part,
                             const FormatRows& format, std::span<const FrameReport> frames,
                             const std::optional<DataFigures>& data) {
  const Recording& recording = *format.recording;
  const Geometry geometry = make_geometry(*format.mode, recording, conditions.squeeze);
  FormatFigures figures;
  figures.recorded_width_pixels = static_cast<std::int32_t>(geometry.recorded_width_pixels);
  figures.recorded_height_pixels = static_cast<std::int32_t>(geometry.recorded_height_pixels);
  figures.lens = mode_part.lens;
  figures.cautions = mode_part.cautions;
  figures.findings = mode_part.findings;
  Findings& findings = figures.findings;
  judge_raster(findings, conditions.terms, geometry);
  figures.raster_stretch = raster_stretch(geometry);
  if (std::abs(figures.raster_stretch - 1) > kShapeTolerance) {
    figures.cautions.add(Caution::other_shape);
  }
  judge_scale(figures, conditions, geometry, frames);
  findings.set(Requirement::desqueeze, desqueeze_finding(conditions, recording));
  findings.set(Requirement::desqueeze_wish, desqueeze_wish_finding(conditions, recording));
  findings.set(Requirement::recording_rate,
               rate_finding(recording.max_rate, conditions.plan->run.sensor_rate));
  judge_data(figures, conditions, format, data);
  judge_codec(figures, conditions, geometry, format, data);
  if (findings.count(Met::not_known) > 0) figures.cautions.add(Caution::not_known);
  const bool on_card = data && !is_film(*format.camera);
  const std::int64_t largest_frame =
      on_card ? card_bound_bytes(*format.codec, data->stored_bytes.most) : 0;
  const RateCeiling ceiling =
      rate_ceiling(*format.camera, *format.mode, recording, *conditions.card, largest_frame);
  figures.rate_ceiling = ceiling.rate;
  figures.rate_limited_by = ceiling.limited_by;
  return figures;
}

void add_plan_findings(Findings& findings, const Conditions& conditions) {
  constexpr double kCopiesNeeded = 2;
  const LensChoice& lens = conditions.plan->lens;
  const Storing& store = conditions.plan->store;
  findings.set(
      Requirement::copies,
      at_least(static_cast<double>(store.drive_copies + store.tape_copies), kCopiesNeeded));
  if (conditions.lens_set == nullptr) return;
  for (const Lens& row : conditions.lens_set->lenses) {
    if (row.focal_mm != lens.focal_mm) continue;
    findings.set(Requirement::stop, at_least(lens.f_number, row.widest_t_stop));
    findings.set(Requirement::focus, at_least(lens.focus_m, row.close_focus_m));
  }
}

}  // namespace widegate
