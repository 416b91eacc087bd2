// Two reports side by side, against numbers worked by hand.
#include "core/report/differences.h"

#include <doctest/doctest.h>

#include "core/catalogue/catalogue_json.h"
#include "core/report/evaluate.h"

using namespace widegate;

namespace {

Report report_of(const Plan& plan) {
  const auto library = built_in_catalogue();
  REQUIRE(library.has_value());
  return evaluate(plan, *library);
}

const Difference& row(const std::vector<Difference>& rows, std::string_view key) {
  for (const Difference& each : rows) {
    if (each.key == key) return each;
  }
  FAIL("no such row");
  return rows.front();
}

}  // namespace

TEST_CASE("compare: a plan against itself is the same in everything") {
  const Report report = report_of(Plan{});
  const auto rows = differences(report, report);
  REQUIRE(rows.size() == 10);
  for (const Difference& each : rows) {
    CHECK(each.change == "the same");
    CHECK(each.first == each.second);
    CHECK_FALSE(each.label.empty());
  }
}

TEST_CASE("compare: twice the rate, half the minutes") {
  Plan fast;
  fast.run.sensor_rate = 48;
  fast.run.audio_channels = 0;
  Plan plan;
  plan.run.audio_channels = 0;
  const auto rows = differences(report_of(plan), report_of(fast));
  CHECK(row(rows, "headline.minutes_per_card").change == "−50 %");
  CHECK(row(rows, "headline.data_rate_megabits_per_s").change == "+100 %");
  CHECK(row(rows, "mode.width_mm").change == "the same");
  CHECK(row(rows, "mode.width_mm").first == "26.96");
}

TEST_CASE("compare: nothing when a plan cannot be worked out") {
  Plan broken;
  broken.format.mode = "no-such-mode";
  CHECK(differences(report_of(Plan{}), report_of(broken)).empty());
  CHECK(differences(report_of(broken), report_of(Plan{})).empty());
}

TEST_CASE("compare: the focal length with the same view follows the widths of the modes") {
  Plan plan;
  const Report alder = report_of(plan);
  plan.format.camera = "birch";
  const Report birch = report_of(plan);
  const auto rows = differences(alder, birch);
  // 35 mm · (6240 · 5.8 µm) / (4992 · 5.4 µm), by hand.
  CHECK(row(rows, "see.focal_mm").first == "35");
  CHECK(row(rows, "see.focal_mm").second == "47");
  CHECK(rows[4].key == "see.focal_mm");
}
