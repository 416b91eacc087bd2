// Copying, copies, archive and money of Store, and the laws over random plans.
#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

#include "core/store/copying.h"
#include "tests/core/store/fixture.h"

namespace widegate {
namespace {

constexpr double kTerabyte = 1e12;

// A shoot of exactly `bytes`: one camera, one day, one second at one frame a second.
void shoot_bytes(StoreFixture& it, std::int64_t bytes) {
  it.codec.form = TableForm{{{it.width, it.height, {}, bytes}}};
  it.set_rate(1);
  it.card.capacity_bytes = bytes;
  it.plan.shooting = {.days = 1, .units = 1, .recorded_hours_per_day = 1.0 / 3600};
  REQUIRE(it.report().shoot_total_bytes.least == static_cast<double>(bytes));
}

TEST_CASE("Copying runs at its slowest part, and names the first of equals") {
  struct Row {
    std::int64_t reader, link, write, read, checksum;
    Verification verification;
    std::string_view limited_by;
    std::int64_t speed, passes;
  };
  constexpr auto kRows = std::to_array<Row>({
      {5, 6, 7, 7, 8, Verification::destination, "card reader", 5, 2},
      {6, 5, 7, 7, 8, Verification::destination, "link", 5, 2},
      {6, 7, 5, 7, 8, Verification::destination, "drive", 5, 2},
      {6, 7, 8, 5, 8, Verification::destination, "drive", 5, 2},
      {6, 7, 8, 5, 8, Verification::none, "card reader", 6, 1},
      {6, 7, 8, 8, 5, Verification::full, "checksum", 5, 3},
      {6, 7, 8, 8, 5, Verification::none, "card reader", 6, 1},
      {5, 5, 5, 5, 5, Verification::full, "card reader", 5, 3},
      {6, 5, 5, 5, 5, Verification::full, "link", 5, 3},
  });
  for (const Row& row : kRows) {
    CAPTURE(row.limited_by);
    StoreFixture it;
    constexpr std::int64_t kHundredMegabytes = 100'000'000;
    it.card.read_bytes_per_s = row.reader * kHundredMegabytes;
    it.link.payload_bytes_per_s = row.link * kHundredMegabytes;
    it.drive.write_bytes_per_s = row.write * kHundredMegabytes;
    it.drive.read_bytes_per_s = row.read * kHundredMegabytes;
    it.checksum.bytes_per_s = row.checksum * kHundredMegabytes;
    it.plan.store.verification = row.verification;
    const StoreReport report = it.report();
    CHECK(report.offload_limited_by == row.limited_by);
    CHECK(report.offload_bytes_per_s == row.speed * kHundredMegabytes);
    CHECK(report.offload_passes == row.passes);
    CHECK(report.offload_minutes_per_card.least ==
          doctest::Approx(5120.0 * static_cast<double>(row.passes) /
                          static_cast<double>(row.speed) / 60));
  }
}

TEST_CASE("A drive in the unit a computer may report: IEC 80000-13, Gi = 1 073 741 824") {
  StoreFixture it;
  it.drive.capacity_bytes = 1'073'741'824;
  CHECK(it.report().drive_gib == 1);
  it.drive.capacity_bytes = 4'000'000'000'000;
  CHECK(it.report().drive_gib == doctest::Approx(3725.290298).epsilon(1e-9));
}

TEST_CASE("Without copies on drives the drive limits nothing") {
  StoreFixture it;
  it.drive.write_bytes_per_s = it.drive.read_bytes_per_s = 1'000'000;
  it.plan.store.drive_copies = 0;
  const StoreReport report = it.report();
  CHECK(report.offload_limited_by == "card reader");
  CHECK(report.drives.most == 0);
  CHECK(report.copies_total_bytes.least == report.shoot_total_bytes.least);
}

struct LinkRow {
  std::string_view link;
  double line_gigabits_per_s, lanes, code_payload, code_total, megabytes_per_s;
};
constexpr auto kLinkRows = std::to_array<LinkRow>({
#include "tests/data/link_rates.inc"
});

TEST_CASE("A terabyte through each link takes its bits over what the line code leaves") {
  for (const LinkRow& row : kLinkRows) {
    CAPTURE(row.link);
    StoreFixture it;
    shoot_bytes(it, 1'000'000'000'000);
    it.card.read_bytes_per_s = it.drive.write_bytes_per_s = 100'000'000'000;
    it.plan.store.verification = Verification::none;
    it.link.payload_bytes_per_s = std::llround(row.megabytes_per_s * 1e6);
    const double payload_bits_per_s =
        row.line_gigabits_per_s * 1e9 * row.lanes * row.code_payload / row.code_total;
    CHECK(it.report().offload_minutes_per_card.least ==
          doctest::Approx(8e12 / payload_bits_per_s / 60).epsilon(1e-8));
  }
}

struct TapeRow {
  std::string_view generation;
  double terabytes, megabytes_per_s, hours;
};
constexpr auto kTapeRows = std::to_array<TapeRow>({
#include "tests/data/lto.inc"
});

TEST_CASE("Hours to fill a tape of each generation, and the tape after it") {
  for (const TapeRow& row : kTapeRows) {
    CAPTURE(row.generation);
    StoreFixture it;
    const auto capacity = static_cast<std::int64_t>(row.terabytes * kTerabyte);
    shoot_bytes(it, capacity);
    it.tape.capacity_bytes = capacity;
    it.tape.write_bytes_per_s = std::llround(row.megabytes_per_s * 1e6);
    it.plan.store.tape_copies = 1;
    CHECK(it.report().tapes.least == 1);
    // Written, and read back to verify it.
    CHECK(it.report().tape_hours.least == doctest::Approx(2 * row.hours).epsilon(1e-9));
    it.plan.store.verification = Verification::none;
    CHECK(it.report().tape_hours.least == doctest::Approx(row.hours).epsilon(1e-9));
    shoot_bytes(it, capacity + 1);
    CHECK(it.report().tapes.least == 2);
    it.plan.store.tape_copies = 3;
    CHECK(it.report().tapes.least == 6);
    CHECK(it.report().tape_hours.least == doctest::Approx(3 * row.hours).epsilon(1e-9));
  }
}

TEST_CASE("A tape is not written faster than the drive is read") {
  StoreFixture it;
  shoot_bytes(it, 1'000'000'000'000);
  it.drive.read_bytes_per_s = 100'000'000;
  it.plan.store.verification = Verification::none;
  CHECK(it.report().tape_hours.least == doctest::Approx(1e4 / 3600));
  it.plan.store.drive_copies = 0;
  CHECK(it.report().tape_hours.least == doctest::Approx(1e12 / 360e6 / 3600));
}

TEST_CASE("Each copy starts on a drive of its own") {
  StoreFixture it;
  shoot_bytes(it, 16'000'000'000'000);
  it.plan.store.drive_copies = 3;
  CHECK(it.report().drives.least == 3);
  shoot_bytes(it, 16'000'000'000'001);
  CHECK(it.report().drives.least == 6);
  CHECK(it.report().copies_total_bytes.least == 4 * 16'000'000'000'001.0);
}

TEST_CASE("No tape in the plan means no tape copies") {
  StoreFixture it;
  it.plan.store.tape_copies = 2;
  const auto report = store_report(it.plan,
                                   {.codec = it.codec,
                                    .container = it.container,
                                    .card = it.card,
                                    .link = it.link,
                                    .drive = it.drive,
                                    .tape = nullptr,
                                    .checksum = it.checksum,
                                    .film = false},
                                   it.width, it.height);
  REQUIRE(report.has_value());
  CHECK(report->tapes.most == 0);
  CHECK(report->tape_hours.most == 0);
  CHECK(report->copies_total_bytes.most == 2 * report->shoot_total_bytes.most);
}

TEST_CASE("Upload takes the chosen share at the chosen speed") {
  StoreFixture it;
  shoot_bytes(it, 9'000'000'000'000);
  it.plan.store.upload_what = UploadWhat::originals;
  it.plan.store.upload_share = 0.25;
  it.plan.store.upload_megabits_per_s = 500;
  CHECK(it.report().upload_hours.least == doctest::Approx(10));  // 18 Tbit at 0.5 Gbit/s
}

TEST_CASE("Proxies are uploaded at their own rate for every second of playing time") {
  StoreFixture it;
  shoot_bytes(it, 9'000'000'000'000);
  it.set_rate(24);
  it.plan.run.project_rate = 24;
  it.codec.form = TableForm{{{it.width, it.height, {}, 1'000'000}}};
  it.plan.shooting = {.days = 10, .units = 2, .recorded_hours_per_day = 1};
  it.plan.store.proxy_megabits_per_s = 8;
  it.plan.store.upload_megabits_per_s = 80;
  const StoreReport report = it.report();  // 20 h of proxies, a tenth of the line
  CHECK(report.playing_hours == doctest::Approx(20));
  CHECK(report.upload_total_bytes.least == doctest::Approx(20 * 3600 * 1e6));
  CHECK(report.upload_hours.least == doctest::Approx(2));
}

TEST_CASE("A scan fills no cards and is copied from none, but it is kept") {
  StoreFixture it;
  const auto result = store_report(it.plan,
                                   {.codec = it.codec,
                                    .container = it.container,
                                    .card = it.card,
                                    .link = it.link,
                                    .drive = it.drive,
                                    .tape = &it.tape,
                                    .checksum = it.checksum,
                                    .film = true},
                                   it.width, it.height);
  REQUIRE(result.has_value());
  CHECK(result->no_cards);
  CHECK(result->cards_in_all.most == 0);
  CHECK(result->card_cost.most == 0);
  CHECK(result->offload_hours_per_day.most == 0);
  CHECK(result->shoot_total_bytes.least == it.report().shoot_total_bytes.least);
  CHECK(result->drives.least == it.report().drives.least);
}

TEST_CASE("Money: cards for every camera, drives, tapes, the wrangler's hours, the upload") {
  StoreFixture it;
  it.card.capacity_bytes = std::int64_t{13'271'040} * 24 * 60 * 20;
  it.card.price = 300;
  it.drive.price = 2000;
  it.tape.price = 80;
  it.plan.store.wrangler_price_per_hour = 36;
  it.plan.store.upload_price_per_terabyte = 5;
  it.plan.store.upload_what = UploadWhat::originals;
  it.plan.store.upload_share = 0.5;
  it.plan.shooting = {.days = 10, .units = 2, .cameras_per_unit = 3, .recorded_hours_per_day = 1};
  const StoreReport report = it.report();
  // 1 146 617 856 000 bytes a camera and day, 60 of those; twice at 1 GB/s, three cameras a unit.
  const double total = 60 * 1'146'617'856'000.0;
  CHECK(report.shoot_total_bytes.least == total);
  CHECK(report.card_cost.least == 300.0 * 6 * static_cast<double>(report.cards_in_rotation.least));
  CHECK(report.drive_cost.least == 2000.0 * 2 * 5);
  CHECK(report.tape_cost.least == 80.0 * 6);
  CHECK(report.wrangler_cost.least == doctest::Approx(total * 2 / 1e9 / 3600 * 36));
  CHECK(report.upload_cost.least == doctest::Approx(total / 2e12 * 5));
  CHECK(report.cost.least ==
        doctest::Approx(report.card_cost.least + 20'000 + 480 + report.wrangler_cost.least +
                        report.upload_cost.least));
}

TEST_CASE("Any plan within the limits gives figures that are finite and not negative, or a fault") {
  std::mt19937_64 random(4711);
  int good = 0;
  for (int round = 0; round < 5000; ++round) {
    const auto report = random_fixture(random).result();
    if (!report) continue;
    ++good;
    for (const Span figure :
         {report->bytes_per_s, report->minutes_per_card, report->write_headroom,
          report->card_change_minutes, report->offload_hours_per_day, report->shoot_total_bytes,
          report->copies_total_bytes, report->tape_hours, report->upload_hours, report->cost}) {
      REQUIRE(std::isfinite(figure.most));
      REQUIRE(figure.least >= 0);
      REQUIRE(figure.least <= figure.most);
    }
    REQUIRE(report->cards_in_rotation.least >= 1);
    REQUIRE(report->frames_per_card.least >= 1);
  }
  CHECK(good > 4000);
}

// Larger frames then never take fewer cards. Cards that come back on a later day may: they are
// handed over sooner, and can be back before one more is started.
bool back_by_morning(const StoreFixture& it, const StoreReport& report) {
  const Storing& store = it.plan.store;
  const double away_h = (store.travel_minutes + store.return_minutes) / 60;
  const double day_h = std::max(it.plan.shooting.day_hours, report.recorded_hours_per_day);
  return day_h + away_h + report.offload_hours_per_day.most < 24;
}

TEST_CASE("Ranges contain every point between the codec's bounds") {
  std::mt19937_64 random(99);
  int rotations = 0;
  for (int round = 0; round < 2000; ++round) {
    StoreFixture it = random_fixture(random);
    it.plan.store.travel_minutes /= 60;
    it.plan.store.return_minutes /= 60;
    const auto tenths = std::uniform_int_distribution<std::int64_t>(9, 40);
    std::uniform_int_distribution<std::int64_t> draw = tenths;
    Rational a(draw(random), 10);
    Rational b(draw(random), 10);
    Rational c(draw(random), 10);
    const Rational worst = std::min({a, b, c});
    const Rational best = std::max({a, b, c});
    const Rational middle = a + b + c - worst - best;
    it.codec.form = LosslessForm{.bits_per_pixel = 12, .worst_ratio = worst, .best_ratio = best};
    const auto range = it.result();
    it.codec.form = RatioForm{.bits_per_pixel = 12, .ratio = middle};
    const auto point = it.result();
    if (!range) continue;
    REQUIRE(point.has_value());
    CAPTURE(round);
    const auto inside = [](const auto& outer, const auto& inner) {
      return outer.least <= inner.least && inner.most <= outer.most;
    };
    CHECK(inside(range->bytes_per_frame, point->bytes_per_frame));
    CHECK(inside(range->bytes_per_s, point->bytes_per_s));
    CHECK(inside(range->frames_per_card, point->frames_per_card));
    CHECK(inside(range->minutes_per_card, point->minutes_per_card));
    CHECK(inside(range->write_headroom, point->write_headroom));
    CHECK(inside(range->cards_per_day, point->cards_per_day));
    if (back_by_morning(it, *range)) {
      CHECK(inside(range->cards_in_rotation, point->cards_in_rotation));
      ++rotations;
    }
    CHECK(inside(range->offload_hours_per_day, point->offload_hours_per_day));
    CHECK(inside(range->shoot_total_bytes, point->shoot_total_bytes));
    CHECK(inside(range->drives, point->drives));
    CHECK(inside(range->tapes, point->tapes));
    CHECK(inside(range->tape_hours, point->tape_hours));
    CHECK(inside(range->upload_hours, point->upload_hours));
    CHECK(inside(range->cost, point->cost));
    if (range->rotation_sustainable) CHECK(point->rotation_sustainable);
  }
  CHECK(rotations > 200);
}

TEST_CASE("Larger media, fewer copies or fewer days never need more") {
  std::mt19937_64 random(123);
  for (int round = 0; round < 2000; ++round) {
    const StoreFixture it = random_fixture(random);
    const auto before = it.result();
    if (!before) continue;
    CAPTURE(round);
    StoreFixture larger = it;
    larger.card.capacity_bytes *= 2;
    larger.drive.capacity_bytes *= 2;
    larger.tape.capacity_bytes *= 2;
    const StoreReport roomy = larger.report();
    CHECK(roomy.cards_per_day.most <= before->cards_per_day.most);
    CHECK(roomy.frames_per_card.least >= 2 * before->frames_per_card.least);
    CHECK(roomy.drives.most <= before->drives.most);
    CHECK(roomy.tapes.most <= before->tapes.most);
    StoreFixture longer = it;
    longer.plan.shooting.days += 1;
    const StoreReport more = longer.report();
    CHECK(more.shoot_total_bytes.least >= before->shoot_total_bytes.least * (1 - 1e-15));
    CHECK(more.fewest_drives.least >= before->fewest_drives.least);
    // The same footage spread over more days may fill smaller cards, which pack better.
    if (it.plan.shooting.by == ShootingBy::recorded_hours) {
      CHECK(more.drives.least >= before->drives.least);
    }
    StoreFixture safer = it;
    safer.plan.store.drive_copies += 1;
    CHECK(safer.report().drives.least > before->drives.least);
    StoreFixture faster = it;
    faster.link.payload_bytes_per_s *= 2;
    CHECK(faster.report().offload_hours_per_day.most <= before->offload_hours_per_day.most);
  }
}

TEST_CASE("Twice the units are twice the data; the work of each station stays") {
  StoreFixture it;
  const StoreReport two = it.report();
  it.plan.shooting.units = 4;
  const StoreReport four = it.report();
  CHECK(four.shoot_total_bytes.least == 2 * two.shoot_total_bytes.least);
  CHECK(four.offload_hours_per_day.least == two.offload_hours_per_day.least);
  CHECK(four.cards_in_rotation == two.cards_in_rotation);
  it.plan.shooting.cameras_per_unit = 2;
  CHECK(it.report().offload_hours_per_day.least == 2 * four.offload_hours_per_day.least);
}

}  // namespace
}  // namespace widegate
