// Whole plans: hand-worked cases on a library of a few rows, what an invalid plan gives, and laws
// that hold for every plan over the built-in library.
#include "core/report/evaluate.h"

#include <doctest/doctest.h>

#include <array>
#include <cmath>

#include "core/base/number_text.h"
#include "core/catalogue/catalogue_json.h"
#include "core/handover/json/report_json.h"
#include "core/plan/plan_check.h"
#include "core/report/notes.h"
#include "core/report/report_fields.h"
#include "tests/core/support/random_plans.h"

namespace widegate {
namespace {

using testing::Dice;

/// One camera of 5 micrometre photosites, one lens set, one of everything else in round figures.
Catalogue small_library() {
  Recording as_read;
  as_read.id = as_read.name = "as-read";
  as_read.codecs = {"packed-12", "lossless-12", "constant"};
  Recording desqueezed = as_read;
  desqueezed.id = "desqueezed";
  desqueezed.width_pixels = 3840;
  desqueezed.height_pixels = 1440;
  desqueezed.desqueeze = 2;
  desqueezed.max_rate = 30;
  SensorMode mode;
  mode.id = mode.name = "full";
  mode.width_photosites = 4000;
  mode.height_photosites = 3000;
  mode.width_mm = 20;
  mode.height_mm = 15;
  mode.max_rate = 60;
  mode.recordings = {as_read, desqueezed};
  Camera camera;
  camera.id = camera.name = camera.source = "test";
  camera.width_photosites = 4000;
  camera.height_photosites = 3000;
  camera.width_mm = 20;
  camera.height_mm = 15;
  camera.modes = {mode};
  LensSet set;
  set.id = set.name = set.source = "set";
  set.lenses = {{.focal_mm = 25, .image_circle_mm = 24, .widest_t_stop = 2, .close_focus_m = 0.3},
                {.focal_mm = 50, .image_circle_mm = 30, .widest_t_stop = 2, .close_focus_m = 0.5}};

  Catalogue library;
  library.cameras = {camera};
  library.lens_sets = {set};
  library.codecs = {
      {"packed-12", "p", "s", PackedForm{.block_pixels = 2, .block_bytes = 3}},
      {"lossless-12", "l", "s",
       LosslessForm{.bits_per_pixel = 12, .worst_ratio = 1, .best_ratio = 2}},
      {"constant", "c", "s", BitRateForm{.bits_per_s = 100'000'000}},
  };
  constexpr std::int64_t kGigabyte = 1'000'000'000;
  library.cards = {
      {"card", "c", "s", "", 512 * kGigabyte, 1, kGigabyte, kGigabyte, "", 100},
      {"slow", "c", "s", "", 512 * kGigabyte, 1, 400'000'000, kGigabyte, "CLASS 400", 100}};
  library.links = {{"link", "l", "s", kGigabyte}};
  library.drives = {{"drive", "d", "s", 16'000 * kGigabyte, kGigabyte, kGigabyte, 500}};
  library.tapes = {{"tape", "t", "s", 12'000 * kGigabyte, 360'000'000, 60}};
  library.checksums = {{"sum", "c", "s", 5 * kGigabyte}};
  library.containers = {{"none", "c", "s", 0, 0}};
  return library;
}

Plan small_plan() {
  Plan plan;
  plan.format = {.camera = "test", .mode = "full", .recording = "as-read", .codec = "packed-12"};
  plan.deliverable.frame_lines.front().aspect = 2;
  plan.lens.set = "set";
  plan.lens.focal_mm = 25;
  plan.lens.focus_m = 5;
  plan.store.container = "none";
  plan.store.card = "card";
  plan.store.link = "link";
  plan.store.drive = "drive";
  plan.store.tape = "tape";
  plan.store.checksum = "sum";
  return plan;
}

Report evaluated(const Plan& plan) {
  Report report = evaluate(plan, small_library());
  for (const Problem& problem : report.problems) MESSAGE(to_line(problem));
  REQUIRE(report.problems.empty());
  return report;
}

const Note* find_note(const Report& report, Topic topic) {
  for (const Note& note : report.notes) {
    if (note.topic == topic) return &note;
  }
  return nullptr;
}

TEST_CASE("One plan from the mode to the card, worked out by hand") {
  const Report report = evaluated(small_plan());
  // Mode 20 x 15 mm at 25 mm: tangents 0.4 and 0.3 of the half angles, diagonal 0.5.
  CHECK(report.headline.horizontal_fov_deg == doctest::Approx(43.6028189727).epsilon(1e-10));
  CHECK(report.headline.vertical_fov_deg == doctest::Approx(33.3984884677).epsilon(1e-10));
  CHECK(report.headline.diagonal_fov_deg == doctest::Approx(53.1301023542).epsilon(1e-10));
  CHECK(report.mode.diagonal_mm == 25);
  CHECK(report.mode.pitch_um == doctest::Approx(5).epsilon(1e-14));
  CHECK(report.mode.desqueezed_aspect == doctest::Approx(4.0 / 3).epsilon(1e-14));
  // 2:1 is 4000 x 2000: 8 million, under 3840 x 2160; the mode's 12 million would have been enough.
  CHECK(report.headline.mode_megapixels == 12);
  CHECK(report.headline.frame_megapixels == 8);
  CHECK_FALSE(report.resolve.mandate.met);
  CHECK(find_note(report, Topic::resolve_mode_only) != nullptr);
  // 20 x 10 mm asks for 22.36 mm of the 24 mm circle; the whole mode for 25.
  CHECK(report.cover.frame.covered);
  CHECK(report.cover.frame.margin_mm ==
        doctest::Approx((24 - std::sqrt(500.0)) / 2).epsilon(1e-12));
  CHECK_FALSE(report.cover.mode.covered);
  CHECK(find_note(report, Topic::cover_mode)->severity == Severity::caution);
  // 5 m is 200 focal lengths: 20 mm show 4 m.
  CHECK_FALSE(report.see.close_range);
  CHECK(report.see.width_at_focus_m == doctest::Approx(4).epsilon(1e-12));
  CHECK(report.see.height_at_focus_m == doctest::Approx(2).epsilon(1e-12));
  // 12 million photosites at 12 bits are 18 000 000 bytes; 24 of them and two channels of sound are
  // 432 288 000 a second, 3458.304 Mbit/s.
  CHECK(report.store.bytes_per_frame == ByteRange{18'000'000, 18'000'000});
  CHECK(report.headline.data_rate_megabits_per_s == Span{3458.304, 3458.304});
  // 512 000 000 000 * 24 / 432 288 000 is 28 425.3: 28 425 frames, 1184 s and 9 frames.
  CHECK(report.store.frames_per_card == ByteRange{28'425, 28'425});
  CHECK(report.headline.minutes_per_card.least == doctest::Approx(28'425.0 / 1440).epsilon(1e-12));
  CHECK(report.run.screen_minutes_per_card == report.headline.minutes_per_card);
  CHECK(report.run.card_timecode == "00:19:44:09");
  CHECK(report.run.card_timecode_drop == "");
  CHECK(report.store.write_headroom.least == doctest::Approx(1e9 / 432'288'000).epsilon(1e-12));
  CHECK_FALSE(report.store.card_guaranteed);
  CHECK(find_note(report, Topic::store_card_claim) != nullptr);
  // 180 degrees at 24 under 50 Hz.
  CHECK(report.run.exposure_s == Rational(1, 48));
  CHECK_FALSE(report.run.flicker.safe);
  CHECK(report.run.rate_limited_by ==
        RateLimit::card);  // 1 GB/s over 18 MB, 55.6, under the mode's 60
  CHECK(report.run.rate_ceiling == Rational(500, 9));
}

TEST_CASE("Slow motion fills the card with more frames and plays longer") {
  Plan plan = small_plan();
  plan.run.project_rate = Rational(30000, 1001);
  plan.run.sensor_rate = 48;
  const Report report = evaluated(plan);
  // No sound off speed: 512 000 000 000 / 18 000 000 = 28 444.4 frames, whatever the rate.
  CHECK(report.store.frames_per_card.least == 28'444);
  CHECK(report.store.audio_bytes_per_s == 0);
  CHECK(report.headline.minutes_per_card.least ==
        doctest::Approx(28'444.0 / 48 / 60).epsilon(1e-12));
  CHECK(report.run.screen_minutes_per_card.least ==
        doctest::Approx(28'444.0 * 1001 / 30000 / 60).epsilon(1e-12));
  CHECK(report.run.speed_factor == doctest::Approx(48.0 * 1001 / 30000).epsilon(1e-12));
  // 28 444 frames counted at 30: 948 s and 4 frames. Dropping leaves out 2 numbers at minutes 1 to
  // 9 and 11 to 15: 28 number more, 28 472: 949 s and 2 frames.
  CHECK(report.run.card_timecode == "00:15:48:04");
  CHECK(report.run.card_timecode_drop == "00:15:49;02");
  CHECK(find_note(report, Topic::run_audio_dropped) != nullptr);
}

TEST_CASE("A squeeze taken out in camera") {
  Plan plan = small_plan();
  plan.lens.squeeze = 2;
  plan.format.recording = "desqueezed";
  plan.deliverable.frame_lines.front().aspect = Rational(8, 3);
  const Report report = evaluated(plan);
  CHECK(report.mode.squeeze == 2);
  CHECK(report.headline.horizontal_fov_deg == doctest::Approx(77.3196165081).epsilon(1e-10));
  CHECK(report.frames.front().photosites.width == Rational(4000));
  CHECK(report.frames.front().photosites.height == Rational(3000));
  CHECK(report.frames.front().pixels.width == 3840);
  CHECK(report.resolve.recorded_squeeze == 1);
  CHECK(find_note(report, Topic::resolve_squeeze_left) == nullptr);
  CHECK(find_note(report, Topic::resolve_raster_shape) == nullptr);
  CHECK(report.run.rate_limited_by == RateLimit::recording);
  CHECK(report.store.bytes_per_frame.least == 3840 * 1440 * 12 / 8);
  // The same option behind a spherical lens ruins the picture, and says so.
  plan.lens.squeeze.reset();
  const Report wrong = evaluated(plan);
  CHECK(find_note(wrong, Topic::resolve_squeeze_mismatch)->severity == Severity::fail);
}

TEST_CASE("A codec that is a range makes ranges that hold the value between") {
  Plan plan = small_plan();
  const Report packed = evaluated(plan);
  plan.format.codec = "lossless-12";
  const Report range = evaluated(plan);
  const auto holds = [](Span span, Span value) {
    CHECK(span.least <= value.least);
    CHECK(span.most >= value.most);
    CHECK(span.least < span.most);
  };
  holds(range.headline.minutes_per_card, packed.headline.minutes_per_card);
  holds(range.headline.data_rate_megabits_per_s, packed.headline.data_rate_megabits_per_s);
  holds(range.store.write_headroom, packed.store.write_headroom);
  holds(range.run.screen_minutes_per_card, packed.run.screen_minutes_per_card);
  CHECK(range.run.card_timecode == packed.run.card_timecode);  // worst ratio 1: the fewest frames
  CHECK(find_note(range, Topic::store_codec_range) != nullptr);
}

TEST_CASE("A constant bit rate is not limited by the card's speed for a frame") {
  Plan plan = small_plan();
  plan.format.codec = "constant";
  const Report report = evaluated(plan);
  CHECK(report.run.rate_limited_by == RateLimit::mode);
  CHECK(report.run.rate_ceiling == Rational(60));
}

TEST_CASE("A card too slow for the format fails and names both figures") {
  Plan plan = small_plan();
  plan.store.card = "slow";
  const Report report = evaluated(plan);
  const Note* note = find_note(report, Topic::store_write_headroom);
  CHECK(note->severity == Severity::fail);
  CHECK(note->have == doctest::Approx(400'000'000.0 / 432'288'000).epsilon(1e-12));
  CHECK(note->need == 1);
  CHECK(report.run.rate_ceiling == Rational(200, 9));
  CHECK_FALSE(report.run.rate_allowed);
  CHECK(report.store.card_guaranteed);
}

TEST_CASE("Several frame lines from one plan") {
  Plan plan = small_plan();
  FrameLine vertical;
  vertical.name = "Vertical";
  vertical.aspect = Rational(9, 16);
  vertical.anchor.kind = AnchorKind::common_top;
  plan.deliverable.frame_lines.push_back(vertical);
  const Report report = evaluated(plan);
  REQUIRE(report.frames.size() == 2);
  CHECK(report.frames[1].name == "Vertical");
  CHECK(report.frames[1].anchor_limited);  // 3000 high, it cannot start at 500
  CHECK(find_note(report, Topic::anchor_limited) != nullptr);
  // Everything but its own figures follows the main frame line.
  Plan alone = small_plan();
  CHECK(evaluated(alone).cover.frame.diagonal_mm == report.cover.frame.diagonal_mm);
  CHECK(evaluated(alone).resolve.mandate.have == report.resolve.mandate.have);
}

TEST_CASE("An invalid plan gives its problems and nothing else") {
  struct Row {
    void (*spoil)(Plan&);
    std::string_view pointer;
  };
  for (const Row& row : std::to_array<Row>({
           {[](Plan& p) { p.lens.focal_mm = -1; }, "/lens/focal_mm"},
           {[](Plan& p) { p.lens.focal_mm = std::nan(""); }, "/lens/focal_mm"},
           {[](Plan& p) { p.lens.focus_m = 0.02; }, "/lens/focus_m"},
           {[](Plan& p) { p.lens.focus_m = HUGE_VAL; }, "/lens/focus_m"},
           {[](Plan& p) { p.run.sensor_rate = Rational(0, 0); }, "/run/sensor_rate"},
           {[](Plan& p) { p.run.sensor_rate = 0; }, "/run/sensor_rate"},
           {[](Plan& p) { p.run.shutter_angle_deg = 361; }, "/run/shutter_angle_deg"},
           {[](Plan& p) {
              p.run.shutter_kind = ShutterKind::time;
              p.run.shutter_time_s = Rational(1, 23);
            },
            "/run/shutter_time_s"},
           {[](Plan& p) { p.deliverable.frame_lines.clear(); }, "/deliverable/frame_lines"},
           {[](Plan& p) { p.deliverable.frame_lines.front().aspect = 0; },
            "/deliverable/frame_lines/0/aspect"},
           {[](Plan& p) { p.deliverable.frame_lines.front().protection = 1; },
            "/deliverable/frame_lines/0/protection"},
           {[](Plan& p) { p.format.mode = "no-such"; }, "/format/mode"},
           {[](Plan& p) { p.store.card = "no-such"; }, "/store/card"},
       })) {
    Plan plan = small_plan();
    row.spoil(plan);
    CAPTURE(row.pointer);
    const Report report = evaluate(plan, small_library());
    REQUIRE(report.problems.size() == 1);
    CHECK(report.problems.front().pointer == row.pointer);
    CHECK(report.frames.empty());
    CHECK(report.notes.empty());
    CHECK(report.headline.mode_megapixels == 0);
    CHECK(report.store.frames_per_card == ByteRange{});
    CHECK(report_to_json(report).starts_with("{\n  \"problems\""));
  }
}

const Catalogue& built_in() {
  static const Catalogue catalogue = built_in_catalogue().value();
  return catalogue;
}

TEST_CASE("The new plan is sound and the same whenever it is evaluated") {
  const Report report = evaluate(Plan{}, built_in());
  REQUIRE(report.problems.empty());
  CHECK(report_to_json(report) == report_to_json(evaluate(Plan{}, built_in())));
}

/// Complains about any number that is not one.
class Inspector final : public ReportVisitor {
 public:
  void begin_object(std::string_view) override {}
  void end_object() override {}
  void begin_list(std::string_view) override {}
  void end_list() override {}
  void number(std::string_view key, double value) override { require(key, std::isfinite(value)); }
  void whole(std::string_view, std::int64_t) override {}
  void span(std::string_view key, Span value) override {
    require(key, std::isfinite(value.least) && std::isfinite(value.most));
    require(key, value.least <= value.most);
  }
  void counts(std::string_view key, ByteRange value) override {
    require(key, value.least >= 0 && value.least <= value.most);
  }
  void fraction(std::string_view key, Rational value) override { require(key, value.ok()); }
  void flag(std::string_view, bool) override {}
  void text(std::string_view, std::string_view) override {}
  void nothing(std::string_view) override {}

 private:
  static void require(std::string_view key, bool holds) {
    CAPTURE(key);
    REQUIRE(holds);
  }
};

TEST_CASE(
    "Every number of every plan's report is finite, every fraction whole, every range in order") {
  const std::uint64_t seed = 20261120;
  CAPTURE(seed);
  Dice dice(seed);
  int sound = 0;
  for (int round = 0; round < 1500; ++round) {
    CAPTURE(round);
    const Plan plan = testing::random_plan(dice, built_in());
    const Report report = evaluate(plan, built_in());
    if (!report.problems.empty()) {
      // Each value is accepted, but their product is past counting, or the card below one frame.
      REQUIRE(report.problems.size() == 1);
      const std::string& pointer = report.problems.front().pointer;
      REQUIRE((pointer == "/shooting" || pointer == "/store/card"));
      continue;
    }
    ++sound;
    Inspector inspector;
    visit_report(report, inspector);
    for (const Note& note : report.notes) REQUIRE(note_text(note).ends_with('.'));
    REQUIRE(report.see.depth.near_m <= plan.lens.focus_m * (1 + 1e-12));
    REQUIRE(report.see.depth.far_m.value_or(1e300) >= plan.lens.focus_m * (1 - 1e-12));
  }
  CHECK(sound > 1400);
}

TEST_CASE("Twice the rate fills a card in half the time") {
  const std::uint64_t seed = 20261121;
  CAPTURE(seed);
  Dice dice(seed);
  int compared = 0;
  for (int round = 0; round < 600; ++round) {
    Plan plan = testing::random_plan(dice, built_in());
    plan.run.audio_channels = 0;
    plan.run.shutter_kind = ShutterKind::angle;
    Plan fast = plan;
    fast.run.sensor_rate = plan.run.sensor_rate * Rational(2);
    const Report once = evaluate(plan, built_in());
    const Report twice = evaluate(fast, built_in());
    if (!once.problems.empty() || !twice.problems.empty()) continue;
    if (once.store.bytes_per_frame != twice.store.bytes_per_frame)
      continue;  // rate decides the size
    ++compared;
    REQUIRE(once.store.frames_per_card == twice.store.frames_per_card);
    REQUIRE(twice.store.minutes_per_card.least * 2 ==
            doctest::Approx(once.store.minutes_per_card.least).epsilon(1e-12));
    REQUIRE(twice.run.exposure_change_stops + 1 ==
            doctest::Approx(once.run.exposure_change_stops).epsilon(1e-9).scale(1));
    REQUIRE(twice.run.speed_factor == doctest::Approx(2 * once.run.speed_factor).epsilon(1e-12));
  }
  CHECK(compared > 200);
}

TEST_CASE("More protection never needs more circle nor holds more photosites") {
  Plan plan = small_plan();
  double last_diagonal = 1e300;
  double last_photosites = 1e300;
  for (std::int64_t percent = 0; percent < 50; ++percent) {
    plan.deliverable.frame_lines.front().protection = Rational(percent, 100);
    const Report report = evaluated(plan);
    REQUIRE(report.cover.frame.diagonal_mm < last_diagonal);
    REQUIRE(report.resolve.frame_photosites < last_photosites);
    REQUIRE(report.cover.protected_area.diagonal_mm == doctest::Approx(std::sqrt(500.0)));
    last_diagonal = report.cover.frame.diagonal_mm;
    last_photosites = report.resolve.frame_photosites;
  }
}

}  // namespace
}  // namespace widegate
