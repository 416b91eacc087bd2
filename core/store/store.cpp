#include "core/store/store.h"

#include <algorithm>

#include "core/catalogue/codec.h"
#include "core/store/archive.h"
#include "core/store/card_load.h"
#include "core/store/copying.h"

namespace widegate {
namespace {

constexpr double kSecondsPerMinute = 60;
constexpr double kSecondsPerHour = 3600;
constexpr double kMinuteUs = 60e6;
constexpr double kHourUs = 3600e6;
constexpr double kGibibyte = 1024.0 * 1024.0 * 1024.0;

// What both ends of a range share.
struct Setting {
  const Plan& plan;
  const StoreParts& parts;
  Footage footage;
  CardUse use;
  std::int64_t audio_bytes_per_s;
  double playing_seconds;
};

// Every figure for frames of one size.
struct Figures {
  std::int64_t stored_bytes = 0;
  double bytes_per_s = 0;
  std::int64_t frames_per_card = 0;
  double minutes_per_card = 0;
  double write_headroom = 0;
  CardFigures card;
  DayCards day_cards;
  ArchiveFigures archive;
  double offload_hours_per_day = 0;
  std::int64_t cards_in_all = 0;
  double card_cost = 0;
  double wrangler_cost = 0;
};

// Copying of one unit's day, and what cards and copying cost.
void add_work(Figures& figures, double camera_bytes_per_day, const Setting& setting) {
  const Shooting& shooting = setting.plan.shooting;
  const CopySpeed& copy = setting.use.copy;
  figures.cards_in_all = figures.card.rotation.cards * shooting.units * shooting.cameras_per_unit;
  const auto station_days = static_cast<double>(shooting.units * shooting.days);
  figures.offload_hours_per_day =
      camera_bytes_per_day * static_cast<double>(shooting.cameras_per_unit) *
      static_cast<double>(copy.passes) / static_cast<double>(copy.bytes_per_s) / kSecondsPerHour;
  figures.card_cost = static_cast<double>(figures.cards_in_all) * setting.parts.card.price;
  figures.wrangler_cost =
      figures.offload_hours_per_day * station_days * setting.plan.store.wrangler_price_per_hour;
}

/// What one camera brings on a day. A scan is not on cards: all of it is one piece that is parted.
std::optional<DayCards> day_cards(const Stream& stream, const CardFigures& card,
                                  std::int64_t frames_per_card, const Quotient& bytes_per_day,
                                  bool film) {
  const Wide all = ceil_div(bytes_per_day.num, bytes_per_day.den);
  if (film) return DayCards{.loose_bytes = all};
  const Quotient speed = stream.bytes_per_s();
  const auto full_bytes = floor_div(speed.num * frames_per_card, stream.rate.num()).count();
  if (!full_bytes) return std::nullopt;
  if (card.cards_per_day == 0) return DayCards{};
  // Full cards are rounded down to whole bytes, so a few bytes may be left beside the last one.
  const std::int64_t full = card.cards_per_day - 1;
  const auto last = (all - Wide(*full_bytes) * full).count();
  if (!last) return std::nullopt;
  return DayCards{
      .full_bytes = *full_bytes, .full = full, .last_bytes = std::min(*last, *full_bytes)};
}

/// All days of all cameras.
std::optional<MediaLoad> load_of(const DayCards& day, std::int64_t camera_days) {
  const auto full = (Wide(day.full) * camera_days).count();
  if (!full) return std::nullopt;
  return MediaLoad{.pieces = {{day.full_bytes, *full}, {day.last_bytes, camera_days}},
                   .loose = day.loose_bytes * camera_days};
}

tl::expected<Figures, StoreFault> figures_of(std::int64_t frame_bytes, const Setting& setting) {
  const tl::unexpected<StoreFault> too_large(StoreFault::too_large);
  const auto stream = stream_of(frame_bytes, setting.plan.run, setting.parts.container);
  if (!stream) return too_large;
  const auto frames = frames_per_card(*stream, setting.use.usable_bytes);
  if (!frames) return too_large;
  if (*frames == 0) return tl::unexpected(StoreFault::card_too_small);
  const FootageBytes bytes = setting.footage.bytes(*stream);
  const auto card =
      card_figures({.frames_per_card = *frames, .bytes_per_day = bytes.per_day}, setting.use);
  if (!card) return too_large;
  const bool film = setting.parts.film;
  const auto day = day_cards(*stream, *card, *frames, bytes.per_day, film);
  const auto load = day ? load_of(*day, setting.footage.camera_days) : std::nullopt;
  if (!load) return too_large;
  const auto archive = archive_figures(setting.plan.store, setting.parts, bytes.total, *load,
                                       setting.playing_seconds);
  if (!archive) return too_large;
  Figures figures{.stored_bytes = stream->frame_bytes,
                  .bytes_per_s = stream->bytes_per_s().to_double(),
                  .frames_per_card = *frames,
                  .minutes_per_card = minutes_of(*frames, stream->rate),
                  .write_headroom = write_headroom(*stream, setting.parts.card.write_bytes_per_s),
                  .card = *card,
                  .day_cards = *day,
                  .archive = *archive};
  add_work(figures, bytes.per_day.to_double(), setting);
  return figures;
}

Span span(double a, double b) { return {std::min(a, b), std::max(a, b)}; }
ByteRange range(std::int64_t a, std::int64_t b) { return {std::min(a, b), std::max(a, b)}; }

void report_cards(StoreReport& report, const Figures& light, const Figures& heavy) {
  report.bytes_per_frame_stored = range(light.stored_bytes, heavy.stored_bytes);
  report.bytes_per_s = span(light.bytes_per_s, heavy.bytes_per_s);
  report.bytes_per_minute =
      span(light.bytes_per_s * kSecondsPerMinute, heavy.bytes_per_s * kSecondsPerMinute);
  report.frames_per_card = range(light.frames_per_card, heavy.frames_per_card);
  report.minutes_per_card = span(light.minutes_per_card, heavy.minutes_per_card);
  report.write_headroom = span(light.write_headroom, heavy.write_headroom);
  report.cards_per_day = range(light.card.cards_per_day, heavy.card.cards_per_day);
  report.card_change_minutes = span(static_cast<double>(light.card.change_us) / kMinuteUs,
                                    static_cast<double>(heavy.card.change_us) / kMinuteUs);
  report.cards_in_rotation = range(light.card.rotation.cards, heavy.card.rotation.cards);
  report.cards_in_all = range(light.cards_in_all, heavy.cards_in_all);
  report.rotation_sustainable = light.card.rotation.sustainable && heavy.card.rotation.sustainable;
}

void report_archive(StoreReport& report, const Figures& light, const Figures& heavy) {
  const ArchiveFigures& a = light.archive;
  const ArchiveFigures& b = heavy.archive;
  report.offload_hours_per_day = span(light.offload_hours_per_day, heavy.offload_hours_per_day);
  report.shoot_total_bytes = span(a.shoot_total_bytes, b.shoot_total_bytes);
  report.copies_total_bytes = span(a.copies_total_bytes, b.copies_total_bytes);
  report.lightest_day = light.day_cards;
  report.heaviest_day = heavy.day_cards;
  report.drives = range(a.drives, b.drives);
  report.fewest_drives = range(a.fewest_drives, b.fewest_drives);
  report.tapes = range(a.tapes, b.tapes);
  report.fewest_tapes = range(a.fewest_tapes, b.fewest_tapes);
  report.tape_hours = span(a.tape_hours, b.tape_hours);
  report.upload_total_bytes = span(a.upload_total_bytes, b.upload_total_bytes);
  report.upload_hours = span(a.upload_hours, b.upload_hours);
  report.card_cost = span(light.card_cost, heavy.card_cost);
  report.drive_cost = span(a.drive_cost, b.drive_cost);
  report.tape_cost = span(a.tape_cost, b.tape_cost);
  report.wrangler_cost = span(light.wrangler_cost, heavy.wrangler_cost);
  report.upload_cost = span(a.upload_cost, b.upload_cost);
}

Span sum(std::initializer_list<Span> parts) {
  Span total;
  for (const Span& part : parts) {
    total.least += part.least;
    total.most += part.most;
  }
  return total;
}

void report_shared(StoreReport& report, const Setting& setting) {
  const CopySpeed& copy = setting.use.copy;
  const auto usable = static_cast<double>(setting.use.usable_bytes);
  const double minutes = usable * static_cast<double>(copy.passes) /
                         static_cast<double>(copy.bytes_per_s) / kSecondsPerMinute;
  report.audio_bytes_per_s = static_cast<double>(setting.audio_bytes_per_s);
  report.card_guaranteed = !setting.parts.card.guarantee.empty();
  report.usable_card_bytes = setting.use.usable_bytes;
  report.offload_minutes_per_card = {minutes, minutes};
  report.offload_bytes_per_s = copy.bytes_per_s;
  report.offload_passes = copy.passes;
  report.offload_limited_by = copy.limited_by;
  report.drive_gib = static_cast<double>(setting.parts.drive.capacity_bytes) / kGibibyte;
  report.copies = setting.plan.store.drive_copies +
                  (setting.parts.tape == nullptr ? 0 : setting.plan.store.tape_copies);
  report.playing_hours = setting.playing_seconds / kSecondsPerHour;
  report.recorded_hours_per_day = setting.footage.microseconds_per_day().to_double() / kHourUs;
}

CardUse card_use(const Plan& plan, const StoreParts& parts, const Footage& footage,
                 std::int64_t usable) {
  const Quotient running = footage.microseconds_per_day();
  return {.usable_bytes = usable,
          .copy = copy_speed(plan.store, parts),
          .sensor_rate = plan.run.sensor_rate,
          .frames_per_day = footage.frames_per_day(),
          .running_us = floor_div(running.num, running.den).count().value_or(kLargestExact),
          .day_us = std::max<std::int64_t>(1, microseconds_of_hours(plan.shooting.day_hours)),
          .days = plan.shooting.days,
          .cameras_per_unit = plan.shooting.cameras_per_unit,
          .travel_us = microseconds_of_minutes(plan.store.travel_minutes),
          .return_us = microseconds_of_minutes(plan.store.return_minutes) +
                       microseconds_of_hours(plan.store.hold_hours),
          .spare_cards = plan.store.spare_cards};
}

/// A scan comes on drives; no card is filled, changed or copied.
void drop_cards(StoreReport& report) {
  report.no_cards = true;
  report.cards_per_day = report.cards_in_rotation = report.cards_in_all = {};
  report.rotation_sustainable = true;
  report.offload_minutes_per_card = report.offload_hours_per_day = {};
  report.card_cost = report.wrangler_cost = {};
}

}  // namespace

tl::expected<StoreReport, StoreFault> store_report(const Plan& plan, const StoreParts& parts,
                                                   std::int64_t recorded_width_pixels,
                                                   std::int64_t recorded_height_pixels) {
  const auto frame = bytes_per_frame(parts.codec.form, recorded_width_pixels,
                                     recorded_height_pixels, plan.run.sensor_rate);
  if (!frame) return tl::unexpected(StoreFault::no_frame_size);
  const auto usable = usable_bytes(parts.card);
  if (!usable) return tl::unexpected(StoreFault::too_large);
  const Footage footage = footage_of(plan);
  const Setting setting{.plan = plan,
                        .parts = parts,
                        .footage = footage,
                        .use = card_use(plan, parts, footage, *usable),
                        .audio_bytes_per_s = audio_bytes_per_s(plan.run),
                        .playing_seconds = footage.playing_seconds(plan.run.project_rate)};
  const auto light = figures_of(frame->least, setting);
  if (!light) return tl::unexpected(light.error());
  const auto heavy = frame->exact() ? light : figures_of(frame->most, setting);
  if (!heavy) return tl::unexpected(heavy.error());

  StoreReport report;
  report.bytes_per_frame = *frame;
  report_shared(report, setting);
  report_cards(report, *light, *heavy);
  report_archive(report, *light, *heavy);
  if (parts.film) drop_cards(report);
  report.cost = sum({report.card_cost, report.drive_cost, report.tape_cost, report.wrangler_cost,
                     report.upload_cost});
  return report;
}

}  // namespace widegate
