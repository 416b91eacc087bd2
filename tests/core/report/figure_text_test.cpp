// Figures for people: every key is one of the report's, words and rounding of a known plan.
#include "core/report/figure_text.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <set>

#include "core/catalogue/catalogue_json.h"
#include "core/report/evaluate.h"
#include "core/report/report_fields.h"
#include "core/report/verdict.h"

using namespace widegate;

namespace {

/// Every path of a report.
class Paths : public ReportVisitor {
 public:
  std::set<std::string> all;

  void begin_object(std::string_view key) override { enter(key); }
  void end_object() override { stack_.pop_back(); }
  void begin_list(std::string_view key) override {
    add(key);
    enter(key);
  }
  void end_list() override { stack_.pop_back(); }
  void number(std::string_view key, double) override { add(key); }
  void whole(std::string_view key, std::int64_t) override { add(key); }
  void span(std::string_view key, Span) override { add(key); }
  void counts(std::string_view key, ByteRange) override { add(key); }
  void fraction(std::string_view key, Rational) override { add(key); }
  void flag(std::string_view key, bool) override { add(key); }
  void text(std::string_view key, std::string_view) override { add(key); }
  void nothing(std::string_view key) override { add(key); }

 private:
  [[nodiscard]] std::string path(std::string_view key) const {
    return stack_.empty() ? std::string(key) : stack_.back() + "." + std::string(key);
  }
  void add(std::string_view key) { all.insert(path(key)); }
  void enter(std::string_view key) { stack_.push_back(path(key)); }
  std::vector<std::string> stack_;
};

Catalogue library() {
  auto catalogue = built_in_catalogue();
  REQUIRE(catalogue.has_value());
  return *std::move(catalogue);
}

std::string text_of(const std::vector<Reading>& rows, std::string_view key) {
  for (const Reading& row : rows) {
    if (row.key == key) return row.text + (row.unit.empty() ? "" : " ") + std::string(row.unit);
  }
  return "(no such figure)";
}

constexpr auto kQuestions =
    std::to_array<Question>({Question::frame, Question::cover, Question::see, Question::resolve,
                             Question::run, Question::store, Question::choose});

}  // namespace

TEST_CASE("every figure has a key of the report, a label and a text") {
  const Catalogue catalogue = library();
  Plan plan;
  plan.lens.set = "wye";
  plan.lens.focal_mm = 50;
  plan.lens.wanted_width_m = 4;
  plan.lens.wanted_height_m = 3;
  plan.mandate.photosites_across = 3840;
  const Report report = evaluate(plan, catalogue);
  REQUIRE(report.problems.empty());
  Paths paths;
  visit_report(report, paths);
  const auto rows = readings(plan, report);
  CHECK(rows.size() > 70);
  for (const Reading& row : rows) {
    CAPTURE(row.key);
    CHECK(paths.all.count(std::string(row.key)) == 1);
    CHECK_FALSE(row.label.empty());
    CHECK_FALSE(row.text.empty());
  }
  for (const Reading& row : headline_readings(report)) {
    CHECK(paths.all.count(std::string(row.key)) == 1);
  }
}

TEST_CASE("figures of a plan whose numbers are whole") {
  const Plan plan;
  const Report report = evaluate(plan, library());
  REQUIRE(report.problems.empty());
  const auto rows = readings(plan, report);
  CHECK(text_of(rows, "mode.width_photosites") == "4992 × 3744");
  CHECK(text_of(rows, "resolve.mandate.required") == "8 294 400 photosites");
  CHECK(text_of(rows, "run.exposure_s_exact") == "1/48 s");
  CHECK(text_of(rows, "headline.mode_megapixels") == "18.69 MP");
  CHECK(text_of(rows, "run.speed_factor") == "1 ×");
}

TEST_CASE("bytes carry a decimal prefix and about three digits") {
  const auto scaled = [](double least, double most) {
    const ScaledBytes result = scaled_bytes({least, most});
    return result.text + " " + std::string(result.unit);
  };
  CHECK(scaled(0, 0) == "0 B");
  CHECK(scaled(999, 999) == "999 B");
  CHECK(scaled(1e3, 1e3) == "1 kB");
  CHECK(scaled(512e9, 512e9) == "512 GB");
  CHECK(scaled(1.2345e12, 1.2345e12) == "1.23 TB");
  CHECK(scaled(40.4e9, 40.4e9) == "40.4 GB");
  CHECK(scaled(0.9e12, 1.5e12) == "0.9–1.5 TB");
  CHECK(scaled(2e15, 2e15) == "2 PB");
}

TEST_CASE("short numbers drop what says nothing") {
  CHECK(short_number(2.50, 3) == "2.5");
  CHECK(short_number(24, 3) == "24");
  CHECK(short_number(24000.0 / 1001, 3) == "23.976");
  CHECK(short_number(-0.0004, 2) == "0");
  CHECK(short_number(100, 0) == "100");
}

TEST_CASE("a plan that cannot be worked out has verdicts and no figures") {
  Plan plan;
  plan.lens.focal_mm = -1;
  const Report report = evaluate(plan, library());
  REQUIRE_FALSE(report.problems.empty());
  CHECK(readings(plan, report).empty());
  CHECK(headline_readings(report).empty());
  for (const Question question : kQuestions) {
    CHECK(verdict(plan, report, question).severity == Severity::fail);
    CHECK_FALSE(verdict(plan, report, question).text.empty());
  }
}

TEST_CASE("a verdict fails exactly when a note of its question fails") {
  const Catalogue catalogue = library();
  for (const Camera& camera : catalogue.cameras) {
    for (const SensorMode& mode : camera.modes) {
      for (const LensSet& set : catalogue.lens_sets) {
        Plan plan;
        plan.format = {camera.id, mode.id, mode.recordings.front().id,
                       mode.recordings.front().codecs.front()};
        plan.lens.set = set.id;
        plan.lens.focal_mm = set.lenses.front().focal_mm;
        const Report report = evaluate(plan, catalogue);
        if (!report.problems.empty()) continue;
        CAPTURE(camera.id);
        CAPTURE(mode.id);
        CAPTURE(set.id);
        for (const Question question : kQuestions) {
          const Verdict words = verdict(plan, report, question);
          CHECK_FALSE(words.text.empty());
          if (question == Question::choose) continue;
          CHECK((words.severity == Severity::fail) ==
                (worst_severity(report.notes, question) == Severity::fail));
        }
      }
    }
  }
}

TEST_CASE("verdicts say by how much") {
  const Catalogue catalogue = library();
  Plan plan;
  plan.lens.image_circle_mm = 20;
  Report report = evaluate(plan, catalogue);
  // The frame line 26.9568 x 11.279 mm has a diagonal of 29.22 mm: (29.22 - 20) / 2 = 4.6.
  CHECK(verdict(plan, report, Question::cover).text ==
        "Misses the frame line by 4.6 mm at the corner");
  plan = Plan{};
  plan.run.sensor_rate = 25;
  plan.run.project_rate = 25;
  report = evaluate(plan, catalogue);
  // 1/50 s is a whole number of the 100 pulses a second of 50 Hz mains.
  CHECK(verdict(plan, report, Question::run).severity == Severity::ok);
  CHECK(verdict(plan, report, Question::run).text == "25 frames/s at 1/50 s, no flicker under 50 Hz lights");
}

TEST_CASE("the headline is what the main frame line sees") {
  Plan plan;
  plan.deliverable.frame_lines.front().aspect = 1;
  const Report report = evaluate(plan, library());
  CHECK(std::string(headline_readings(report).front().label) == "Field of view");
  CHECK(report.headline.horizontal_fov_deg == report.see.frame_horizontal_fov_deg);
  CHECK(report.headline.horizontal_fov_deg < report.see.horizontal_fov_deg);
}
