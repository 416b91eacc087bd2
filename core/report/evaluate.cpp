#include "core/report/evaluate.h"

#include "core/base/number_text.h"
#include "core/choose/format_figures.h"
#include "core/cover/cover.h"
#include "core/film/film.h"
#include "core/frame/frame.h"
#include "core/optics/lens_squeeze.h"
#include "core/optics/mode_geometry.h"
#include "core/plan/plan_check.h"
#include "core/report/inputs.h"
#include "core/report/notes.h"
#include "core/resolve/resolve.h"
#include "core/run/run.h"
#include "core/run/timecode.h"
#include "core/see/see.h"
#include "core/store/store.h"

namespace widegate {
namespace {

/// The rows a checked plan names; only lens_set and tape may be null.
struct Chosen {
  const Camera* camera;
  const SensorMode* mode;
  const Recording* recording;
  const LensSet* lens_set;
  const Codec* codec;
  const Container* container;
  const Card* card;
  const Link* link;
  const Drive* drive;
  const Tape* tape;
  const Checksum* checksum;
};

Chosen choose_rows(const Plan& plan, const Catalogue& library) {
  const Catalogue& own = plan.own;
  const Camera* camera = find_row(own.cameras, library.cameras, plan.format.camera);
  const SensorMode* mode = find_row(camera->modes, plan.format.mode);
  return {.camera = camera,
          .mode = mode,
          .recording = find_row(mode->recordings, plan.format.recording),
          .lens_set = find_row(own.lens_sets, library.lens_sets, plan.lens.set),
          .codec = find_row(own.codecs, library.codecs, plan.format.codec),
          .container = find_row(own.containers, library.containers, plan.store.container),
          .card = find_row(own.cards, library.cards, plan.store.card),
          .link = find_row(own.links, library.links, plan.store.link),
          .drive = find_row(own.drives, library.drives, plan.store.drive),
          .tape = find_row(own.tapes, library.tapes, plan.store.tape),
          .checksum = find_row(own.checksums, library.checksums, plan.store.checksum)};
}

ModeReport mode_report(const Geometry& geometry) {
  const double squeeze = geometry.squeeze.to_double();
  return {.width_photosites = geometry.width_photosites,
          .height_photosites = geometry.height_photosites,
          .width_mm = geometry.width.value,
          .height_mm = geometry.height.value,
          .diagonal_mm = diagonal_of(geometry.width.value, geometry.height.value),
          .pitch_um = 1000 * geometry.mm_per_photosite_x(),
          .squeeze = squeeze,
          .desqueezed_aspect = squeeze * static_cast<double>(geometry.width_photosites) /
                               static_cast<double>(geometry.height_photosites)};
}

void add_frames(Report& report, const Plan& plan, const Geometry& geometry) {
  report.frames.reserve(plan.deliverable.frame_lines.size());
  for (const FrameLine& line : plan.deliverable.frame_lines) {
    const FrameReport* main = report.frames.empty() ? nullptr : &report.frames.front();
    FrameReport& frame = report.frames.emplace_back(frame_report(line, geometry, main));
    set_nominal_scale(frame, line_raster(plan.deliverable, line), geometry);
  }
}

/// Playing time of a full card. The time code is that of the fewest frames a card may take.
void set_card_lengths(Report& report) {
  constexpr double kSecondsPerMinute = 60;
  const Rational rate = report.run.project_rate;
  const ByteRange frames = report.store.frames_per_card;
  const auto minutes = [rate](std::int64_t count) {
    return static_cast<double>(count) / rate.to_double() / kSecondsPerMinute;
  };
  report.run.screen_minutes_per_card = {minutes(frames.least), minutes(frames.most)};
  report.run.card_timecode = timecode_text(frames.least, rate, TimecodeCount::non_drop);
  report.run.card_timecode_drop = timecode_text(frames.least, rate, TimecodeCount::drop);
}

Problem store_problem(StoreFault fault, const Plan& plan, const Geometry& geometry) {
  switch (fault) {
    case StoreFault::no_frame_size:
      return {.pointer = "/format/codec",
              .value = plan.format.codec,
              .accepted = "a codec that has a frame size for " +
                          std::to_string(geometry.recorded_width_pixels) + " x " +
                          std::to_string(geometry.recorded_height_pixels) + " pixels at " +
                          print_rational(plan.run.sensor_rate) + " frames per second"};
    case StoreFault::card_too_small:
      return {.pointer = "/store/card",
              .value = plan.store.card,
              .accepted = "a card that holds at least one frame of this format"};
    case StoreFault::too_large:
      break;
  }
  return {.pointer = "/shooting",
          .value = "the amount of footage",
          .accepted = "an amount that takes fewer than 2^53 frames, cards, drives or tapes"};
}

/// The requirements of a ranking, judged by what the report already has.
void judge(Report& report, const Plan& plan, const Chosen& rows, const Catalogue& catalogue) {
  const Conditions conditions = conditions_of(plan, catalogue);
  const ModeFigures mode_part = mode_figures(conditions, *rows.camera, *rows.mode, report.frames);
  const StoreReport& store = report.store;
  const DataFigures data{.frame_bytes = store.bytes_per_frame,
                         .stored_bytes = store.bytes_per_frame_stored,
                         .bytes_per_s = store.bytes_per_s,
                         .minutes_per_card = store.minutes_per_card,
                         .write_headroom = store.write_headroom.least};
  const FormatRows format{rows.camera, rows.mode, rows.recording, rows.codec};
  CommissionReport& commission = report.commission;
  const FormatFigures figures = format_figures(conditions, mode_part, format, report.frames, data);
  commission.findings = figures.findings;
  commission.cautions = figures.cautions;
  commission.compression = figures.compression;
  commission.raster_stretch = figures.raster_stretch;
  commission.bit_depth = rows.codec->facts.bit_depth;
  commission.made_for_squeeze = rows.mode->squeeze.value_or(Rational(0)).to_double();
  commission.format_accepted = all_met(commission.findings);
  add_plan_findings(commission.findings, conditions);
  commission.met = all_met(commission.findings);
  commission.name = conditions.terms.name;
  const Finding photosites = commission.findings[Requirement::photosites];
  report.resolve.mandate = {.required = conditions.terms.photosites,
                            .have = photosites.asked()
                                        ? photosites.have
                                        : photosites_counted(conditions, *rows.camera, *rows.mode),
                            .mode_have = static_cast<double>(report.resolve.mode_photosites),
                            .frame_have = report.resolve.frame_photosites,
                            .counted_on_frame = conditions.terms.counted_on == CountedOn::frame,
                            .met = !photosites.missed()};
}

std::optional<double> read_out_s(const Camera& camera) {
  constexpr double kMillisecondsPerSecond = 1000;
  if (!camera.read_out_ms) return std::nullopt;
  return *camera.read_out_ms / kMillisecondsPerSecond;
}

/// Bytes a frame for which a card sets the rate; film meets none.
std::int64_t bound_bytes(const Chosen& rows, const StoreReport& store) {
  return is_film(*rows.camera) ? 0
                               : card_bound_bytes(*rows.codec, store.bytes_per_frame_stored.most);
}

/// The scan's own money and the film's together.
void add_film(Report& report, const Plan& plan, const Camera& camera, const Geometry& geometry) {
  report.film = film_report(plan, camera, geometry, report.frames.front(),
                            report.store.recorded_hours_per_day);
  if (!report.film) return;
  report.store.cost.least += report.film->cost;
  report.store.cost.most += report.film->cost;
}

Span running_minutes(const Report& report) {
  if (!report.film) return report.store.minutes_per_card;
  return {report.film->magazine_minutes, report.film->magazine_minutes};
}

Headline headline(const Report& report) {
  constexpr double kMillion = 1e6;
  const StoreReport& store = report.store;
  return {.horizontal_fov_deg = report.see.frame_horizontal_fov_deg,
          .vertical_fov_deg = report.see.frame_vertical_fov_deg,
          .diagonal_fov_deg = report.see.frame_diagonal_fov_deg,
          .mode_megapixels = static_cast<double>(report.resolve.mode_photosites) / kMillion,
          .frame_megapixels = report.resolve.frame_photosites / kMillion,
          .minutes_per_card = running_minutes(report),
          .data_rate_megabits_per_s = {store.bytes_per_s.least * 8 / kMillion,
                                       store.bytes_per_s.most * 8 / kMillion}};
}

}  // namespace

Report evaluate(const Plan& plan, const Catalogue& catalogue) {
  Report report;
  report.problems = check_plan(plan, catalogue);
  if (!report.problems.empty()) return report;
  const Chosen rows = choose_rows(plan, catalogue);
  const Geometry geometry =
      make_geometry(*rows.mode, *rows.recording, lens_squeeze(plan.lens, rows.lens_set));
  const StoreParts parts{.codec = *rows.codec,
                         .container = *rows.container,
                         .card = *rows.card,
                         .link = *rows.link,
                         .drive = *rows.drive,
                         .tape = rows.tape,
                         .checksum = *rows.checksum,
                         .film = is_film(*rows.camera)};
  tl::expected<StoreReport, StoreFault> store =
      store_report(plan, parts, geometry.recorded_width_pixels, geometry.recorded_height_pixels);
  if (!store) {
    report.problems.push_back(store_problem(store.error(), plan, geometry));
    return report;
  }
  report.store = std::move(*store);
  report.format = plan.format;
  report.mode = mode_report(geometry);
  add_frames(report, plan, geometry);
  const FrameReport& frame = report.frames.front();
  report.cover = cover_report(plan.lens, rows.lens_set, geometry, frame);
  report.see = see_report(plan, rows.lens_set, geometry, frame, catalogue);
  report.resolve = resolve_report(plan, geometry, report.frames);
  report.run = run_report(plan.run,
                          rate_ceiling(*rows.camera, *rows.mode, *rows.recording, *rows.card,
                                       bound_bytes(rows, report.store)),
                          read_out_s(*rows.camera));
  if (!report.store.no_cards) set_card_lengths(report);
  add_film(report, plan, *rows.camera, geometry);
  judge(report, plan, rows, catalogue);
  report.headline = headline(report);
  report.notes = make_notes(plan, report);
  add_given(report, plan, parts);
  report.camera_invented = is_invented(rows.camera->source);
  report.lens_invented = rows.lens_set != nullptr && is_invented(rows.lens_set->source);
  return report;
}

}  // namespace widegate
