// Links: every plan comes back from its link value for value, one link for a plan; nothing else is
// taken for a link.
#include "core/handover/link/link.h"

#include <doctest/doctest.h>

#include <string>

#include "core/catalogue/catalogue_json.h"
#include "core/encode/qr.h"
#include "core/plan/plan_check.h"
#include "core/plan/plan_json.h"
#include "tests/core/support/random_plans.h"
#include "tests/core/support/rounds.h"

namespace {

using namespace widegate;
using widegate::fdl::Dice;

const Catalogue& library() {
  static const Catalogue kLibrary = built_in_catalogue().value();
  return kLibrary;
}

std::string refusal(std::string_view link) {
  const auto plan = plan_from_link(link, library());
  return plan ? "" : plan.error().front().accepted;
}

}  // namespace

TEST_CASE("a new plan's link is tiny, a typical one short") {
  CHECK(plan_to_link(Plan{}).size() < 20);
  Plan plan;
  plan.title = "The Salt Ferry, unit A, night exteriors";
  plan.format = {"cedar", "wide-16x9", "resample-4096", "vc-3-1271"};
  plan.lens = LensChoice{};
  plan.lens.set = "trent";
  plan.lens.focal_mm = 45;
  plan.lens.f_number = 4;
  plan.lens.focus_m = 7.5;
  plan.run.sensor_rate = plan.run.project_rate = Rational(24000, 1001);
  plan.run.shutter_angle_deg = Rational(864, 5);
  plan.deliverable.frame_lines = {FrameLine{}, FrameLine{}, FrameLine{}};
  plan.deliverable.frame_lines[1].name = "Broadcast";
  plan.deliverable.frame_lines[1].aspect = Rational(16, 9);
  plan.deliverable.frame_lines[2].name = "Upright";
  plan.deliverable.frame_lines[2].aspect = Rational(9, 16);
  plan.store.card = "rowan-2";
  plan.store.tape = "lto-9";
  plan.shooting.recorded_hours_per_day = 3.5;
  MESSAGE("typical link: " << plan_to_link(plan).size() << " characters");
  CHECK(plan_to_link(plan).size() <= 300);
}

TEST_CASE("a plan with any one camera of the library carried along fits one QR code") {
  for (const Camera& camera : library().cameras) {
    Plan plan;
    plan.own.cameras = {camera};
    plan.own.cameras.front().id = "own-" + camera.id;
    CAPTURE(camera.id);
    const std::string link = plan_to_link(plan);
    CHECK(link.size() <= 1800);
    CHECK(make_qr("https://host.example/widegate/#" + link).has_value());
  }
}

TEST_CASE("a plan too long for a link is told by how much, and no link of it is handed out") {
  Plan plan;
  plan.own.codecs.assign(40, library().codecs.front());
  Dice dice(11);
  for (std::size_t i = 0; i < plan.own.codecs.size(); ++i) {
    plan.own.codecs[i].id = "own-" + std::to_string(i);
    std::string& source = plan.own.codecs[i].source;
    for (source.clear(); source.size() < 600;) {
      source += static_cast<char>(dice.whole('!', 'z'));
    }
  }
  CHECK_FALSE(plan_from_link(plan_to_link(plan), library()).has_value());
  const auto link = plan_to_opening_link(plan);
  REQUIRE_FALSE(link.has_value());
  CHECK(link.error().front().value.find(" characters") != std::string::npos);
  CHECK(link.error().front().accepted ==
        "at most 16384 characters in a link: hand this plan over as a file");
  plan.own.codecs.resize(3);
  REQUIRE(plan_to_opening_link(plan).has_value());
  CHECK(*plan_to_opening_link(plan) == plan_to_link(plan));
  plan.own.codecs.assign(200, library().codecs.front());
  for (std::size_t i = 0; i < plan.own.codecs.size(); ++i) {
    plan.own.codecs[i].source = std::to_string(i) + std::string(600, 'a');
  }
  REQUIRE_FALSE(plan_to_opening_link(plan).has_value());
  CHECK(plan_to_opening_link(plan).error().front().value.find(" bytes") != std::string::npos);
}

TEST_CASE("random plans come back from their links") {
  constexpr std::uint64_t kSeed = 20261125;
  Dice dice(kSeed);
  const int count = testing::rounds(2'500, 300);
  for (int i = 0; i < count; ++i) {
    CAPTURE(kSeed);
    CAPTURE(i);
    const Plan plan = testing::random_plan(dice, library());
    const Problems problems = check_plan(plan, library());
    REQUIRE_MESSAGE(problems.empty(), to_line(problems.front()));
    const std::string link = plan_to_link(plan);
    CHECK(link.find_first_not_of(
              "0123456789.-_abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ") ==
          std::string::npos);
    const auto back = plan_from_link(link, library());
    REQUIRE_MESSAGE(back.has_value(), to_line(back.error().front()));
    CHECK(*back == plan);
    CHECK(plan_to_link(*back) == link);
  }
}

TEST_CASE("a link may come with its whole address") {
  const std::string link = plan_to_link(Plan{});
  CHECK(plan_from_link("#" + link, library()).has_value());
  CHECK(plan_from_link("https://host.example/a/b/index.html#" + link, library()).has_value());
}

TEST_CASE("what is not a link is refused with what is wrong") {
  const std::string link = plan_to_link(Plan{});
  CHECK(refusal("").find("a link made by Widegate") == 0);
  CHECK(refusal("hello").find("a link made by Widegate") == 0);
  CHECK(refusal("2." + link.substr(2)).find("a link of version 1") == 0);
  CHECK(refusal("1.").find("the whole link") == 0);
  CHECK(refusal("1.!!!!").find("the whole link") == 0);
  CHECK(refusal(std::string(kMaxLinkLength + 1, '1')).find("a link of at most") == 0);
}

TEST_CASE("every cut and every changed character of a link is noticed") {
  Plan plan;
  plan.title = "Cut";
  plan.lens.focal_mm = 52.5;
  const std::string link = plan_to_link(plan);
  for (std::size_t length = 0; length < link.size(); ++length) {
    CHECK_FALSE(plan_from_link(link.substr(0, length), library()).has_value());
  }
  for (std::size_t at = 0; at < link.size(); ++at) {
    for (const char c : {'A', 'z', '9', '-'}) {
      std::string changed = link;
      if (changed[at] == c) continue;
      changed[at] = c;
      CHECK_FALSE(plan_from_link(changed, library()).has_value());
    }
  }
}

TEST_CASE("a link to things this library lacks is refused by what is missing") {
  Plan plan;
  plan.format.camera = "elm";
  const auto back = plan_from_link(plan_to_link(plan), library());
  REQUIRE_FALSE(back.has_value());
  CHECK(back.error().front().pointer == "/format/camera");
}

namespace {

/// Links made once, with the plan they hold. They must open for ever: never change a row.
struct GoldenLink {
  const char* link;
  const char* plan;  ///< What differs from a new plan, as JSON.
};
const GoldenLink kGoldenLinks[] = {
#include "tests/data/golden_links.inc"
};

}  // namespace

TEST_CASE("old links open for ever") {
  CHECK(std::size(kGoldenLinks) >= 5);
  for (const GoldenLink& golden : kGoldenLinks) {
    CAPTURE(golden.link);
    const auto expected = plan_from_json(golden.plan, library());
    REQUIRE_MESSAGE(expected.has_value(), to_line(expected.error().front()));
    const auto opened = plan_from_link(golden.link, library());
    REQUIRE_MESSAGE(opened.has_value(), to_line(opened.error().front()));
    CHECK(*opened == *expected);
  }
}
