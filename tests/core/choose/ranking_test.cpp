// The ranking: hand-worked rejections, agreement with evaluate(), and the laws an order has to
// keep.
#include "core/choose/ranking.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <random>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/catalogue/catalogue_json.h"
#include "core/report/evaluate.h"
#include "tests/core/choose/sample.h"

namespace widegate {
namespace {

using choose_sample::random_catalogue;
using choose_sample::random_plan;
using choose_sample::shuffled;
using choose_sample::small_catalogue;
using choose_sample::small_format;
using choose_sample::small_plan;

Finding found(const RankedFormat& format, Requirement requirement) {
  return format.figures.findings[requirement];
}

double margin_of(const RankedFormat& format, Requirement requirement) {
  return margin(requirement, found(format, requirement));
}

std::vector<Requirement> reasons(const RankedFormat& format) {
  std::vector<Requirement> failed;
  for_each_asked(format.figures.findings, [&](Requirement requirement, const Finding& finding) {
    if (finding.missed()) failed.push_back(requirement);
  });
  return failed;
}

std::vector<FormatChoice> order_of(const Ranking& ranking) {
  std::vector<FormatChoice> order;
  for (const RankedFormat& format : ranking.formats) order.push_back(format.format);
  return order;
}

bool same_row(const RankedFormat& x, const RankedFormat& y) {
  return x.format == y.format && x.accepted == y.accepted && x.score == y.score &&
         x.shares == y.shares && x.figures.findings == y.figures.findings &&
         x.figures.cautions == y.figures.cautions;
}

bool same_rows(const Ranking& a, const Ranking& b) {
  return std::equal(a.formats.begin(), a.formats.end(), b.formats.begin(), b.formats.end(),
                    [](const RankedFormat& x, const RankedFormat& y) {
                      return same_row(x, y) && x.on_pareto_front == y.on_pareto_front &&
                             x.as_good == y.as_good;
                    });
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
  CHECK(format.as_good);
  // The 30 mm circle only just reaches the corners of the mode: a promise, not a measurement.
  CHECK(format.figures.cautions.has(Caution::tight_circle));
  CHECK_FALSE(format.on_pareto_front);
  CHECK(format.picture.area_mm2 == doctest::Approx(24 * 12));
  CHECK(format.picture.photosites == 4000 * 2000);
  CHECK(format.figures.bytes_per_s == Span{432e6, 432e6});
  // 27,777 whole frames of 18 MB on the card.
  CHECK(format.figures.minutes_per_card->least == doctest::Approx(27777 / 24.0 / 60));
  // 600 MB/s over 18 MB a frame is 33 1/3 frames per second, under the mode's 60.
  CHECK(format.figures.rate_ceiling == Rational(100, 3));
  CHECK(format.figures.rate_limited_by == RateLimit::card);
  // 3840 x 1920 of 4000 x 2000 are delivered; a codec of which nothing is known is a picture.
  CHECK(format.figures.upscaling.scale == doctest::Approx(0.96));
  CHECK(format.picture.true_pixels == 4e6);
  CHECK(format.picture.served == doctest::Approx(4e6 / (3840 * 1920)));
  CHECK(format.shares[0] == doctest::Approx(std::log2(288 / 50.0) / 6));
  CHECK(format.shares[1] == doctest::Approx(std::log2(8 * format.picture.served) / 4));
  CHECK(format.shares[3] == 1);  // 33 1/3 is more than 1.2 times 24
}

TEST_CASE("margins are signed, in the requirement's unit: spare when it passes") {
  Plan plan = small_plan();
  plan.commission.terms.photosites = 7'500'000;
  plan.commission.terms.recorded_width_pixels = 3840;
  plan.choose.min_minutes_per_card = 15;
  const RankedFormat format = only_format(plan, small_catalogue());
  CHECK(format.accepted);
  // Circle 30 mm, diagonal of 24 x 12 mm: half the difference is left at the corner.
  CHECK(margin_of(format, Requirement::cover) == doctest::Approx((30 - 26.832815729997) / 2));
  CHECK(margin_of(format, Requirement::photosites) == 4'500'000);  // of the mode
  CHECK(margin_of(format, Requirement::raster_width) == 160);
  CHECK(margin_of(format, Requirement::mode_rate) == 36);
  CHECK(margin_of(format, Requirement::card_speed) == doctest::Approx(600.0 / 432 - 1));
  CHECK(margin_of(format, Requirement::card_minutes) == doctest::Approx(27777 / 24.0 / 60 - 15));
  CHECK_FALSE(found(format, Requirement::recording_rate).asked());
  CHECK_FALSE(found(format, Requirement::desqueeze).asked());
  CHECK_FALSE(found(format, Requirement::push_in).asked());
  CHECK_FALSE(found(format, Requirement::upscaling).asked());
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
  plan.commission.terms.photosites = 12'000'001;
  plan.commission.terms.recorded_width_pixels = 4001;
  plan.run.sensor_rate = 120;
  plan.choose.min_minutes_per_card = 10;
  plan.choose.min_room_percent = 4;
  const RankedFormat format = only_format(plan, catalogue);
  CHECK_FALSE(format.accepted);
  CHECK(reasons(format) == std::vector{Requirement::cover, Requirement::photosites,
                                       Requirement::raster_width, Requirement::room,
                                       Requirement::desqueeze, Requirement::mode_rate,
                                       Requirement::recording_rate, Requirement::card_speed,
                                       Requirement::card_minutes});
  // A 1.5x lens makes the 2:1 frame 4:3 on the sensor: all of 4000 x 3000, diagonal 30 mm.
  CHECK(margin_of(format, Requirement::cover) == doctest::Approx(-5));
  CHECK(margin_of(format, Requirement::photosites) == -1);
  // 2000 pixels with 3/4 of the squeeze left in them.
  CHECK(margin_of(format, Requirement::raster_width) == -2501);
  CHECK(margin_of(format, Requirement::room) == -4);
  CHECK(margin_of(format, Requirement::desqueeze) == -0.5);
  CHECK(margin_of(format, Requirement::mode_rate) == -60);
  CHECK(margin_of(format, Requirement::recording_rate) == -70);
  // 2000 x 3000 at 12 bits: 9 MB a frame, 1080 MB/s.
  CHECK(margin_of(format, Requirement::card_speed) == doctest::Approx(600.0 / 1080 - 1));
  CHECK(margin_of(format, Requirement::card_minutes) == doctest::Approx(55555 / 120.0 / 60 - 10));
}

TEST_CASE("in-camera de-squeeze by another factor is refused, larger or smaller") {
  Catalogue catalogue = small_catalogue();
  Recording& recording = catalogue.cameras.front().modes.front().recordings.front();
  recording.width_pixels = 4000;
  recording.height_pixels = 1500;
  recording.desqueeze = Rational(3, 2);
  Plan plan = small_plan();
  for (const auto& [squeeze, accepted] :
       {std::pair(Rational(1), false), {Rational(3, 2), true}, {Rational(2), false}}) {
    plan.lens.squeeze = squeeze;
    const RankedFormat format = only_format(plan, catalogue);
    CHECK(found(format, Requirement::desqueeze).missed() == !accepted);
  }
}

TEST_CASE("photosites inside the line are decided on exact fractions, however close") {
  Plan plan = small_plan();
  plan.deliverable.frame_lines.front().aspect = Rational(239, 100);  // 4000 x 400000/239
  plan.commission.terms.counted_on = CountedOn::frame;
  plan.commission.terms.photosites = 6'694'560;  // 6,694,560.669...
  CHECK(only_format(plan, small_catalogue()).accepted);
  plan.commission.terms.photosites = 6'694'561;
  const RankedFormat format = only_format(plan, small_catalogue());
  CHECK(reasons(format) == std::vector{Requirement::photosites});
  CHECK(margin_of(format, Requirement::photosites) < 0);
}

TEST_CASE("upscaling is decided exactly at its limit") {
  Plan plan = small_plan();  // 4000 pixels across the line
  plan.deliverable.width_pixels = 4480;
  plan.deliverable.height_pixels = 2240;
  plan.commission.terms.largest_upscaling = Rational(28, 25);
  CHECK(only_format(plan, small_catalogue()).accepted);  // 1.12 exactly
  CHECK(only_format(plan, small_catalogue()).figures.cautions.has(Caution::upscaled));
  plan.deliverable.width_pixels = 4482;
  plan.deliverable.height_pixels = 2241;
  CHECK(reasons(only_format(plan, small_catalogue())) == std::vector{Requirement::upscaling});
}

TEST_CASE("push-in is what is left inside the line, never room outside it") {
  Plan plan = small_plan();
  plan.deliverable.frame_lines.front().protection = Rational(1, 10);  // 3600 across
  plan.deliverable.width_pixels = 3240;
  plan.deliverable.height_pixels = 1620;
  plan.choose.min_push_in_percent = 10;
  CHECK(only_format(plan, small_catalogue()).accepted);
  plan.choose.min_push_in_percent = 10.01;
  CHECK(reasons(only_format(plan, small_catalogue())) == std::vector{Requirement::push_in});
  plan.choose.min_push_in_percent = 0;
  plan.choose.min_room_percent = 10;
  CHECK(only_format(plan, small_catalogue()).accepted);
  plan.choose.min_room_percent = 10.01;
  CHECK(reasons(only_format(plan, small_catalogue())) == std::vector{Requirement::room});
}

TEST_CASE("every frame line is judged, with its own raster; the worst one is named") {
  Plan plan = small_plan();
  FrameLine upright;
  upright.name = "Upright";
  upright.aspect = Rational(9, 16);  // 1687.5 x 3000
  upright.width_pixels = 2160;
  upright.height_pixels = 3840;
  plan.deliverable.frame_lines.push_back(upright);
  plan.commission.terms.largest_upscaling = Rational(28, 25);
  const RankedFormat format = only_format(plan, small_catalogue());
  CHECK(reasons(format) == std::vector{Requirement::upscaling});
  CHECK(found(format, Requirement::upscaling).have == doctest::Approx(1.28));
  CHECK(found(format, Requirement::upscaling).line == 1);
  plan.deliverable.frame_lines.back().width_pixels = 1080;
  plan.deliverable.frame_lines.back().height_pixels = 1920;
  CHECK(only_format(plan, small_catalogue()).accepted);
}

TEST_CASE("what the library does not say is not known: neither met nor missed, and a caution") {
  Plan plan = small_plan();
  plan.commission.terms.bit_depth = 10;
  const RankedFormat format = only_format(plan, small_catalogue());
  CHECK(format.accepted);
  CHECK(found(format, Requirement::bit_depth).met == Met::not_known);
  CHECK(format.figures.cautions.has(Caution::not_known));
  CHECK(reason_text(Requirement::bit_depth, found(format, Requirement::bit_depth)) ==
        "Bit depth: not known, 10 bit needed");
}

TEST_CASE(
    "a codec without a frame size here is rejected for that and nothing that follows from it") {
  Catalogue catalogue = small_catalogue();
  TableForm table;
  table.rows.push_back({.width_pixels = 1920, .height_pixels = 1080, .rates = {}, .bytes = 1000});
  Codec codec;
  codec.id = "table";
  codec.name = "Table";
  codec.source = "invented";
  codec.form = table;
  catalogue.codecs.push_back(codec);
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

TEST_CASE("a card that the camera does not take is refused; where nothing is said any goes") {
  Catalogue catalogue = small_catalogue();
  catalogue.cards.front().kind = "square";
  CHECK(only_format(small_plan(), catalogue).accepted);
  catalogue.cameras.front().media = {"round", "square"};
  CHECK(only_format(small_plan(), catalogue).accepted);
  catalogue.cameras.front().media = {"round"};
  CHECK(reasons(only_format(small_plan(), catalogue)) == std::vector{Requirement::media});
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

TEST_CASE("cameras of another medium are ranked when they are chosen") {
  Catalogue catalogue = small_catalogue();
  catalogue.cameras.push_back(catalogue.cameras.front());
  catalogue.cameras.back().id = "film";
  catalogue.cameras.back().medium = Medium::film;
  Plan plan = small_plan();
  CHECK(rank(plan, catalogue).formats.size() == 1);
  plan.choose.cameras = {"camera", "film"};
  CHECK(rank(plan, catalogue).formats.size() == 2);
  plan.choose.cameras.clear();
  plan.format.camera = "film";
  REQUIRE(rank(plan, catalogue).formats.size() == 1);
  const RankedFormat film = rank(plan, catalogue).formats.front();
  CHECK(film.format.camera == "film");
  // No card limits film, and it holds 165 pixels a millimetre: 24 x 18 mm are 11.76 million.
  CHECK_FALSE(found(film, Requirement::card_speed).asked());
  plan.commission.terms.photosites = 11'761'200;
  CHECK(rank(plan, catalogue).accepted == 1);
  plan.commission.terms.photosites = 11'761'201;
  CHECK(rank(plan, catalogue).accepted == 0);
}

/// A second camera whose mode is half as large: the same view needs half the focal length.
Catalogue with_half() {
  Catalogue catalogue = small_catalogue();
  catalogue.cameras.push_back(catalogue.cameras.front());
  Camera& half = catalogue.cameras.back();
  half.id = "half";
  SensorMode& mode = half.modes.front();
  mode.width_photosites = 2000;
  mode.height_photosites = 1500;
  mode.width_mm = 12;
  mode.height_mm = 9;
  return catalogue;
}

const RankedFormat& of_camera(const Ranking& ranking, std::string_view camera) {
  return *std::find_if(ranking.formats.begin(), ranking.formats.end(),
                       [&](const RankedFormat& row) { return row.format.camera == camera; });
}

TEST_CASE("at the same view every mode has the nearest focal length, its circle and its caution") {
  Plan plan = small_plan();
  plan.lens.focal_mm = 50;
  const Ranking ranking = rank(plan, with_half());
  CHECK(ranking.lens_given == LensGiven::same_view);
  CHECK(of_camera(ranking, "camera").figures.lens.focal_mm == 50);
  const LensThere lens = of_camera(ranking, "half").figures.lens;
  CHECK(lens.focal_mm == 25);
  CHECK(lens.image_circle_mm == 26);
  CHECK(lens.view_ratio == 1);
  plan.lens.focal_mm = 35;  // 17.5 mm there; the widest is 25 mm
  const Ranking missed = rank(plan, with_half());
  CHECK(of_camera(missed, "half").figures.lens.view_ratio == doctest::Approx(0.7));
  CHECK(of_camera(missed, "half").figures.cautions.has(Caution::other_view));
  CHECK(of_camera(missed, "half").accepted);
  plan.choose.compare = CompareWith::same_lens;
  CHECK(of_camera(rank(plan, with_half()), "half").figures.lens.focal_mm == 35);
}

TEST_CASE("the same lens is given where the same view makes no sense") {
  Plan plan = small_plan();
  CHECK(rank(plan, small_catalogue()).lens_given == LensGiven::one_camera);
  plan.choose.cameras = {"half"};
  CHECK(rank(plan, with_half()).lens_given == LensGiven::one_camera);
  plan.choose.cameras.clear();
  plan.lens.image_circle_mm = 40;
  CHECK(rank(plan, with_half()).lens_given == LensGiven::no_set);
  plan.lens.image_circle_mm.reset();
  plan.lens.focal_mm = 25;
  CHECK(rank(plan, with_half()).lens_given == LensGiven::not_covered);
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

TEST_CASE("weights of nothing rank by data, then by name") {
  Catalogue catalogue = small_catalogue();
  Codec light = catalogue.codecs.front();
  light.id = "light";
  light.form = BitRateForm{.bits_per_s = 100'000'000};
  catalogue.codecs.push_back(light);
  catalogue.cameras.front().modes.front().recordings.front().codecs.push_back("light");
  Plan plan = small_plan();
  plan.choose.weights = WeightSet::own;
  plan.choose.weight_area = plan.choose.weight_pixels = plan.choose.weight_fidelity =
      plan.choose.weight_speed = plan.choose.weight_data = 0;
  const Ranking ranking = rank(plan, catalogue);
  CHECK(ranking.formats.front().format.codec == "light");
  CHECK(ranking.formats.front().score == 0);
}

TEST_CASE("formats by mode, the best first") {
  const Ranking ranking = rank(small_plan(), with_half());
  const auto groups = grouped(ranking.formats);
  REQUIRE(groups.size() == 2);
  CHECK(groups.front().rows == std::vector<std::size_t>{0});
}

void check_row_against_report(const RankedFormat& row, const Report& report) {
  CHECK(row.accepted == report.commission.format_accepted);
  for (std::size_t i = 0; i < kRequirementCount; ++i) {
    const auto requirement = static_cast<Requirement>(i);
    if (is_of_the_plan(requirement)) continue;
    CAPTURE(requirement_info(requirement).key);
    CHECK(found(row, requirement) == report.commission.findings[requirement]);
  }
  Cautions cautions = report.commission.cautions;  // which knows no other view than the plan's
  if (row.figures.cautions.has(Caution::other_view)) cautions.add(Caution::other_view);
  CHECK(row.figures.cautions == cautions);
  CHECK(row.picture.photosites == doctest::Approx(report.resolve.frame_photosites));
  CHECK(row.figures.upscaling.scale == doctest::Approx(report.resolve.nominal_scale));
  CHECK(row.figures.bytes_per_s == report.store.bytes_per_s);
  CHECK(row.figures.rate_ceiling.has_value() == report.run.rate_ceiling.has_value());
  if (row.figures.rate_ceiling) CHECK(*row.figures.rate_ceiling == *report.run.rate_ceiling);
}

/// Accepted there and here, or in neither, each with the lens that the ranking gave it.
void check_against_evaluate(const Plan& plan, const Catalogue& catalogue) {
  const Ranking ranking = rank(plan, catalogue);
  REQUIRE(ranking.problems.empty());
  for (const RankedFormat& row : ranking.formats) {
    CAPTURE(row.format.camera);
    CAPTURE(row.format.mode);
    CAPTURE(row.format.recording);
    CAPTURE(row.format.codec);
    const Report report = evaluate(with_format(plan, row), catalogue);
    if (report.problems.empty()) check_row_against_report(row, report);
    if (!report.problems.empty()) CHECK_FALSE(row.accepted);
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
  for (const Commission& commission : library->commissions) {
    CAPTURE(commission.id);
    plan = Plan{};
    plan.commission.id = commission.id;
    plan.lens.set = "wye";
    plan.choose.must_cover = CoverArea::protected_area;
    plan.run.project_rate = plan.run.sensor_rate = Rational(24000, 1001);
    check_against_evaluate(plan, *library);
  }
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

/// The rows of `ranking` without those of one camera.
std::vector<RankedFormat> without_camera(const Ranking& ranking, std::string_view camera) {
  std::vector<RankedFormat> rows = ranking.formats;
  std::erase_if(rows, [&](const RankedFormat& row) { return row.format.camera == camera; });
  return rows;
}

TEST_CASE("adding or removing formats moves no other, and changes nothing of any other") {
  std::mt19937 random(12);
  for (int round = 0; round < 20; ++round) {
    Catalogue catalogue = random_catalogue(random, 200);
    Plan plan = random_plan(random, catalogue);
    while (plan.format.camera == catalogue.cameras.back().id || catalogue.cameras.size() < 3) {
      plan = random_plan(random, catalogue);
    }
    const std::string last = catalogue.cameras.back().id;
    const auto left = without_camera(rank(plan, catalogue), last);
    catalogue.cameras.pop_back();
    const Ranking without = rank(plan, catalogue);
    CHECK(std::equal(left.begin(), left.end(), without.formats.begin(), without.formats.end(),
                     same_row));
  }
}

TEST_CASE("only the proportions of one's own weights count") {
  std::mt19937 random(12);
  const Catalogue catalogue = random_catalogue(random, 300);
  for (int round = 0; round < 12; ++round) {
    Plan plan = random_plan(random, catalogue);
    plan.choose.weights = WeightSet::own;
    const auto order = order_of(rank(plan, catalogue));
    for (const double scale : {0.5, 0.25}) {
      Plan scaled = plan;
      for (double* weight : {&scaled.choose.weight_area, &scaled.choose.weight_pixels,
                             &scaled.choose.weight_fidelity, &scaled.choose.weight_speed,
                             &scaled.choose.weight_data}) {
        *weight *= scale;
      }
      CHECK(order_of(rank(scaled, catalogue)) == order);
    }
  }
}

TEST_CASE("accepted first, those without a caution before, by falling score; then by reasons") {
  std::mt19937 random(13);
  const Catalogue catalogue = random_catalogue(random, 400);
  for (int round = 0; round < 8; ++round) {
    const Ranking ranking = rank(random_plan(random, catalogue), catalogue);
    for (std::size_t i = 1; i < ranking.formats.size(); ++i) {
      const RankedFormat& before = ranking.formats[i - 1];
      const RankedFormat& after = ranking.formats[i];
      CHECK(before.accepted >= after.accepted);
      CHECK(reasons(before).size() <= reasons(after).size());
      CHECK(after.accepted == (i < ranking.accepted));
      CHECK(after.accepted == reasons(after).empty());
      if (!after.accepted) continue;
      CHECK(after.figures.cautions.none() == (i < ranking.without_caution));
      if (before.figures.cautions.none() == after.figures.cautions.none()) {
        CHECK(before.score >= after.score);
      }
    }
  }
}

/// What the front goes by, from the shares: rounding may only make rows more alike.
bool beats(const RankedFormat& a, const RankedFormat& b) {
  bool better = false;
  for (std::size_t i = 0; i < kCriterionCount; ++i) {
    if (a.shares[i] < b.shares[i] - 1e-9) return false;
    better = better || a.shares[i] > b.shares[i] + 1e-9;
  }
  return better;
}

TEST_CASE("on the Pareto front: without caution, and beaten by none of these in every criterion") {
  std::mt19937 random(14);
  const Catalogue catalogue = random_catalogue(random, 250);
  for (int round = 0; round < 10; ++round) {
    const Ranking ranking = rank(random_plan(random, catalogue), catalogue);
    for (std::size_t i = 0; i < ranking.formats.size(); ++i) {
      if (!ranking.formats[i].on_pareto_front) continue;
      CHECK(i < ranking.without_caution);
      for (std::size_t j = 0; j < ranking.without_caution; ++j) {
        CHECK_FALSE(beats(ranking.formats[j], ranking.formats[i]));
      }
    }
    if (ranking.without_caution == 0) continue;
    const auto on_front = [](const RankedFormat& row) { return row.on_pareto_front; };
    CHECK(std::any_of(ranking.formats.begin(), ranking.formats.end(), on_front));
  }
}

TEST_CASE("what is equal in exact fractions is equal on the front: a wider mode, the same frame") {
  // Two modes of one sensor as high as one another hold the same 1.2:1 line; the wider one records
  // more around it, so it is beaten by its data, whatever the last digit of its area is.
  Catalogue catalogue = small_catalogue();
  std::vector<SensorMode>& modes = catalogue.cameras.front().modes;
  modes.push_back(modes.front());
  modes.back().id = "narrower";
  modes.back().width_photosites = 3601;
  modes.back().width_mm = 21.606;
  Plan plan = small_plan();
  plan.deliverable.frame_lines.front().aspect = Rational(6, 5);
  const Ranking ranking = rank(plan, catalogue);
  REQUIRE(ranking.accepted == 2);
  CHECK(ranking.formats[0].picture.area_product == ranking.formats[1].picture.area_product);
  CHECK(ranking.formats[0].picture.served_product == ranking.formats[1].picture.served_product);
  CHECK(ranking.formats[0].format.mode == "narrower");
  CHECK(ranking.formats[0].on_pareto_front);
  CHECK_FALSE(ranking.formats[1].on_pareto_front);
}

TEST_CASE("100,000 formats are ranked with room only for the rows") {
  std::mt19937 random(17);
  const Catalogue large = random_catalogue(random, 100'000);
  Plan plan = random_plan(random, large);
  plan.commission = {};
  plan.commission.id = "none";
  plan.choose.must_cover = CoverArea::none;
  const Ranking ranking = rank(plan, large);
  CHECK(ranking.formats.size() >= 100'000);
  CHECK(ranking.formats.capacity() == ranking.formats.size());
  CHECK(sizeof(RankedFormat) <= 1024);
}

}  // namespace
}  // namespace widegate
