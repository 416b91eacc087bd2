// Every step of every lesson is a valid plan, and its numbers do what its words say.
#include "core/lesson/lessons.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "core/catalogue/catalogue_json.h"
#include "core/plan/plan_fields.h"
#include "core/report/evaluate.h"
#include "core/report/flat_figures.h"
#include "core/report/working.h"

namespace {

using namespace widegate;

bool moved(LessonMove move, const Span& from, const Span& to) {
  const double tolerance = 1e-9 * std::abs(from.most);
  switch (move) {
    case LessonMove::same:
      return std::abs(to.least - from.least) <= tolerance &&
             std::abs(to.most - from.most) <= tolerance;
    case LessonMove::rises:
      return to.most > from.most + tolerance && to.least >= from.least - tolerance;
    case LessonMove::falls:
      return to.least < from.least - tolerance && to.most <= from.most + tolerance;
  }
  return false;
}

Report step_report(const Lesson& lesson, std::size_t step, const Catalogue& catalogue) {
  const Checked<Plan> plan = lesson_plan(lesson, step, catalogue);
  if (!plan) {
    for (const Problem& problem : plan.error()) MESSAGE(to_line(problem));
  }
  REQUIRE(plan.has_value());
  return evaluate(*plan, catalogue);
}

/// Where a claim of the words stands; steps count from 1, as on the screen.
struct Place {
  std::string_view lesson;
  std::size_t step;
  friend bool operator==(const Place&, const Place&) = default;
  friend bool operator<(const Place& a, const Place& b) {
    return a.lesson != b.lesson ? a.lesson < b.lesson : a.step < b.step;
  }
};

/// A number the words state, or that must hold for them to be true.
struct Fact {
  Place place;
  std::string_view key;
  double value, tolerance;
};
const std::vector<Fact> kFacts = {
    {{"area-and-raster", 1}, "resolve.horizontal_resample", 1, 0},
    {{"area-and-raster", 1}, "resolve.vertical_resample", 1, 0},
    {{"area-and-raster", 1}, "mode.width_photosites", 4992, 0},
    {{"area-and-raster", 1}, "mode.height_photosites", 3744, 0},
    {{"area-and-raster", 2}, "resolve.recorded_width_pixels", 4096, 0},
    {{"area-and-raster", 3}, "mode.desqueezed_aspect", 16.0 / 9, 1e-12},
    {{"area-and-raster", 3}, "resolve.recorded_width_pixels", 4096, 0},
    {{"area-and-raster", 4}, "resolve.recorded_width_pixels", 4096, 0},
    {{"area-and-raster", 4}, "resolve.recorded_height_pixels", 2304, 0},
    {{"area-and-raster", 4}, "mode.width_photosites", 4096, 0},
    {{"area-and-raster", 4}, "mode.height_photosites", 2304, 0},
    {{"area-and-circle", 1}, "cover.mode.margin_mm", 0.752, 1e-9},
    {{"area-and-circle", 2}, "mode.width_mm", 36, 0.5},
    {{"area-and-circle", 2}, "cover.mode.margin_mm", -4.15, 0.01},
    {{"area-and-circle", 3}, "cover.mode.margin_mm", 2.27, 0.01},
    {{"area-and-circle", 4}, "cover.mode.margin_mm", 0.75, 0.01},
    {{"squeeze", 1}, "frame.aspect", 2.39, 0},
    {{"squeeze", 2}, "mode.squeeze", 2, 0},
    {{"squeeze", 2}, "frame.aspect", 2 * 1.2, 0.02},
    {{"squeeze", 2}, "frame.height_photosites", 3744, 1e-9},
    {{"squeeze", 3}, "frame.width_photosites", 4472, 1e-9},
    {{"squeeze", 3}, "mode.width_photosites", 4472, 0},
    {{"squeeze", 4}, "resolve.recorded_width_pixels", 4096, 0},
    {{"squeeze", 4}, "resolve.recorded_height_pixels", 1714, 0},
    {{"squeeze", 4}, "resolve.horizontal_resample", 0.9, 0.02},
    {{"squeeze", 4}, "resolve.vertical_resample", 0.45, 0.01},
    {{"squeeze", 4}, "resolve.recorded_squeeze", 1, 0},
    {{"mandate", 1}, "mode.width_photosites", 4992, 0},
    {{"mandate", 1}, "frame.width_photosites", 4992, 1e-9},
    {{"mandate", 1}, "resolve.deliverable_width_pixels", 3840, 0},
    {{"mandate", 1}, "resolve.nominal_scale", 0.77, 0.001},
    {{"mandate", 2}, "mode.width_photosites", 4096, 0},
    {{"mandate", 2}, "mode.height_photosites", 2304, 0},
    {{"mandate", 2}, "headline.mode_megapixels", 9.4, 0.05},
    {{"mandate", 2}, "resolve.mandate.required", 8.29e6, 5e3},
    {{"mandate", 3}, "resolve.recorded_width_pixels", 2048, 0},
    {{"mandate", 3}, "resolve.nominal_scale", 1.88, 0.005},
    {{"mandate", 4}, "frame.aspect", 2.39, 0},
    {{"mandate", 4}, "frame.picture_height_pixels", 1607, 0.5},
    {{"mandate", 4}, "resolve.nominal_scale", 0.9375, 1e-9},
    {{"mandate", 5}, "frame.protection", 0.1, 0},
    {{"mandate", 5}, "resolve.nominal_scale", 1.04, 0.005},
    {{"data-and-cards", 1}, "run.sensor_rate_fps", 24, 0},
    {{"data-and-cards", 1}, "store.audio_bytes_per_s", 0, 0},
    {{"data-and-cards", 2}, "run.sensor_rate_fps", 48, 0},
    {{"data-and-cards", 2}, "run.project_rate_fps", 24, 0},
    {{"data-and-cards", 5}, "store.bytes_per_s", 449e6, 0.5e6},
    {{"data-and-cards", 5}, "run.rate_ceiling_fps", 42.8, 0.05},
    {{"data-and-cards", 5}, "store.write_headroom", 0.89, 0.005},
    {{"room", 1}, "frame.room_protected_percent", 0, 1e-9},
    {{"room", 1}, "frame.shift_horizontal_percent", 0, 0.05},
    {{"room", 1}, "frame.shift_vertical_percent", 0, 1e-9},
    {{"room", 1}, "frame.max_rotation_deg", 0, 1e-9},
    {{"room", 2}, "frame.room_protected_percent", 5, 1e-9},
    {{"room", 2}, "frame.max_rotation_deg", 1.3, 0.05},
    {{"room", 3}, "frame.max_rotation_deg", 8.9, 0.05},
    {{"room", 4}, "frame.protected_top_photosites", 0, 0},
    {{"room", 4}, "frame.room_protected_percent", 5, 1e-9},
    {{"flicker", 1}, "run.flicker.mains_hz", 50, 0},
    {{"flicker", 1}, "run.shutter_deg", 180, 0},
    {{"flicker", 1}, "run.exposure_s", 2.08 / 100, 5e-5},
    {{"flicker", 2}, "run.shutter_deg", 172.8, 1e-9},
    {{"flicker", 2}, "run.exposure_s", 1.0 / 50, 0},
    {{"flicker", 2}, "run.exposure_change_stops", -0.06, 0.005},
    {{"flicker", 3}, "run.sensor_rate_fps", 25, 0},
    {{"flicker", 1}, "run.flicker.depth_percent", 4, 0.1},
    {{"flicker", 1}, "run.flicker.beat_s", 0.25, 1e-12},
    {{"flicker", 3}, "run.shutter_deg", 180, 1e-9},
    {{"flicker", 3}, "run.exposure_s", 1.0 / 50, 1e-12},
    {{"flicker", 4}, "run.shutter_deg", 11.25, 1e-9},
    {{"flicker", 4}, "run.flicker.pulses_per_exposure", 0.125, 1e-12},
    {{"same-view", 1}, "see.focal_mm", 35, 0},
    {{"same-view", 1}, "see.focus_m", 3, 0},
    {{"same-view", 2}, "see.focal_mm", 35, 0},
};

/// A figure as a multiple of what it was in another step.
struct Share {
  Place place;
  std::string_view key;
  std::size_t other;
  double share, tolerance;
};
const std::vector<Share> kShares = {
    {{"area-and-circle", 2}, "cover.image_circle_mm", 1, 1, 0},
    {{"area-and-circle", 4}, "see.horizontal_fov_deg", 2, 1, 1e-12},
    {{"area-and-circle", 4}, "mode.width_photosites", 2, 1, 0},
    {{"squeeze", 2}, "see.mode_width_at_focus_m", 1, 2, 1e-9},
    {{"squeeze", 2}, "frame.width_photosites", 1, 0.9, 0.01},
    {{"squeeze", 3}, "see.width_at_focus_m", 2, 1, 1e-3},
    {{"squeeze", 3}, "see.height_at_focus_m", 2, 1, 1e-3},
    {{"mandate", 5}, "frame.width_photosites", 4, 0.9, 1e-12},
    {{"mandate", 5}, "frame.height_photosites", 4, 0.9, 1e-12},
    {{"data-and-cards", 2}, "store.minutes_per_card", 1, 0.5, 1e-12},
    {{"data-and-cards", 2}, "store.frames_per_card", 1, 1, 0},
    {{"data-and-cards", 4}, "store.minutes_per_card", 2, 3, 0.001},
    {{"data-and-cards", 5}, "store.usable_card_bytes", 4, 1, 0},
    {{"room", 2}, "resolve.frame_photosites", 1, 0.9, 0.005},
    {{"same-view", 3}, "see.horizontal_fov_deg", 1, 1, 1e-3},
    {{"same-view", 3}, "see.frame_vertical_fov_deg", 1, 1, 1e-3},
    {{"same-view", 3}, "see.f_number", 1, 1, 0},
    {{"same-view", 3}, "see.focal_mm", 1, 53.96 / 26.96, 0.01},
};

/// What is yes or no.
struct Word {
  Place place;
  std::string_view key, text;
};
const std::vector<Word> kWords = {
    {{"area-and-circle", 1}, "cover.mode.covered", "true"},
    {{"area-and-circle", 2}, "cover.mode.covered", "false"},
    // The longest of the set has the largest circle.
    {{"area-and-circle", 2}, "cover.lens_set.11.covers_mode", "false"},
    {{"area-and-circle", 3}, "cover.mode.covered", "true"},
    {{"area-and-circle", 4}, "cover.mode.covered", "true"},
    {{"data-and-cards", 5}, "store.card_guaranteed", "true"},
    {{"flicker", 1}, "run.flicker.safe", "false"},
    {{"flicker", 2}, "run.flicker.safe", "true"},
    {{"flicker", 3}, "run.flicker.safe", "true"},
    {{"flicker", 4}, "run.flicker.safe", "false"},
    {{"flicker", 4}, "run.flicker.bands", "true"},
};

/// Every question that turns red; no step has one that its words do not speak of.
const std::set<std::pair<Place, Question>> kFailing = {
    {{"area-and-circle", 2}, Question::cover},
    {{"mandate", 3}, Question::resolve},
    {{"data-and-cards", 5}, Question::run},
    {{"data-and-cards", 5}, Question::store},
    // What misses a requirement is no format to choose.
    {{"area-and-circle", 2}, Question::choose},
    {{"mandate", 3}, Question::choose},
    {{"data-and-cards", 5}, Question::choose},
};
const std::set<Place> kRanges = {{"data-and-cards", 3}};

std::vector<Figure> figures_at(const Place& place, const Catalogue& catalogue) {
  for (const Lesson& lesson : lessons()) {
    if (lesson.id == place.lesson) {
      return figures_of(step_report(lesson, place.step - 1, catalogue));
    }
  }
  return {};
}

Span number_at(const Place& place, std::string_view key, const Catalogue& catalogue) {
  const std::vector<Figure> figures = figures_at(place, catalogue);
  const Figure* figure = find_figure(figures, key);
  REQUIRE(figure != nullptr);
  REQUIRE(figure->number() != nullptr);
  return *figure->number();
}

}  // namespace

TEST_CASE("the numbers in the words of every lesson are those of its plan") {
  const Checked<Catalogue> catalogue = built_in_catalogue();
  REQUIRE(catalogue.has_value());
  std::set<Place> checked = kRanges;
  for (const Fact& fact : kFacts) {
    CAPTURE(fact.place.lesson);
    CAPTURE(fact.place.step);
    CAPTURE(fact.key);
    const Span number = number_at(fact.place, fact.key, *catalogue);
    CAPTURE(number.least);
    CHECK(std::abs(number.least - fact.value) <= fact.tolerance);
    CHECK(std::abs(number.most - fact.value) <= fact.tolerance);
    checked.insert(fact.place);
  }
  for (const Share& share : kShares) {
    CAPTURE(share.place.lesson);
    CAPTURE(share.place.step);
    CAPTURE(share.key);
    const Span is = number_at(share.place, share.key, *catalogue);
    const Span was = number_at({share.place.lesson, share.other}, share.key, *catalogue);
    CAPTURE(is.least / was.least);
    CHECK(std::abs(is.least / was.least - share.share) <= share.tolerance);
    checked.insert(share.place);
  }
  for (const Word& word : kWords) {
    CAPTURE(word.place.lesson);
    CAPTURE(word.place.step);
    CAPTURE(word.key);
    const std::vector<Figure> figures = figures_at(word.place, *catalogue);
    const Figure* figure = find_figure(figures, word.key);
    REQUIRE(figure != nullptr);
    REQUIRE(figure->text() != nullptr);
    CHECK(*figure->text() == word.text);
  }
  for (const Lesson& lesson : lessons()) {
    for (std::size_t step = 1; step <= lesson.steps.size(); ++step) {
      CAPTURE(lesson.id);
      CAPTURE(step);
      CHECK(checked.count({lesson.id, step}) + (lesson.steps[step - 1].claims.empty() ? 0 : 1) > 0);
    }
  }
}

TEST_CASE("a step of a lesson turns red, or gives a range, only where its words say so") {
  const Checked<Catalogue> catalogue = built_in_catalogue();
  REQUIRE(catalogue.has_value());
  std::set<std::pair<Place, Question>> failing;
  std::set<Place> ranges;
  for (const Lesson& lesson : lessons()) {
    for (std::size_t step = 1; step <= lesson.steps.size(); ++step) {
      const Report report = step_report(lesson, step - 1, *catalogue);
      const Span& minutes = report.headline.minutes_per_card;
      if (minutes.least != minutes.most) ranges.insert({lesson.id, step});
      for (const Note& note : report.notes) {
        if (note.severity != Severity::fail) continue;
        failing.insert({{lesson.id, step}, topic_question(note.topic)});
      }
    }
  }
  CHECK(failing == kFailing);
  CHECK(ranges == kRanges);
}

TEST_CASE("a lesson's step names a value of the plan to move, and another step to compare with") {
  std::set<std::string> pointers;
  for (const FieldInfo& field : plan_fields()) pointers.insert(pointer_of(field, 0));
  for (const Lesson& lesson : lessons()) {
    for (std::size_t step = 0; step < lesson.steps.size(); ++step) {
      const LessonStep& each = lesson.steps[step];
      CAPTURE(lesson.id);
      CAPTURE(each.title);
      CHECK(pointers.count(std::string(each.control)) == 1);
      const bool both =
          each.picture == LessonPicture::both_sensors || each.picture == LessonPicture::both_scenes;
      CHECK((!both || each.against < step));
    }
  }
}

TEST_CASE("every lesson's steps are plans that keep their claims") {
  const Checked<Catalogue> catalogue = built_in_catalogue();
  REQUIRE(catalogue.has_value());
  CHECK(lessons().size() >= 6);
  std::set<std::string_view> ids;
  for (const Lesson& lesson : lessons()) {
    CAPTURE(lesson.id);
    CHECK(ids.insert(lesson.id).second);
    CHECK(lesson.steps.size() >= 3);
    std::vector<Figure> before;
    for (std::size_t step = 0; step < lesson.steps.size(); ++step) {
      CAPTURE(lesson.steps[step].title);
      const Report report = step_report(lesson, step, *catalogue);
      REQUIRE(report.problems.empty());
      const std::vector<Figure> now = figures_of(report);
      CHECK(working_of(report, lesson.steps[step].figure).has_value());
      CHECK(lesson.steps[step].claims.empty() == (step == 0));
      for (const LessonClaim& claim : lesson.steps[step].claims) {
        CAPTURE(claim.key);
        const Figure* was = find_figure(before, claim.key);
        const Figure* is = find_figure(now, claim.key);
        REQUIRE(was != nullptr);
        REQUIRE(is != nullptr);
        REQUIRE(was->number() != nullptr);
        REQUIRE(is->number() != nullptr);
        CAPTURE(was->number()->least);
        CAPTURE(is->number()->least);
        CHECK(moved(claim.move, *was->number(), *is->number()));
      }
      before = now;
    }
  }
}

TEST_CASE("a lesson without its cameras gives problems, not a plan") {
  CHECK_FALSE(lesson_plan(lessons().front(), 0, Catalogue{}).has_value());
}
