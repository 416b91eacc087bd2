// The ranking: hand-worked rejections, agreement with evaluate(), and the laws an order has to
// keep.
#include "core/choose/ranking.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <limits>
#include <map>
#include <random>
#include <string>
#include <tuple>
#include <vector>

#include "core/catalogue/catalogue_json.h"
#include "core/choose/pareto.h"
#include "core/report/evaluate.h"
#include "core/report/notes.h"
#include "tests/core/choose/sample.h"

namespace widegate {
namespace {

using choose_sample::random_catalogue;
using choose_sample::random_plan;
using choose_sample::shuffled;
using choose_sample::small_catalogue;
using choose_sample::small_format;
using choose_sample::small_plan;

const Finding& found(const RankedFormat& format, Requirement requirement) {
  return format.figures.findings[static_cast<std::size_t>(requirement)];
}

double margin_of(const RankedFormat& format, Requirement requirement) {
  return margin(requirement, found(format, requirement));
}

std::vector<Requirement> reasons(const RankedFormat& format) {
  std::vector<Requirement> failed;
  for (std::size_t i = 0; i < kRequirementCount; ++i) {
    if (!format.figures.findings[i].met) failed.push_back(static_cast<Requirement>(i));
  }
  return failed;
}

std::vector<FormatChoice> order_of(const Ranking& ranking) {
  std::vector<FormatChoice> order;
  for (const RankedFormat& format : ranking.formats) order.push_back(format.format);
  return order;
}

bool same_rows(const Ranking& a, const Ranking& b) {
  const auto same = [](const RankedFormat& x, const RankedFormat& y) {
    return x.format == y.format && x.accepted == y.accepted && x.score == y.score &&
           x.on_pareto_front == y.on_pareto_front && x.shares == y.shares &&
           x.figures.findings == y.figures.findings;
  };
  return std::equal(a.formats.begin(), a.formats.end(), b.formats.begin(), b.formats.end(), same);
}

RankedFormat only_format(const Plan& plan, const Catalogue& catalogue) {
  const Ranking ranking = rank(plan, catalogue);
  REQUIRE(ranking.problems.empty());
  REQUIRE(ranking.formats.size() == 1);
  return ranking.formats.front();
}

TEST_CASE("the figures of one format, by hand") {
  const RankedFormat format = only_format(small_plan(), small_catalogue());
  CHECK(format.format == small_format());
  CHECK(format.accepted);
  CHECK(format.on_pareto_front);
  CHECK(format.score == 1);
  CHECK(format.figures.frame_area_mm2 == doctest::Approx(24 * 12));
  CHECK(format.figures.frame_photosites == 4000 * 2000);
  CHECK(format.figures.bytes_per_s == Span{432e6, 432e6});
  // 27,777 whole frames of 18 MB on the card.
  CHECK(format.figures.minutes_per_card->least == doctest::Approx(27777 / 24.0 / 60));
  // 600 MB/s over 18 MB a frame is 33 1/3 frames per second, under the mode's 60.
  CHECK(format.figures.rate_ceiling == Rational(100, 3));
  CHECK(format.figures.rate_limited_by == RateLimit::card);
}

TEST_CASE("margins are signed, in the requirement's unit: spare when it passes") {
  Plan plan = small_plan();
  plan.mandate = {.photosites = 7'500'000, .photosites_across = 3840};
  plan.choose.min_minutes_per_card = 15;
  const RankedFormat format = only_format(plan, small_catalogue());
  CHECK(format.accepted);
  // Circle 30 mm, diagonal of 24 x 12 mm: half the difference is left at the corner.
  CHECK(margin_of(format, Requirement::cover) == doctest::Approx((30 - 26.832815729997) / 2));
  CHECK(margin_of(format, Requirement::mandate) == 500'000);
  CHECK(margin_of(format, Requirement::mandate_across) == 160);
  CHECK(margin_of(format, Requirement::mode_rate) == 36);
  CHECK(margin_of(format, Requirement::card_speed) == doctest::Approx(600.0 / 432 - 1));
  CHECK(margin_of(format, Requirement::card_minutes) == doctest::Approx(27777 / 24.0 / 60 - 15));
  CHECK_FALSE(found(format, Requirement::recording_rate).applies);
  CHECK_FALSE(found(format, Requirement::squeeze).applies);
  CHECK_FALSE(found(format, Requirement::push_in).applies);
}

TEST_CASE("a rejected format lists every reason, each with its shortfall") {
  Catalogue catalogue = small_catalogue();
  Recording& recording = catalogue.cameras.front().modes.front().recordings.front();
  recording.width_pixels = 2000;
  recording.height_pixels = 3000;
  recording.desqueeze = 2;
  recording.max_rate = 50;
  Plan plan = small_plan();
  plan.lens.squeeze = Rational(3, 2);
  plan.lens.image_circle_mm = 20;
  plan.mandate = {.photosites = 12'000'001, .photosites_across = 4001};
  plan.run.sensor_rate = 120;
  plan.choose.min_minutes_per_card = 10;
  plan.choose.min_push_in_percent = 4;
  const RankedFormat format = only_format(plan, catalogue);
  CHECK_FALSE(format.accepted);
  CHECK(reasons(format) == std::vector{Requirement::cover, Requirement::mandate,
                                       Requirement::mandate_across, Requirement::push_in,
                                       Requirement::squeeze, Requirement::mode_rate,
                                       Requirement::recording_rate, Requirement::card_speed,
                                       Requirement::card_minutes});
  // A 1.5x lens makes the 2:1 frame 4:3 on the sensor: all of 4000 x 3000, diagonal 30 mm.
  CHECK(margin_of(format, Requirement::cover) == doctest::Approx(-5));
  CHECK(margin_of(format, Requirement::mandate) == -1);
  CHECK(margin_of(format, Requirement::mandate_across) == -1);
  CHECK(margin_of(format, Requirement::push_in) == -4);
  CHECK(margin_of(format, Requirement::squeeze) == -0.5);
  CHECK(margin_of(format, Requirement::mode_rate) == -60);
  CHECK(margin_of(format, Requirement::recording_rate) == -70);
  // 2000 x 3000 at 12 bits: 9 MB a frame, 1080 MB/s.
  CHECK(margin_of(format, Requirement::card_speed) == doctest::Approx(600.0 / 1080 - 1));
  CHECK(margin_of(format, Requirement::card_minutes) == doctest::Approx(55555 / 120.0 / 60 - 10));
}

TEST_CASE("the mandate is decided on exact fractions, however close") {
  Plan plan = small_plan();
  plan.deliverable.frame_lines.front().aspect = Rational(239, 100);  // 4000 x 400000/239
  plan.mandate.photosites = 6'694'560;                               // 6,694,560.669...
  CHECK(only_format(plan, small_catalogue()).accepted);
  plan.mandate.photosites = 6'694'561;
  const RankedFormat format = only_format(plan, small_catalogue());
  CHECK(reasons(format) == std::vector{Requirement::mandate});
  CHECK(margin_of(format, Requirement::mandate) < 0);
}

TEST_CASE(
    "a codec without a frame size here is rejected for that and nothing that follows from it") {
  Catalogue catalogue = small_catalogue();
  TableForm table;
  table.rows.push_back({.width_pixels = 1920, .height_pixels = 1080, .rates = {}, .bytes = 1000});
  catalogue.codecs.push_back({.id = "table", .name = "Table", .source = "invented", .form = table});
  catalogue.cameras.front().modes.front().recordings.front().codecs.push_back("table");
  const Ranking ranking = rank(small_plan(), catalogue);
  REQUIRE(ranking.formats.size() == 2);
  CHECK(ranking.accepted == 1);
  const RankedFormat& rejected = ranking.formats.back();
  CHECK(rejected.format.codec == "table");
  CHECK(reasons(rejected) == std::vector{Requirement::frame_size});
  CHECK_FALSE(rejected.figures.bytes_per_s.has_value());
  CHECK_FALSE(rejected.figures.minutes_per_card.has_value());
}

TEST_CASE("without a known image circle cover rejects nothing, and the ranking says so") {
  Plan plan = small_plan();
  plan.lens.set = "";
  plan.choose.must_cover = CoverArea::mode;
  const Ranking ranking = rank(plan, small_catalogue());
  CHECK_FALSE(ranking.cover_known);
  CHECK(ranking.accepted == 1);
  plan.lens.image_circle_mm = 29.99;  // The mode's diagonal is 30 mm.
  CHECK(rank(plan, small_catalogue()).cover_known);
  CHECK(rank(plan, small_catalogue()).accepted == 0);
}

TEST_CASE("an invalid plan gives nothing but its problems") {
  Plan plan = small_plan();
  plan.lens.focal_mm = -1;
  const Ranking ranking = rank(plan, small_catalogue());
  CHECK(ranking.problems.size() == 1);
  CHECK(ranking.formats.empty());
}

TEST_CASE("only the cameras considered are ranked; one's own stands in for the library's") {
  Catalogue catalogue = small_catalogue();
  Camera other = catalogue.cameras.front();
  other.id = "other";
  catalogue.cameras.push_back(other);
  Plan plan = small_plan();
  CHECK(rank(plan, catalogue).formats.size() == 2);
  plan.choose.cameras = {"other"};
  CHECK(order_of(rank(plan, catalogue)) ==
        std::vector<FormatChoice>{{"other", "full", "as-read", "raw-12"}});
  other.modes.front().id = "own-mode";
  plan.own.cameras = {other};
  CHECK(order_of(rank(plan, catalogue)) ==
        std::vector<FormatChoice>{{"other", "own-mode", "as-read", "raw-12"}});
}

TEST_CASE("equal formats stand in the order of their ids") {
  Catalogue catalogue = small_catalogue();
  for (const std::string id : {"zelkova", "beech", "maple"}) {
    catalogue.cameras.push_back(catalogue.cameras.front());
    catalogue.cameras.back().id = id;
  }
  std::vector<std::string> cameras;
  for (const FormatChoice& format : order_of(rank(small_plan(), catalogue))) {
    cameras.push_back(format.camera);
  }
  CHECK(cameras == std::vector<std::string>{"beech", "camera", "maple", "zelkova"});
}

TEST_CASE("an unlimited rate is the best there is, and weights of nothing rank nothing") {
  Catalogue catalogue = small_catalogue();
  catalogue.codecs.push_back({.id = "constant",
                              .name = "Constant",
                              .source = "invented",
                              .form = BitRateForm{.bits_per_s = 100'000'000}});
  SensorMode& mode = catalogue.cameras.front().modes.front();
  mode.max_rate.reset();
  mode.recordings.front().codecs.push_back("constant");
  Plan plan = small_plan();
  plan.choose.weight_area = plan.choose.weight_pixels = plan.choose.weight_data = 0;
  const Ranking by_speed = rank(plan, catalogue);
  CHECK(by_speed.formats.front().format.codec == "constant");
  CHECK_FALSE(by_speed.formats.front().figures.rate_ceiling.has_value());
  CHECK(by_speed.formats.front().score == 1);
  // Of the ceiling of 33 1/3 frames per second 24 are used: 28 % is spare.
  CHECK(by_speed.formats.back().score == doctest::Approx(0.28));
  plan.choose.weight_speed = 0;
  const Ranking by_name = rank(plan, catalogue);
  CHECK(by_name.formats.front().format.codec == "constant");
  CHECK(by_name.formats.front().score == 0);
  CHECK(by_name.formats.back().score == 0);
}

/// What a ranking's row must share with the report of the same format.
void check_row_against_report(const RankedFormat& row, const Plan& plan, const Report& report) {
  const FormatFigures& figures = row.figures;
  const FrameReport& frame = report.frames.front();
  CHECK(figures.frame_photosites == report.resolve.frame_photosites);
  CHECK(figures.frame_area_mm2 == frame.width_mm * frame.height_mm);
  CHECK(figures.bytes_per_s == report.store.bytes_per_s);
  const bool cards = !report.store.no_cards;  // film fills none
  CHECK(figures.minutes_per_card.has_value() == cards);
  CHECK(found(row, Requirement::card_speed).applies == cards);
  if (cards) {
    CHECK(figures.minutes_per_card == report.store.minutes_per_card);
    CHECK(found(row, Requirement::card_speed).have == report.store.write_headroom.least);
    CHECK(found(row, Requirement::card_speed).met == (report.store.write_headroom.least >= 1));
  }
  CHECK(figures.rate_ceiling.has_value() == report.run.rate_ceiling.has_value());
  if (figures.rate_ceiling) CHECK(*figures.rate_ceiling == *report.run.rate_ceiling);
  CHECK(figures.rate_limited_by == report.run.rate_limited_by);
  const CoverFigures& cover = plan.choose.must_cover == CoverArea::mode ? report.cover.mode
                              : plan.choose.must_cover == CoverArea::protected_area
                                  ? report.cover.protected_area
                                  : report.cover.frame;
  if (found(row, Requirement::cover).applies) {
    CHECK(found(row, Requirement::cover).met == cover.covered);
    CHECK(margin_of(row, Requirement::cover) == doctest::Approx(cover.margin_mm).epsilon(1e-12));
  }
  if (found(row, Requirement::mandate).applies) {
    CHECK(found(row, Requirement::mandate).met == report.resolve.mandate.met);
    CHECK(found(row, Requirement::mandate).have == report.resolve.mandate.have);
  }
  if (found(row, Requirement::mandate_across).applies) {
    CHECK(found(row, Requirement::mandate_across).met == report.resolve.mandate_across.met);
  }
  if (found(row, Requirement::push_in).applies) {
    CHECK(found(row, Requirement::push_in).have == frame.room_protected_percent);
  }
  CHECK(found(row, Requirement::squeeze).met == (report.resolve.recorded_squeeze >= 1));
}

/// A format is accepted when evaluate() has no failure that choosing looks at.
bool report_accepts(const Plan& plan, const Report& report) {
  for (const Note& note : report.notes) {
    const bool mandate =
        note.topic == Topic::resolve_mandate || note.topic == Topic::resolve_mandate_across;
    const bool chosen_by = topic_question(note.topic) == Question::cover ||
                           (mandate && plan.choose.must_meet_mandate) ||
                           note.topic == Topic::resolve_squeeze_mismatch ||
                           note.topic == Topic::run_rate_ceiling ||
                           note.topic == Topic::store_write_headroom;
    if (note.severity == Severity::fail && chosen_by) return false;
  }
  const bool long_enough =
      report.store.no_cards ||
      report.store.minutes_per_card.least >= plan.choose.min_minutes_per_card;
  return long_enough &&
         report.frames.front().room_protected_percent >= plan.choose.min_push_in_percent - 1e-9;
}

void check_against_evaluate(const Plan& plan, const Catalogue& catalogue) {
  const Ranking ranking = rank(plan, catalogue);
  REQUIRE(ranking.problems.empty());
  for (const RankedFormat& row : ranking.formats) {
    CAPTURE(row.format.camera);
    CAPTURE(row.format.mode);
    CAPTURE(row.format.recording);
    CAPTURE(row.format.codec);
    Plan chosen = plan;
    chosen.format = row.format;
    const Report report = evaluate(chosen, catalogue);
    CHECK(found(row, Requirement::frame_size).met == report.problems.empty());
    if (!report.problems.empty()) continue;
    check_row_against_report(row, chosen, report);
    CHECK(row.accepted == report_accepts(chosen, report));
  }
}

TEST_CASE("every row of a ranking holds what evaluate says of that format") {
  std::mt19937 random(3);
  const Catalogue catalogue = random_catalogue(random, 150);
  for (int round = 0; round < 12; ++round) {
    check_against_evaluate(random_plan(random, catalogue), catalogue);
  }
}

TEST_CASE("every format of the built-in library is ranked by what evaluate says of it") {
  const auto library = built_in_catalogue();
  REQUIRE(library);
  Plan plan;
  check_against_evaluate(plan, *library);
  plan.choose.must_cover = CoverArea::mode;
  plan.deliverable.frame_lines.front().protection = Rational(1, 10);
  plan.choose.min_push_in_percent = 10;
  plan.choose.min_minutes_per_card = 20;
  plan.run.sensor_rate = 48;
  check_against_evaluate(plan, *library);
  plan = Plan{};
  plan.lens.set = "wye";
  plan.choose.must_cover = CoverArea::protected_area;
  plan.run.project_rate = plan.run.sensor_rate = Rational(24000, 1001);
  check_against_evaluate(plan, *library);
}

TEST_CASE("a ranking does not change when the catalogue is shuffled") {
  std::mt19937 random(11);
  const Catalogue catalogue = random_catalogue(random, 300);
  for (int round = 0; round < 12; ++round) {
    const Plan plan = random_plan(random, catalogue);
    const Ranking ranking = rank(plan, catalogue);
    CHECK(same_rows(ranking, rank(plan, shuffled(catalogue, random))));
  }
}

TEST_CASE("only the proportions of the weights count") {
  std::mt19937 random(12);
  const Catalogue catalogue = random_catalogue(random, 300);
  for (int round = 0; round < 12; ++round) {
    Plan plan = random_plan(random, catalogue);
    const auto order = order_of(rank(plan, catalogue));
    for (const double scale : {0.5, 0.1, 1.0 / 3}) {
      Plan scaled = plan;
      scaled.choose.weight_area *= scale;
      scaled.choose.weight_pixels *= scale;
      scaled.choose.weight_speed *= scale;
      scaled.choose.weight_data *= scale;
      CHECK(order_of(rank(scaled, catalogue)) == order);
    }
  }
}

TEST_CASE("accepted formats come first, by falling score; rejected ones by rising reasons") {
  std::mt19937 random(13);
  const Catalogue catalogue = random_catalogue(random, 400);
  for (int round = 0; round < 8; ++round) {
    const Ranking ranking = rank(random_plan(random, catalogue), catalogue);
    for (std::size_t i = 1; i < ranking.formats.size(); ++i) {
      const RankedFormat& before = ranking.formats[i - 1];
      const RankedFormat& after = ranking.formats[i];
      CHECK(before.accepted >= after.accepted);
      CHECK(reasons(before).size() <= reasons(after).size());
      if (after.accepted) CHECK(before.score >= after.score);
      CHECK(after.accepted == (i < ranking.accepted));
      CHECK(after.accepted == reasons(after).empty());
    }
  }
}

Merits merits(const RankedFormat& format) {
  const auto& ceiling = format.figures.rate_ceiling;
  return {format.figures.frame_area_mm2, format.figures.frame_pixels,
          ceiling ? ceiling->to_double() : std::numeric_limits<double>::infinity(),
          -format.figures.bytes_per_s->most};
}

TEST_CASE("the Pareto front is the accepted formats that no accepted format dominates") {
  std::mt19937 random(14);
  const Catalogue catalogue = random_catalogue(random, 250);
  for (int round = 0; round < 10; ++round) {
    Plan plan = random_plan(random, catalogue);
    plan.mandate = {.photosites = 0};
    const Ranking ranking = rank(plan, catalogue);
    for (std::size_t i = 0; i < ranking.formats.size(); ++i) {
      bool best = ranking.formats[i].accepted;
      for (std::size_t j = 0; best && j < ranking.accepted; ++j) {
        best = !dominates(merits(ranking.formats[j]), merits(ranking.formats[i]));
      }
      CHECK(ranking.formats[i].on_pareto_front == best);
    }
  }
}

TEST_CASE("the first of a ranking with every weight above nothing is on the Pareto front") {
  std::mt19937 random(15);
  const Catalogue catalogue = random_catalogue(random, 250);
  for (int round = 0; round < 10; ++round) {
    Plan plan = random_plan(random, catalogue);
    plan.choose.weight_area = plan.choose.weight_pixels = plan.choose.weight_speed =
        plan.choose.weight_data = 1;
    const Ranking ranking = rank(plan, catalogue);
    if (ranking.accepted > 0) CHECK(ranking.formats.front().on_pareto_front);
  }
}

/// A copy of one format's camera with a smaller mode, which every weight likes less.
Catalogue with_dominated(const Catalogue& catalogue, const FormatChoice& format) {
  Catalogue more = catalogue;
  Camera camera = *find_row(catalogue.cameras, format.camera);
  const SensorMode mode = *find_row(camera.modes, format.mode);
  camera.id = "dominated";
  camera.modes = {mode};
  SensorMode& smaller = camera.modes.front();
  smaller.recordings = {*find_row(mode.recordings, format.recording)};
  smaller.recordings.front().codecs = {format.codec};
  if (smaller.recordings.front().width_pixels == 0) {
    smaller.recordings.front().width_pixels = mode.width_photosites;
    smaller.recordings.front().height_pixels = mode.height_photosites;
  }
  smaller.width_photosites = mode.width_photosites * 9 / 10;
  smaller.height_photosites = mode.height_photosites * 9 / 10;
  smaller.width_mm = mode.width_mm * 9 / 10;
  smaller.height_mm = mode.height_mm * 9 / 10;
  more.cameras.push_back(camera);
  return more;
}

TEST_CASE("adding a format that another one dominates changes nothing above it") {
  std::mt19937 random(16);
  const Catalogue catalogue = random_catalogue(random, 120);
  int added = 0;
  for (int round = 0; round < 40; ++round) {
    Plan plan = random_plan(random, catalogue);
    plan.mandate = {.photosites = 0};
    plan.choose.must_cover = CoverArea::none;
    const Ranking before = rank(plan, catalogue);
    if (before.accepted == 0) continue;
    const auto pick = std::uniform_int_distribution<std::size_t>(0, before.accepted - 1)(random);
    const Ranking after = rank(plan, with_dominated(catalogue, before.formats[pick].format));
    REQUIRE(after.problems.empty());
    const auto place =
        std::find_if(after.formats.begin(), after.formats.end(),
                     [](const RankedFormat& row) { return row.format.camera == "dominated"; });
    REQUIRE(place != after.formats.end());
    if (!place->accepted) continue;
    ++added;
    CHECK_FALSE(place->on_pareto_front);
    Ranking without = after;
    without.formats.erase(without.formats.begin() + (place - after.formats.begin()));
    CHECK(same_rows(before, without));
  }
  CHECK(added > 10);
}

TEST_CASE("100,000 formats take room only for the rows") {
  std::mt19937 random(17);
  const Catalogue large = random_catalogue(random, 100'000);
  Plan plan = random_plan(random, large);
  plan.mandate = {.photosites = 0};
  plan.choose.must_cover = CoverArea::none;
  const Ranking ranking = rank(plan, large);
  CHECK(ranking.formats.size() >= 100'000);
  CHECK(ranking.formats.capacity() == ranking.formats.size());
  CHECK(sizeof(RankedFormat) <= 640);
}

}  // namespace
}  // namespace widegate
