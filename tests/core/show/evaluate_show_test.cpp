// The sums of a show against figures worked by hand, against evaluate() alone, and against a second
// implementation that is written plainly and follows every card and every day one by one.
#include "core/show/evaluate_show.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <map>

#include "core/catalogue/catalogue_json.h"
#include "core/handover/json/report_json.h"
#include "core/report/evaluate.h"
#include "core/show/one_more.h"
#include "core/show/show_check.h"
#include "core/show/show_figures.h"
#include "core/show/show_json.h"
#include "tests/core/show/random_shows.h"
#include "tests/core/support/rounds.h"

namespace widegate {
namespace {

using testing::Dice;
using testing::random_show;

const Catalogue& library() {
  static const Catalogue catalogue = built_in_catalogue().value();
  return catalogue;
}

ShowReport report_of(const Show& show) {
  ShowReport report = evaluate_show(show, library());
  REQUIRE(report.problems.empty());
  return report;
}

/// A plan worked by hand: one camera whose frames are 10 MB as stored, 25 a second, 250 MB/s.
Plan plain_plan(std::int64_t days, double hours) {
  Plan plan;
  plan.own.codecs.push_back({.id = "plain",
                             .name = "Plain",
                             .source = "worked by hand",
                             .form = TableForm{{{4992, 3744, {}, 10'000'000}}}});
  Camera camera = *find_row(library().cameras, "alder");
  for (SensorMode& mode : camera.modes) {
    for (Recording& recording : mode.recordings) recording.codecs = {"plain"};
  }
  // Only the mode that the codec has a frame size for.
  std::erase_if(camera.modes, [](const SensorMode& mode) { return mode.id != "open-gate"; });
  std::erase_if(camera.modes.front().recordings,
                [](const Recording& recording) { return recording.id != "as-read"; });
  plan.own.cameras.push_back(std::move(camera));
  plan.format = {"alder", "open-gate", "as-read", "plain"};
  plan.own.cards.push_back({.id = "card",
                            .name = "A card of 1 TB",
                            .source = "worked by hand",
                            .capacity_bytes = 1'000'000'000'000,
                            .write_bytes_per_s = 1'000'000'000,
                            .read_bytes_per_s = 1'000'000'000,
                            .guarantee = "",
                            .price = 0});
  plan.store.card = "card";
  plan.store.container = "none";
  plan.store.drive = "disk-12";
  plan.store.tape = "lto-8";
  plan.store.checksum = "xxh64";
  plan.run = {.project_rate = 25, .sensor_rate = 25, .audio_channels = 0};
  plan.shooting = {.days = days, .units = 1, .recorded_hours_per_day = hours};
  return plan;
}

TEST_CASE("A show worked by hand") {
  // 250 MB/s. A: 4 h a day make 3.6 TB, three full cards and one of 0.6 TB; 10 days: 36 TB.
  // B: 2 h a day make 1.8 TB, one full card and one of 0.8 TB; 5 days from day 3: 9 TB.
  Show show;
  show.parts.push_back({.name = "A", .first_day = 1, .plan = plain_plan(10, 4)});
  show.parts.push_back({.name = "B", .first_day = 3, .plan = plain_plan(5, 2)});
  show.parts[0].plan.store.drive_copies = show.parts[1].plan.store.drive_copies = 1;
  show.parts[0].plan.store.tape_copies = show.parts[1].plan.store.tape_copies = 0;
  ShowReport apart = report_of(show);
  CHECK(apart.totals.total_bytes == Span{45e12, 45e12});
  CHECK(apart.totals.shooting_days == 10);
  CHECK(apart.totals.average_day_bytes == Span{4.5e12, 4.5e12});
  CHECK(apart.totals.largest_day_bytes == Span{5.4e12, 5.4e12});
  CHECK(apart.totals.largest_day == 3);
  CHECK(apart.totals.least_day_bytes == Span{3.6e12, 3.6e12});
  // Drives of 12 TB. A: 30 cards of 1 TB on three (12, 12, 6 of them), ten of 0.6 TB beside the
  // last six: 36 TB exactly fill three. B: 5 and 4 TB on one.
  CHECK(apart.totals.drives == ByteRange{4, 4});
  CHECK(apart.totals.fewest_drives == ByteRange{4, 4});
  show.archive.drives = Keeping::shared;
  // Together 35 of 1 TB: 12, 12, 11 with room for 1 TB: one of 0.8. Then 4 of 0.8 and 10 of 0.6 on
  // a fourth: 9.2 TB. No drive fewer, for 45 TB are 3.75 drives.
  CHECK(report_of(show).totals.drives == ByteRange{4, 4});
  // By the end of day 3 there are 10.8 + 1.8 TB, more than 12; of day 6 21.6 + 7.2, more than 24;
  // of day 8 28.8 + 9, more than 36.
  CHECK(report_of(show).media.front().full_days == std::vector<std::int64_t>{3, 6, 8});
}

TEST_CASE("Drives of whole cards are more than their bytes") {
  // Cards of 1 TB on drives of 4 TB less a byte: three on each.
  Show show;
  Plan plan = plain_plan(4, 40.0 / 9);  // 4 TB a day
  plan.own.drives.push_back({.id = "drive",
                             .name = "Just under 4 TB",
                             .source = "worked by hand",
                             .capacity_bytes = 3'999'999'999'999,
                             .write_bytes_per_s = 1'000'000'000,
                             .read_bytes_per_s = 1'000'000'000,
                             .price = 0});
  plan.store.drive = "drive";
  show.parts.push_back({.name = "A", .plan = plan});
  const ShowReport report = report_of(show);
  CHECK(report.totals.drives.most == 2 * 6);         // 16 cards, two copies
  CHECK(report.totals.fewest_drives.most == 2 * 5);  // 16 TB are a little more than four drives
}

TEST_CASE("Money worked by hand, in two currencies, one price missing") {
  Show show;
  show.parts.push_back({.name = "A", .plan = plain_plan(10, 4)});
  show.calendar = {.start = "2027-03-01",
                   .shooting_days = std::nullopt,
                   .weekdays_off = {Weekday::saturday, Weekday::sunday},
                   .days_off = {}};
  show.prices.push_back({.what = Priced::drive,
                         .id = "disk-12",
                         .price = {.amount = 300,
                                   .currency = "EUR",
                                   .date = "2026-11-02",
                                   .source = "a quote",
                                   .invented = true}});
  show.people.push_back({.name = "Wrangler",
                         .part = "A",
                         .count = 2,
                         .days = std::nullopt,
                         .hours_per_day = std::nullopt,
                         .price = {.amount = 250, .currency = "GBP", .date = "", .source = ""}});
  show.rent.push_back({.name = "Station",
                       .part = "",
                       .count = 3,
                       .bought = false,
                       .weeks = std::nullopt,
                       .price = {.amount = 100, .currency = "EUR", .date = "", .source = ""}});
  const MoneyReport money = report_of(show).money;
  REQUIRE(money.sums.size() == 2);
  // Two copies of three drives; ten days from a Monday to the Friday after: two begun weeks.
  CHECK(money.sums[0].currency == "EUR");
  CHECK(money.sums[0].cost == Span{6 * 300 + 3 * 2 * 100, 6 * 300 + 3 * 2 * 100});
  CHECK(money.sums[0].invented);
  CHECK(money.sums[1].currency == "GBP");
  CHECK(money.sums[1].cost == Span{2 * 10 * 250, 2 * 10 * 250});
  CHECK(!money.sums[1].invented);
  CHECK(money.missing == std::vector<std::string>{"A card of 1 TB", "LTO-8"});
  const ShowDay last = report_of(show).days.back();
  REQUIRE(last.money_so_far.size() == 2);
  CHECK(last.money_so_far[0].most == doctest::Approx(money.sums[0].cost.most));
  CHECK(last.money_so_far[1].most == doctest::Approx(money.sums[1].cost.most));
  CHECK(last.date == "2027-03-12");
}

TEST_CASE("Cards at hand run short on the day a second part begins") {
  Show show;
  show.parts.push_back({.name = "A", .plan = plain_plan(10, 1)});
  show.parts.push_back({.name = "B", .first_day = 4, .plan = plain_plan(3, 1)});
  const std::int64_t each = report_of(show).parts[0].cards_to_have.most;
  REQUIRE(each >= 2);
  show.cards.push_back({.card = "card", .count = each});
  const ShowReport report = report_of(show);
  REQUIRE(report.cards.size() == 1);
  CHECK(report.cards[0].to_have.most == 2 * each);
  CHECK(report.cards[0].at_once.most == 2 * each);
  CHECK(report.cards[0].short_day == 4);
  CHECK(report.money.lines[0].quantity.most == static_cast<double>(each));  // the rest is there
}

// What a show comes to, followed card by card and day by day. Nothing of core/show is used but the
// show itself; a part's own figures are evaluate()'s.
struct Plainly {
  std::map<std::string, double> figures;
};

std::int64_t media_one_by_one(std::vector<std::int64_t> cards, double loose,
                              std::int64_t capacity) {
  std::sort(cards.begin(), cards.end(), std::greater<>());
  std::vector<std::int64_t> rooms;
  double bytes = loose;
  for (const std::int64_t card : cards) {
    bytes += static_cast<double>(card);
    if (card > capacity || card == 0) continue;
    auto room = std::find_if(rooms.begin(), rooms.end(), [&](auto left) { return left >= card; });
    if (room == rooms.end()) room = rooms.insert(rooms.end(), capacity);
    *room -= card;
  }
  const auto by_bytes = static_cast<std::int64_t>(std::ceil(bytes / static_cast<double>(capacity)));
  return std::max(static_cast<std::int64_t>(rooms.size()), by_bytes);
}

struct PlainPart {
  const ShowPart* part;
  Report report;
  std::int64_t cameras;
  const Drive* drive;
  const Tape* tape;
};

std::vector<PlainPart> plain_parts(const Show& show) {
  std::vector<PlainPart> parts;
  for (const ShowPart& part : show.parts) {
    const Plan& plan = part.plan;
    parts.push_back({&part, evaluate(plan, library()),
                     plan.shooting.units * plan.shooting.cameras_per_unit,
                     find_row(plan.own.drives, library().drives, plan.store.drive),
                     find_row(plan.own.tapes, library().tapes, plan.store.tape)});
  }
  return parts;
}

/// Media of one group for one copy.
std::int64_t media_of_copy(const std::vector<const PlainPart*>& parts, bool heavy,
                           std::int64_t capacity) {
  std::vector<std::int64_t> cards;
  double loose = 0;
  for (const PlainPart* it : parts) {
    const StoreReport& store = it->report.store;
    const DayCards& day = heavy ? store.heaviest_day : store.lightest_day;
    for (std::int64_t n = it->part->plan.shooting.days * it->cameras; n > 0; --n) {
      if (store.no_cards) {
        loose += day.loose_bytes.to_double();
      } else {
        cards.insert(cards.end(), static_cast<std::size_t>(day.full), day.full_bytes);
        cards.push_back(day.last_bytes);
      }
    }
  }
  return media_one_by_one(std::move(cards), loose, capacity);
}

std::int64_t plain_media(const std::vector<PlainPart>& parts, bool tape, bool shared, bool heavy) {
  std::map<std::string, std::vector<const PlainPart*>> groups;
  for (const PlainPart& it : parts) {
    if (tape && it.tape == nullptr) continue;
    const std::string id = tape ? it.tape->id : it.drive->id;
    const std::int64_t capacity = tape ? it.tape->capacity_bytes : it.drive->capacity_bytes;
    groups[(shared ? "" : it.part->name) + "/" + id + "/" + std::to_string(capacity)].push_back(
        &it);
  }
  std::int64_t media = 0;
  for (const auto& [key, group] : groups) {
    for (std::int64_t copy = 1; copy <= 20; ++copy) {
      std::vector<const PlainPart*> with;
      for (const PlainPart* it : group) {
        const Storing& store = it->part->plan.store;
        if ((tape ? store.tape_copies : store.drive_copies) >= copy) with.push_back(it);
      }
      if (with.empty()) continue;
      media += media_of_copy(with, heavy,
                             tape ? with[0]->tape->capacity_bytes : with[0]->drive->capacity_bytes);
    }
  }
  return media;
}

struct PlainTotals {
  double total = 0, copies = 0, largest_day = 0, copy_hours = 0, tape_hours = 0, uploaded = 0;
  std::int64_t cards = 0, days = 0;
};

PlainTotals plain_totals(const Show& show, const std::vector<PlainPart>& parts, bool heavy) {
  const auto end = [heavy](Span span) { return heavy ? span.most : span.least; };
  PlainTotals totals;
  for (const PlainPart& it : parts) {
    const StoreReport& store = it.report.store;
    totals.total += end(store.shoot_total_bytes);
    totals.copies += end(store.copies_total_bytes);
    totals.tape_hours += end(store.tape_hours);
    totals.uploaded += end(store.upload_total_bytes);
    totals.cards += heavy ? store.cards_in_all.most : store.cards_in_all.least;
    totals.days = std::max(totals.days, it.part->first_day + it.part->plan.shooting.days - 1);
  }
  totals.days = show.calendar.shooting_days.value_or(totals.days);
  for (std::int64_t day = 1; day <= totals.days; ++day) {
    double bytes = 0;
    double hours = 0;
    for (const PlainPart& it : parts) {
      const Shooting& shooting = it.part->plan.shooting;
      if (day < it.part->first_day || day >= it.part->first_day + shooting.days) continue;
      bytes += end(it.report.store.shoot_total_bytes) / static_cast<double>(shooting.days);
      hours += end(it.report.store.offload_hours_per_day) * static_cast<double>(shooting.units);
    }
    totals.largest_day = std::max(totals.largest_day, bytes);
    totals.copy_hours = std::max(totals.copy_hours, hours);
  }
  return totals;
}

/// The money in one currency, line by line as the documentation says.
double plain_money(const Show& show, const std::vector<PlainPart>& parts, const ShowReport& report,
                   const std::string& currency) {
  double sum = 0;
  const auto price = [&](Priced what, const std::string& id) -> double {
    for (const PriceRow& row : show.prices) {
      if (row.what == what && row.id == id && row.price.currency == currency) {
        return row.price.amount.value_or(0);
      }
    }
    return 0;
  };
  std::map<std::string, std::int64_t> cards;
  std::int64_t show_days = show.calendar.shooting_days.value_or(0);
  for (const PlainPart& it : parts) {
    const StoreReport& store = it.report.store;
    const Shooting& shooting = it.part->plan.shooting;
    if (!store.no_cards) cards[it.part->plan.store.card] += store.cards_in_all.most;
    show_days = std::max(show_days, it.part->first_day + shooting.days - 1);
    sum += price(Priced::upload_terabyte, "") * store.upload_total_bytes.most / 1e12;
    sum += price(Priced::copying_hour, "") * store.offload_hours_per_day.most *
           static_cast<double>(shooting.units * shooting.days);
    if (it.report.film && it.report.film->frames_per_foot) {
      sum += it.report.film->feet *
             (price(Priced::stock_foot, "") + price(Priced::processing_foot, "") +
              price(Priced::scanning_foot, ""));
    }
  }
  for (const auto& [id, count] : cards) {
    std::int64_t have = 0;
    for (const CardsAtHand& row : show.cards) have = row.card == id ? row.count : have;
    sum += price(Priced::card, id) * static_cast<double>(std::max<std::int64_t>(0, count - have));
  }
  for (const MediaSet& set : report.media) {
    sum += price(set.tape ? Priced::tape : Priced::drive, set.id) *
           static_cast<double>(set.media.most);
  }
  const auto part_named = [&](const std::string& name) -> const ShowPart* {
    for (const ShowPart& part : show.parts) {
      if (part.name == name) return &part;
    }
    return nullptr;
  };
  for (const Person& person : show.people) {
    if (person.price.currency != currency) continue;
    const ShowPart* part = part_named(person.part);
    const std::int64_t days =
        person.days.value_or(part == nullptr ? show_days : part->plan.shooting.days);
    sum += *person.price.amount * static_cast<double>(person.count * days) *
           person.hours_per_day.value_or(1);
  }
  for (const Rental& rental : show.rent) {
    if (rental.price.currency != currency) continue;
    double times = static_cast<double>(rental.count);
    if (!rental.bought) {
      // From the first shooting day to the last, a day at a time.
      const ShowPart* part = part_named(rental.part);
      const std::int64_t first = part == nullptr ? 1 : part->first_day;
      const std::int64_t last =
          part == nullptr ? show_days : part->first_day + part->plan.shooting.days - 1;
      double weeks = 0;
      if (show.calendar.start.empty()) {
        const auto in_a_week = 7 - static_cast<double>(show.calendar.weekdays_off.size());
        weeks = std::ceil(static_cast<double>(last - first + 1) / in_a_week - 1e-9);
      } else {
        CalendarDay day = *parse_day(show.calendar.start);
        std::int64_t shot = 0;
        std::int64_t from = 0;
        while (true) {
          const bool weekend = std::count(show.calendar.weekdays_off.begin(),
                                          show.calendar.weekdays_off.end(), weekday_of(day)) > 0;
          const bool off = weekend || std::count(show.calendar.days_off.begin(),
                                                 show.calendar.days_off.end(), print_day(day)) > 0;
          if (!off) ++shot;
          if (!off && shot == first) from = day.number;
          if (shot == last) break;
          day = day_after(day);
        }
        weeks = std::ceil(static_cast<double>(day.number - from + 1) / 7 - 1e-9);
      }
      times *= rental.weeks ? static_cast<double>(*rental.weeks) : weeks;
    }
    sum += *rental.price.amount * times;
  }
  return sum;
}

/// Too many cards to follow one by one.
bool too_many(const std::vector<PlainPart>& parts) {
  std::int64_t cards = 0;
  for (const PlainPart& it : parts) {
    cards += (it.report.store.heaviest_day.full + 1) * it.cameras * it.part->plan.shooting.days;
  }
  return cards > 4000;
}

TEST_CASE("A second implementation, written plainly, agrees on random shows") {
  Dice dice(20270301);
  int compared = 0;
  int alike = 0;
  for (int round = 0; compared < testing::rounds(1000, 100) && round < 20'000; ++round) {
    const Show show = random_show(dice, library());
    const ShowReport report = evaluate_show(show, library());
    if (!report.problems.empty()) continue;
    const std::vector<PlainPart> parts = plain_parts(show);
    if (too_many(parts)) continue;
    ++compared;
    CAPTURE(round);
    const ShowTotals& totals = report.totals;
    for (const bool heavy : {false, true}) {
      const PlainTotals plain = plain_totals(show, parts, heavy);
      const auto end = [heavy](Span span) { return heavy ? span.most : span.least; };
      CHECK(end(totals.total_bytes) == doctest::Approx(plain.total).epsilon(1e-12));
      CHECK(end(totals.copies_total_bytes) == doctest::Approx(plain.copies).epsilon(1e-12));
      CHECK(end(totals.largest_day_bytes) == doctest::Approx(plain.largest_day).epsilon(1e-12));
      CHECK(end(totals.copy_hours_per_day) == doctest::Approx(plain.copy_hours).epsilon(1e-12));
      CHECK(end(totals.tape_hours) == doctest::Approx(plain.tape_hours).epsilon(1e-12));
      CHECK(end(totals.upload_total_bytes) == doctest::Approx(plain.uploaded).epsilon(1e-12));
      CHECK((heavy ? totals.cards_to_have.most : totals.cards_to_have.least) == plain.cards);
      CHECK(totals.shooting_days == plain.days);
    }
    for (const bool tape : {false, true}) {
      const bool shared = (tape ? show.archive.tapes : show.archive.drives) == Keeping::shared;
      const std::int64_t light = plain_media(parts, tape, shared, false);
      const std::int64_t heavy = plain_media(parts, tape, shared, true);
      const ByteRange media = tape ? totals.tapes : totals.drives;
      // Set by set the ends may change places, so their sums are held between.
      if (report.media.size() <= 2) {
        CHECK(media == ByteRange{std::min(light, heavy), std::max(light, heavy)});
        ++alike;
      } else {
        CHECK(media.least <= std::min(light, heavy));
        CHECK(media.most >= std::max(light, heavy));
        if (light == heavy && media.exact()) CHECK(media.least == light);
      }
    }
    for (const MoneySum& sum : report.money.sums) {
      CHECK(sum.cost.most ==
            doctest::Approx(plain_money(show, parts, report, sum.currency)).epsilon(1e-9));
    }
  }
  CHECK(compared >= testing::rounds(1000, 100));
  CHECK(alike > compared / 4);
}

TEST_CASE("A part's figures, and those of a show of one part, are its plan's own") {
  Dice dice(7);
  for (int round = 0; round < testing::rounds(300, 60); ++round) {
    Show show = random_show(dice, library());
    show.parts.resize(1);
    show.calendar.shooting_days.reset();
    if (!check_show(show, library()).empty()) continue;
    const ShowReport report = evaluate_show(show, library());
    const Report own = evaluate(show.parts[0].plan, library());
    REQUIRE(report.problems.empty() == own.problems.empty());
    if (!own.problems.empty()) continue;
    CAPTURE(round);
    const PartReport& part = report.parts.front();
    const ShowTotals& totals = report.totals;
    const auto units = static_cast<double>(show.parts[0].plan.shooting.units);
    CHECK(part.total_bytes == own.store.shoot_total_bytes);
    CHECK(totals.total_bytes == own.store.shoot_total_bytes);
    CHECK(totals.copies_total_bytes == own.store.copies_total_bytes);
    CHECK(totals.cards_to_have == own.store.cards_in_all);
    CHECK(totals.drives == own.store.drives);
    CHECK(totals.fewest_drives == own.store.fewest_drives);
    CHECK(totals.tapes == own.store.tapes);
    CHECK(totals.tape_hours == own.store.tape_hours);
    CHECK(part.copy_hours_per_day == own.store.offload_hours_per_day);
    CHECK(totals.copy_hours_per_day.most == own.store.offload_hours_per_day.most * units);
  }
}

TEST_CASE("The order of the parts changes no sum, to the last bit") {
  Dice dice(11);
  for (int round = 0; round < testing::rounds(200, 40); ++round) {
    Show show = random_show(dice, library());
    const ShowReport before = evaluate_show(show, library());
    if (!before.problems.empty()) continue;
    std::reverse(show.parts.begin(), show.parts.end());
    const ShowReport after = evaluate_show(show, library());
    REQUIRE(after.problems.empty());
    CAPTURE(round);
    CHECK(after.totals.total_bytes == before.totals.total_bytes);
    CHECK(after.totals.copies_total_bytes == before.totals.copies_total_bytes);
    CHECK(after.totals.largest_day_bytes == before.totals.largest_day_bytes);
    CHECK(after.totals.cards_to_have == before.totals.cards_to_have);
    CHECK(after.totals.drives == before.totals.drives);
    CHECK(after.totals.tapes == before.totals.tapes);
    CHECK(after.totals.copy_hours_per_day == before.totals.copy_hours_per_day);
    CHECK(after.totals.upload_hours_per_day == before.totals.upload_hours_per_day);
    CHECK(after.totals.tape_hours == before.totals.tape_hours);
    REQUIRE(after.money.sums.size() == before.money.sums.size());
    for (std::size_t i = 0; i < after.money.sums.size(); ++i) {
      CHECK(after.money.sums[i].currency == before.money.sums[i].currency);
      CHECK(after.money.sums[i].cost == before.money.sums[i].cost);
    }
    for (std::size_t day = 0; day < after.days.size(); ++day) {
      CHECK(after.days[day].bytes == before.days[day].bytes);
      CHECK(after.days[day].drives_so_far == before.days[day].drives_so_far);
      CHECK(after.days[day].tapes_so_far == before.days[day].tapes_so_far);
    }
  }
}

TEST_CASE("Days add up, drives and tapes never become fewer, the last day holds everything") {
  Dice dice(13);
  for (int round = 0; round < testing::rounds(200, 40); ++round) {
    const Show show = random_show(dice, library());
    const ShowReport report = evaluate_show(show, library());
    if (!report.problems.empty()) continue;
    CAPTURE(round);
    double bytes = 0;
    ByteRange drives;
    for (const ShowDay& day : report.days) {
      bytes += day.bytes.most;
      CHECK(day.bytes_so_far.most == doctest::Approx(bytes));
      CHECK(day.drives_so_far.most >= drives.most);
      drives = day.drives_so_far;
    }
    const ShowDay& last = report.days.back();
    CHECK(last.bytes_so_far.most == doctest::Approx(report.totals.total_bytes.most));
    CHECK(last.drives_so_far == report.totals.drives);
    CHECK(last.tapes_so_far == report.totals.tapes);
    for (std::size_t i = 0; i < report.money.sums.size(); ++i) {
      CHECK(last.money_so_far[i].most <= report.money.sums[i].cost.most * (1 + 1e-12) + 1e-9);
    }
  }
}

TEST_CASE("One day more is what a day brings, and footage by a ratio does not grow with days") {
  Show show;
  show.parts.push_back({.name = "A", .plan = plain_plan(10, 4)});
  const auto differences = differences_of_one_more(show, report_of(show), library());
  REQUIRE(differences.size() == 3);
  CHECK(differences[0].change == OneMore::day);
  CHECK(differences[0].total_bytes.most == doctest::Approx(3.6e12));
  CHECK(differences[1].total_bytes.most == doctest::Approx(36e12));
  CHECK(differences[2].total_bytes.most == doctest::Approx(7.2e12));
  show.parts[0].plan.shooting.by = ShootingBy::ratio;
  const auto by_ratio = differences_of_one_more(show, report_of(show), library());
  CHECK(by_ratio[0].total_bytes.most == doctest::Approx(0));
  CHECK(by_ratio[2].total_bytes.most ==
        doctest::Approx(report_of(show).totals.total_bytes.most * 0.2));
}

TEST_CASE("Every figure is told with its unit, and money with its thousands set apart") {
  Show show;
  show.parts.push_back({.name = "A", .plan = plain_plan(10, 4)});
  const ShowReport report = report_of(show);
  for (const ShowFigure& figure : show_figures(report)) {
    CAPTURE(figure.key);
    CHECK(!figure.text.empty());
    CHECK(!figure.unit.empty());
  }
  CHECK(money_text({30839.4, 30839.4}, "EUR") == "30 839 EUR");
  CHECK(money_text({1999.5, 2100}, "GBP") == "2 000–2 100 GBP");
}

}  // namespace
}  // namespace widegate
