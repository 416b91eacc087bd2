// The judgement: shares worked out beforehand by another program, and the laws that advice keeps.
#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <span>
#include <string>
#include <string_view>

#include "core/catalogue/catalogue_json.h"
#include "core/choose/ranking.h"
#include "core/plan/plan_fields.h"
#include "core/report/evaluate.h"
#include "core/report/notes.h"
#include "tests/core/support/random_plans.h"
#include "tests/core/support/rounds.h"

namespace widegate {
namespace {

using testing::Dice;

const Catalogue& library() {
  static const Catalogue kLibrary = built_in_catalogue().value();
  return kLibrary;
}

/// UHD 16:9 at 24 with a 35 mm lens.
Plan serial_plan() {
  Plan plan;
  plan.deliverable.frame_lines.front().aspect = Rational(16, 9);
  plan.store.card = "rowan-2";
  return plan;
}

/// 4096 x 1716 with 2x lenses.
Plan squeezed_plan() {
  Plan plan;
  plan.deliverable.width_pixels = 4096;
  plan.deliverable.height_pixels = 1716;
  plan.lens.set = "wye";
  plan.lens.focal_mm = 50;
  plan.format = {"alder", "squeeze-2-239", "as-read", "bayer-12-3-1"};
  plan.store.card = "rowan-2";
  return plan;
}

std::string id_of(const FormatChoice& format) {
  return format.camera + "/" + format.mode + "/" + format.recording + "/" + format.codec;
}

const RankedFormat* row_of(const Ranking& ranking, std::string_view id) {
  for (const RankedFormat& row : ranking.formats) {
    if (id_of(row.format) == id) return &row;
  }
  return nullptr;
}

TEST_CASE("shares and scores as they were worked out when the rules were tried") {
  struct Row {
    bool squeezed;
    std::string_view id;
    double area_mm2, served;
    Shares shares;
    double score;
  };
  const Row rows[] = {
      {false,
       "alder/wide-16x9/as-read/bayer-12-3-1",
       408.75,
       0.8450,
       {0.5052, 0.6893, 0.9536, 1, 1},
       0.7939},
      {false,
       "alder/wide-16x9/resample-3840/vc-3-1270",
       408.75,
       0.8450,
       {0.5052, 0.6893, 0.9435, 1, 1},
       0.7909},
      {false,
       "alder/wide-16x9/as-read/bayer-12-lossless",
       408.75,
       0.8450,
       {0.5052, 0.6893, 0.9688, 1, 0.8051},
       0.7789},
      {false,
       "alder/wide-16x9/resample-3840/vc-3-1271",
       408.75,
       0.8450,
       {0.5052, 0.6893, 0.7293, 1, 1},
       0.7266},
      {false,
       "alder/centre-3840/as-read/bayer-12-8-1",
       241.86,
       0.5,
       {0.3790, 0.5, 0.7555, 1, 1},
       0.6525},
      {false,
       "alder/wide-16x9/resample-3840/vc-3-1274",
       408.75,
       0.8450,
       {0.5052, 0.6893, 0, 1, 1},
       0.5078},
      {true,
       "alder/squeeze-2-239/as-read/bayer-12-3-1",
       488,
       1.1920,
       {0.5478, 0.8134, 0.9536, 1, 0.9487},
       0.8345},
  };
  const Ranking serial = rank(serial_plan(), library());
  const Ranking squeezed = rank(squeezed_plan(), library());
  for (const Row& row : rows) {
    CAPTURE(row.id);
    const RankedFormat* found = row_of(row.squeezed ? squeezed : serial, row.id);
    REQUIRE(found != nullptr);
    CHECK(found->accepted);
    CHECK(found->picture.area_mm2 == doctest::Approx(row.area_mm2).epsilon(2e-5));
    CHECK(found->picture.served == doctest::Approx(row.served).epsilon(1e-4));
    for (std::size_t i = 0; i < kCriterionCount; ++i) {
      CHECK(std::abs(found->shares[i] - row.shares[i]) < 1.1e-4);
    }
    CHECK(std::abs(found->score - row.score) < 1.1e-4);
  }
  CHECK(id_of(serial.formats[0].format) == rows[0].id);
  CHECK(id_of(serial.formats[1].format) == rows[1].id);
  CHECK(id_of(squeezed.formats[0].format) == rows[6].id);
  const Cautions proxy = row_of(serial, rows[5].id)->figures.cautions;
  CHECK(proxy.has(Caution::few_bits));
  CHECK(proxy.has(Caution::much_compressed));
}

CodecFacts facts(std::int64_t depth, Chroma chroma, bool lossless) {
  CodecFacts made;
  made.bit_depth = depth;
  made.chroma = chroma;
  made.lossless = lossless;
  return made;
}

TEST_CASE(
    "fidelity rises with depth, chroma and stored bits; lossless is as good as uncompressed") {
  for (const Chroma chroma : {Chroma::c420, Chroma::c422, Chroma::c444}) {
    for (std::int64_t depth = 8; depth < 16; ++depth) {
      CHECK(fidelity_share(facts(depth, chroma, false), 6, false) <
            fidelity_share(facts(depth + 1, chroma, false), 6, false));
    }
  }
  for (double bits = 1; bits < 16; bits += 0.5) {
    CHECK(fidelity_share(facts(10, Chroma::c422, false), bits, false) <
          fidelity_share(facts(10, Chroma::c422, false), bits + 0.5, false));
  }
  CHECK(fidelity_share(facts(10, Chroma::c420, false), 6, false) <
        fidelity_share(facts(10, Chroma::c422, false), 6, false));
  CHECK(fidelity_share(facts(10, Chroma::c422, false), 6, false) <
        fidelity_share(facts(10, Chroma::c444, false), 6, false));
  CHECK(fidelity_share(facts(12, Chroma::c444, true), 3, false) ==
        fidelity_share(facts(12, Chroma::c444, true), 36, false));
  CHECK(fidelity_share(facts(16, Chroma::c444, true), 36, true) ==
        fidelity_share(facts(10, Chroma::c444, true), 20, true));  // on film
}

TEST_CASE("no 8-bit format stands before a 10-bit one that carries no caution") {
  for (const Plan& plan : {serial_plan(), squeezed_plan()}) {
    const Ranking ranking = rank(plan, library());
    bool eight_seen = false;
    for (std::size_t i = 0; i < ranking.accepted; ++i) {
      const RankedFormat& row = ranking.formats[i];
      eight_seen = eight_seen || row.figures.cautions.has(Caution::few_bits);
      if (row.figures.cautions.none()) CHECK_FALSE(eight_seen);
    }
    CHECK(eight_seen);
  }
}

TEST_CASE("formats that are as good as the first are few, and stand together") {
  const Ranking ranking = rank(serial_plan(), library());
  std::size_t as_good = 0;
  while (ranking.formats[as_good].as_good) ++as_good;
  CHECK(as_good >= 2);
  CHECK(as_good <= 12);
  for (std::size_t i = as_good; i < ranking.formats.size(); ++i) {
    CHECK_FALSE(ranking.formats[i].as_good);
  }
}

/// How many random plans: as WIDEGATE_ROUNDS asks, and no more than 10,000.
int rounds() {
  constexpr int kMost = 10'000;
  return std::min(testing::rounds(300, 30), kMost);
}

/// What a report tells of the format itself: its pixels, cover, rates and card.
bool is_of_the_format(Topic topic, const Plan& plan) {
  constexpr Topic kOfCover[] = {Topic::cover_frame, Topic::cover_protected, Topic::cover_mode,
                                Topic::cover_marginal};
  constexpr Topic kOthers[] = {Topic::frame_push_in,         Topic::frame_room,
                               Topic::resolve_mandate,       Topic::resolve_raster,
                               Topic::resolve_raster_shape,  Topic::resolve_upscaled,
                               Topic::resolve_binned,        Topic::resolve_squeeze_mismatch,
                               Topic::resolve_other_squeeze, Topic::resolve_few_bits,
                               Topic::resolve_recording,     Topic::resolve_much_compressed,
                               Topic::run_rate_ceiling,      Topic::store_write_headroom,
                               Topic::store_minutes,         Topic::store_media,
                               Topic::store_card_claim};
  const auto is_in = [topic](std::span<const Topic> topics) {
    return std::find(topics.begin(), topics.end(), topic) != topics.end();
  };
  return is_in(kOthers) || (plan.choose.must_cover != CoverArea::none && is_in(kOfCover));
}

/// The report fails nothing of a format that is ranked, and warns of nothing that the ranking does
/// not.
void check_notes(const Plan& plan, const RankedFormat& first, const Report& report) {
  for (const Note& note : report.notes) {
    if (!is_of_the_format(note.topic, plan)) continue;
    CAPTURE(topic_key(note.topic));
    CHECK(note.severity != Severity::fail);
    if (first.figures.cautions.none()) CHECK(note.severity == Severity::ok);
  }
}

void check_first(const Plan& plan, const Ranking& ranking) {
  const RankedFormat& first = ranking.formats.front();
  CAPTURE(id_of(first.format));
  const Report report = evaluate(with_format(plan, first), library());
  REQUIRE(report.problems.empty());
  CHECK(report.commission.format_accepted);
  check_notes(plan, first, report);
  if (ranking.without_caution > 0) CHECK(first.figures.cautions.none());
  const Finding upscaling = report.commission.findings[Requirement::upscaling];
  if (upscaling.asked()) CHECK(upscaling.have <= upscaling.need * (1 + 1e-9));
  for (std::size_t i = 1; i < ranking.without_caution; ++i) {
    bool better_in_all = true;
    for (std::size_t c = 0; c < kCriterionCount; ++c) {
      better_in_all = better_in_all && ranking.formats[i].shares[c] > first.shares[c];
    }
    CHECK_FALSE(better_in_all);
  }
}

TEST_CASE("what is ranked first is never failed, beaten in everything, or upscaled too far") {
  constexpr std::uint64_t kSeed = 20261128;
  Dice dice(kSeed);
  int accepted = 0;
  const int count = rounds();
  for (int round = 0; round < count; ++round) {
    CAPTURE(round);
    const Plan plan = testing::random_plan(dice, library());
    const Ranking ranking = rank(plan, library());
    REQUIRE(ranking.problems.empty());
    if (ranking.accepted == 0) continue;
    ++accepted;
    check_first(plan, ranking);
  }
  CHECK(accepted > count / 50);
}

TEST_CASE("the plan's own format is accepted in its ranking and its report, or in neither") {
  constexpr std::uint64_t kSeed = 20261129;
  Dice dice(kSeed);
  const int count = rounds();
  for (int round = 0; round < count; ++round) {
    CAPTURE(round);
    const Plan plan = testing::random_plan(dice, library());
    const Report report = evaluate(plan, library());
    if (!report.problems.empty()) continue;
    const Ranking ranking = rank(plan, library());
    const RankedFormat* own = row_of(ranking, id_of(plan.format));
    if (own == nullptr) continue;  // its camera is not among those considered
    CHECK(own->accepted == report.commission.format_accepted);
  }
}

}  // namespace
}  // namespace widegate
