#include "core/show/evaluate_show.h"

#include <algorithm>
#include <cmath>

#include "core/report/evaluate.h"
#include "core/show/card_kinds.h"
#include "core/show/evaluated_part.h"
#include "core/show/media_sets.h"
#include "core/show/money.h"
#include "core/show/shoot_days.h"
#include "core/show/show_check.h"
#include "core/show/show_notes.h"

namespace widegate {
namespace {

constexpr double kSecondsPerHour = 3600;
constexpr double kBitsPerByte = 8;
constexpr double kMegabit = 1e6;

template <class Row>
std::string name_of(const std::vector<Row>& own, const std::vector<Row>& library,
                    const std::string& id) {
  const Row* row = find_row(own, library, id);
  return row == nullptr ? id : row->name;
}

std::string format_words(const Plan& plan, const Catalogue& catalogue) {
  const Camera& camera = *find_row(plan.own.cameras, catalogue.cameras, plan.format.camera);
  const SensorMode& mode = *find_row(camera.modes, plan.format.mode);
  const Recording& recording = *find_row(mode.recordings, plan.format.recording);
  return camera.name + ", " + mode.name + ", " + recording.name + ", " +
         name_of(plan.own.codecs, catalogue.codecs, plan.format.codec);
}

EvaluatedPart evaluated(const ShowPart& part, const Catalogue& catalogue) {
  const Plan& plan = part.plan;
  return {.part = &part,
          .report = evaluate(plan, catalogue),
          .card = find_row(plan.own.cards, catalogue.cards, plan.store.card),
          .drive = find_row(plan.own.drives, catalogue.drives, plan.store.drive),
          .tape = find_row(plan.own.tapes, catalogue.tapes, plan.store.tape)};
}

double days_of(const EvaluatedPart& part) { return static_cast<double>(part.plan().shooting.days); }

Span copy_hours_a_day(const EvaluatedPart& part) {
  return times(part.report.store.offload_hours_per_day,
               static_cast<double>(part.plan().shooting.units));
}

PartReport part_report(const EvaluatedPart& it, const Catalogue& catalogue) {
  const StoreReport& store = it.report.store;
  const Plan& plan = it.plan();
  PartReport part;
  part.name = it.part->name;
  part.format = format_words(plan, catalogue);
  part.first_day = it.part->first_day;
  part.last_day = it.part->first_day + plan.shooting.days - 1;
  part.days = plan.shooting.days;
  part.units = plan.shooting.units;
  part.cameras = it.cameras();
  part.recorded_hours_per_day = store.recorded_hours_per_day;
  part.no_cards = store.no_cards;
  if (!store.no_cards) part.card = it.card->name;
  part.bytes_per_day = times(store.shoot_total_bytes, 1 / days_of(it));
  part.total_bytes = store.shoot_total_bytes;
  part.copies = store.copies;
  part.copies_total_bytes = store.copies_total_bytes;
  part.cards_per_day = store.cards_per_day;
  part.cards_in_rotation = store.cards_in_rotation;
  part.spare_cards = store.no_cards ? 0 : plan.store.spare_cards;
  part.hold_hours = store.no_cards ? 0 : plan.store.hold_hours;
  part.cards_to_have = store.cards_in_all;
  part.rotation_sustainable = store.rotation_sustainable;
  part.copy_hours_per_day = store.offload_hours_per_day;
  part.copy_hours_per_day_all_units = copy_hours_a_day(it);
  part.drives = store.drives;
  part.tapes = store.tapes;
  part.tape_hours = store.tape_hours;
  part.upload_total_bytes = store.upload_total_bytes;
  part.upload_hours_per_day = times(store.upload_hours, 1 / days_of(it));
  if (it.report.film) part.film_feet = it.report.film->feet;
  part.accepted = it.report.commission.met;
  return part;
}

template <class Figure>
Span summed(const std::vector<PartReport>& parts, Figure figure) {
  std::vector<Span> figures;
  figures.reserve(parts.size());
  for (const PartReport& part : parts) figures.push_back(part.*figure);
  return sum_of(std::move(figures));
}

/// Of one line for all, or of the slowest part's own.
Span upload_hours_on(const ShowArchive& archive, const std::vector<EvaluatedPart>& parts,
                     const std::vector<PartReport>& reports, std::int64_t day) {
  std::vector<Span> bytes;
  Span longest;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    if (!parts[i].shoots_on(day)) continue;
    const Span hours = reports[i].upload_hours_per_day;
    bytes.push_back(times(reports[i].upload_total_bytes, 1 / days_of(parts[i])));
    longest = {std::max(longest.least, hours.least), std::max(longest.most, hours.most)};
  }
  if (!archive.upload_megabits_per_s) return longest;
  return times(sum_of(std::move(bytes)),
               kBitsPerByte / (*archive.upload_megabits_per_s * kMegabit) / kSecondsPerHour);
}

std::vector<ShowDay> days_of_show(const Show& show, const std::vector<EvaluatedPart>& parts,
                                  const ShowReport& report, const std::vector<FilledMedia>& media,
                                  const std::vector<CalendarDay>& dates, std::int64_t count) {
  std::vector<ShowDay> days;
  days.reserve(static_cast<std::size_t>(count));
  for (std::int64_t number = 1; number <= count; ++number) {
    ShowDay& day = days.emplace_back();
    const auto index = static_cast<std::size_t>(number - 1);
    if (!dates.empty()) day.date = print_day(dates[index]);
    std::vector<Span> so_far, copies, hours;
    for (std::size_t i = 0; i < parts.size(); ++i) {
      const PartReport& part = report.parts[i];
      const bool shoots = parts[i].shoots_on(number);
      const double past = static_cast<double>(parts[i].days_by(number)) / days_of(parts[i]);
      day.part_bytes.push_back(shoots ? part.bytes_per_day : Span{});
      so_far.push_back(times(part.total_bytes, past));
      copies.push_back(times(part.copies_total_bytes, past));
      if (shoots) hours.push_back(part.copy_hours_per_day_all_units);
    }
    day.bytes = sum_of(day.part_bytes);
    day.bytes_so_far = sum_of(std::move(so_far));
    day.copies_so_far_bytes = sum_of(std::move(copies));
    day.copy_hours = sum_of(std::move(hours));
    day.upload_hours = upload_hours_on(show.archive, parts, report.parts, number);
    for (const FilledMedia& set : media) {
      ByteRange& sum = set.set.tape ? day.tapes_so_far : day.drives_so_far;
      sum = plus(sum, set.by_day[index]);
    }
  }
  return days;
}

Span larger(Span a, Span b) { return {std::max(a.least, b.least), std::max(a.most, b.most)}; }
Span smaller(Span a, Span b) { return {std::min(a.least, b.least), std::min(a.most, b.most)}; }

std::int64_t stations_for(double hours, double of_one) {
  // A sum of doubles may stand a breath above what it means.
  return static_cast<std::int64_t>(std::ceil(hours / of_one - 1e-9));
}

void add_days(ShowTotals& totals, const std::vector<ShowDay>& days) {
  totals.least_day_bytes = days.front().bytes;
  for (std::size_t i = 0; i < days.size(); ++i) {
    const ShowDay& day = days[i];
    if (day.bytes.most > totals.largest_day_bytes.most) {
      totals.largest_day = static_cast<std::int64_t>(i) + 1;
    }
    totals.largest_day_bytes = larger(totals.largest_day_bytes, day.bytes);
    totals.least_day_bytes = smaller(totals.least_day_bytes, day.bytes);
    totals.copy_hours_per_day = larger(totals.copy_hours_per_day, day.copy_hours);
    totals.upload_hours_per_day = larger(totals.upload_hours_per_day, day.upload_hours);
  }
}

ShowTotals totals_of(const Show& show, const ShowReport& report) {
  ShowTotals totals;
  totals.shooting_days = static_cast<std::int64_t>(report.days.size());
  totals.total_bytes = summed(report.parts, &PartReport::total_bytes);
  totals.copies_total_bytes = summed(report.parts, &PartReport::copies_total_bytes);
  totals.average_day_bytes =
      times(totals.total_bytes, 1 / static_cast<double>(totals.shooting_days));
  add_days(totals, report.days);
  for (const PartReport& part : report.parts) {
    totals.cards_to_have = plus(totals.cards_to_have, part.cards_to_have);
  }
  for (const MediaSet& set : report.media) {
    ByteRange& all = set.tape ? totals.tapes : totals.drives;
    ByteRange& fewest = set.tape ? totals.fewest_tapes : totals.fewest_drives;
    all = plus(all, set.media);
    fewest = plus(fewest, set.fewest);
  }
  totals.station_hours_per_day = show.archive.station_hours_per_day;
  totals.stations = {stations_for(totals.copy_hours_per_day.least, totals.station_hours_per_day),
                     stations_for(totals.copy_hours_per_day.most, totals.station_hours_per_day)};
  totals.tape_hours = summed(report.parts, &PartReport::tape_hours);
  totals.upload_total_bytes = summed(report.parts, &PartReport::upload_total_bytes);
  std::vector<Span> feet;
  for (const PartReport& part : report.parts) feet.push_back({part.film_feet, part.film_feet});
  totals.film_feet = sum_of(std::move(feet)).most;
  return totals;
}

/// Every part's report, or what is wrong with those that have none.
std::vector<EvaluatedPart> evaluated_parts(const Show& show, const Catalogue& catalogue,
                                           Problems& problems) {
  std::vector<EvaluatedPart> parts;
  parts.reserve(show.parts.size());
  for (std::size_t i = 0; i < show.parts.size(); ++i) {
    parts.push_back(evaluated(show.parts[i], catalogue));
    for (Problem& problem : problems_of_part(i, parts.back().report.problems)) {
      problems.push_back(std::move(problem));
    }
  }
  return parts;
}

void add_money(ShowReport& report, const Costed& costed) {
  report.money = money_of(costed);
  std::vector<std::vector<Span>> by_day = money_by_day(costed, report.money);
  for (std::size_t i = 0; i < by_day.size(); ++i) {
    report.days[i].money_so_far = std::move(by_day[i]);
  }
}

}  // namespace

ShowReport evaluate_show(const Show& show, const Catalogue& catalogue) {
  ShowReport report;
  report.problems = check_show(show, catalogue);
  if (!report.problems.empty()) return report;
  const std::vector<EvaluatedPart> parts = evaluated_parts(show, catalogue, report.problems);
  if (!report.problems.empty()) return report;
  const std::int64_t days = show.calendar.shooting_days.value_or(days_needed(show));
  const std::vector<CalendarDay> dates = shoot_days(show.calendar, days);
  const auto media = media_of(show.archive, parts, days);
  if (!media) {
    report.problems.push_back({.pointer = "/parts",
                               .value = "the footage of all parts",
                               .accepted = "an amount that takes fewer than 2^53 drives or tapes"});
    return report;
  }
  report.title = show.title;
  for (const EvaluatedPart& part : parts) report.parts.push_back(part_report(part, catalogue));
  for (const FilledMedia& set : *media) report.media.push_back(set.set);
  report.cards = card_kinds(show, parts, days);
  report.days = days_of_show(show, parts, report, *media, dates, days);
  report.totals = totals_of(show, report);
  add_money(report, {.show = show,
                     .parts = parts,
                     .cards = report.cards,
                     .media = *media,
                     .dates = dates,
                     .days = days});
  report.notes = show_notes(parts, report);
  return report;
}

}  // namespace widegate
