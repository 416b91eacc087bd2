// A Report as JSON: the keys other tools rely on, ranges, what does not exist, 12 digits.
#include "core/handover/json/report_json.h"

#include <doctest/doctest.h>

#include <array>
#include <limits>
#include <nlohmann/json.hpp>

#include "core/report/notes.h"

namespace widegate {
namespace {

using Json = nlohmann::json;

Report small_report() {
  Report report;
  report.headline.horizontal_fov_deg = 52.9319171055337123;
  report.headline.minutes_per_card = {12.5, 12.5};
  report.headline.data_rate_megabits_per_s = {100, 200};
  report.mode.width_photosites = 4992;
  report.mode.height_mm = 35 * 23.976 / 26.9568;
  FrameReport& frame = report.frames.emplace_back();
  frame.name = "Scope \"2.39\"";
  frame.photosites = {
      .left = Rational(158500, 239), .top = 0, .width = 4000, .height = Rational(1, 3)};
  report.frames.push_back(frame);
  report.cover.known = true;
  report.run.exposure_s = Rational(1, 48);
  report.run.project_rate = Rational(24000, 1001);
  report.run.sensor_rate = Rational(24000, 1001);
  report.run.flicker.nearest_safe_rates = {Rational(100, 3), 25};
  report.store.bytes_per_frame = {.least = 9'007'199'254'740'991, .most = 9'007'199'254'740'991};
  report.store.frames_per_card = {.least = 10, .most = 20};
  report.notes.push_back({.severity = Severity::ok, .topic = Topic::run_test_lights});
  return report;
}

Json parsed(const Report& report) {
  const Json json = Json::parse(report_to_json(report), nullptr, false);
  REQUIRE_FALSE(json.is_discarded());
  return json;
}

/// The value under "a.b.c"; a discarded value when there is none.
Json at(const Json& root, std::string_view path) {
  Json here = root;
  while (!path.empty()) {
    const auto dot = std::min(path.find('.'), path.size());
    const std::string key(path.substr(0, dot));
    if (!here.is_object() || !here.contains(key)) return Json(Json::value_t::discarded);
    here = Json(here[key]);
    path.remove_prefix(std::min(dot + 1, path.size()));
  }
  return here;
}

// The promised names; a number is never under a key without its unit.
constexpr auto kPromisedKeys = std::to_array<std::string_view>({
    "headline.horizontal_fov_deg",
    "headline.vertical_fov_deg",
    "headline.diagonal_fov_deg",
    "headline.mode_megapixels",
    "headline.frame_megapixels",
    "headline.minutes_per_card",
    "headline.data_rate_megabits_per_s",
    "mode.width_photosites",
    "mode.height_photosites",
    "mode.width_mm",
    "mode.height_mm",
    "mode.diagonal_mm",
    "mode.desqueezed_aspect",
    "frame.left_photosites",
    "frame.top_photosites",
    "frame.width_photosites",
    "frame.height_photosites",
    "frame.left_photosites_exact",
    "frame.left_pixels",
    "frame.left_even_pixels",
    "frame.width_even_pixels",
    "frame.protected_left_photosites",
    "frame.protected_height_even_pixels",
    "frame.push_in_percent",
    "frame.room_protected_percent",
    "frame.nominal_scale",
    "frame.shift_horizontal_percent",
    "frame.shift_vertical_percent",
    "frame.max_rotation_deg",
    "cover.mode.covered",
    "cover.mode.margin_mm",
    "cover.mode.uncovered_area_percent",
    "cover.mode.largest_covered_scale",
    "cover.protected.covered",
    "cover.frame.covered",
    "see.width_at_focus_m",
    "see.height_at_focus_m",
    "see.equivalent_focal_mm",
    "see.hyperfocal_m",
    "see.near_m",
    "see.far_m",
    "see.circle_of_confusion_mm",
    "resolve.recorded_width_pixels",
    "resolve.recorded_height_pixels",
    "resolve.horizontal_scale",
    "resolve.vertical_scale",
    "resolve.mandate.required",
    "resolve.mandate.have",
    "resolve.mandate.met",
    "run.exposure_s",
    "run.speed_factor",
    "run.exposure_change_stops",
    "run.flicker.safe",
    "run.flicker.nearest_safe_shutter_deg",
    "store.bytes_per_frame",
    "store.bytes_per_s",
    "store.bytes_per_minute",
    "store.frames_per_card",
    "store.minutes_per_card",
    "store.write_headroom",
    "store.cards_per_day",
    "store.cards_in_rotation",
    "store.offload_minutes_per_card",
    "store.offload_hours_per_day",
    "store.shoot_total_bytes",
    "store.copies_total_bytes",
    "store.tapes",
    "store.upload_hours",
    "store.cost",
    "notes",
});

TEST_CASE("Every promised key is there") {
  const Json json = parsed(small_report());
  for (const std::string_view key : kPromisedKeys) {
    CAPTURE(key);
    CHECK_FALSE(at(json, key).is_discarded());
  }
  CHECK_FALSE(json.contains("problems"));
}

TEST_CASE("Ranges are objects only when they are ranges") {
  const Json json = parsed(small_report());
  CHECK(at(json, "headline.minutes_per_card") == 12.5);
  CHECK(at(json, "headline.data_rate_megabits_per_s") == Json{{"least", 100.0}, {"most", 200.0}});
  CHECK(at(json, "store.frames_per_card") == Json{{"least", 10}, {"most", 20}});
}

TEST_CASE("Counts are exact, other numbers have 12 digits, fractions are text") {
  const std::string text = report_to_json(small_report());
  CHECK(text.find("\"bytes_per_frame\": 9007199254740991") != std::string::npos);
  CHECK(text.find("\"horizontal_fov_deg\": 52.9319171055,") != std::string::npos);
  // The shortest form of this double is found by hand, not by every JSON library.
  CHECK(text.find("\"height_mm\": 31.1298076923,") != std::string::npos);
  const Json json = parsed(small_report());
  CHECK(at(json, "frame.left_photosites_exact") == "158500/239");
  CHECK(at(json, "frame.width_photosites_exact") == "4000");
  CHECK(at(json, "frame.left_photosites") == 663.179916318);
  CHECK(at(json, "run.exposure_s_exact") == "1/48");
  CHECK(at(json, "run.exposure_s") == 0.0208333333333);
  CHECK(at(json, "run.sensor_rate") == "24000/1001");
  CHECK(at(json, "run.flicker.nearest_safe_rates") == Json{"100/3", "25"});
}

TEST_CASE("What does not exist is null") {
  Report report = small_report();
  report.cover.known = false;
  report.see.depth.far_m.reset();
  report.run.rate_ceiling.reset();
  report.frames.front().photosites.left = Rational(1, 0);
  report.mode.width_mm = std::numeric_limits<double>::infinity();
  const Json json = parsed(report);
  for (const std::string_view key :
       {"cover.image_circle_mm", "cover.frame.covered", "cover.frame.margin_mm",
        "cover.mode.uncovered_area_percent", "see.far_m", "run.rate_ceiling_fps",
        "see.distance_for_wanted_width_m", "frame.left_photosites", "frame.left_photosites_exact",
        "mode.width_mm"}) {
    CAPTURE(key);
    CHECK(at(json, key).is_null());
  }
  CHECK(at(json, "cover.known") == false);
  CHECK(at(json, "cover.frame.diagonal_mm") == 0.0);  // what the area asks for needs no circle
}

TEST_CASE("Frame lines are listed, the main one also by itself") {
  Report report = small_report();
  report.frames[1].name = "Vertical";
  const Json json = parsed(report);
  REQUIRE(json["frame_lines"].size() == 2);
  CHECK(json["frame"] == json["frame_lines"][0]);
  CHECK(json["frame_lines"][1]["name"] == "Vertical");
  CHECK(json["frame"]["name"] == "Scope \"2.39\"");
}

TEST_CASE("Notes carry their words") {
  const Json note = parsed(small_report())["notes"][0];
  CHECK(note["severity"] == "ok");
  CHECK(note["standing"] == true);
  CHECK(note["topic"] == "run.test_lights");
  CHECK(note["text"] == note_text({.severity = Severity::ok, .topic = Topic::run_test_lights}));
}

TEST_CASE("A report of problems holds nothing else") {
  Report report = small_report();
  report.problems.push_back({.pointer = "/lens/focal_mm", .value = "-1", .accepted = "more"});
  const Json json = parsed(report);
  CHECK(json.size() == 1);
  CHECK(json["problems"] ==
        Json::array({{{"pointer", "/lens/focal_mm"}, {"value", "-1"}, {"accepted", "more"}}}));
}

TEST_CASE("Text that is not UTF-8 still makes a document") {
  Report report = small_report();
  report.frames.front().name = "\xff\xfe broken";
  CHECK(parsed(report)["frame"]["name"].is_string());
}

TEST_CASE("The order of keys is fixed") {
  CHECK(report_to_json(small_report()) == report_to_json(small_report()));
  const std::string text = report_to_json(small_report());
  std::size_t last = 0;
  for (const std::string_view key :
       {"\"format\"", "\"headline\"", "\"mode\"", "\"frame\"", "\"frame_lines\"", "\"cover\"",
        "\"see\"", "\"resolve\"", "\"run\"", "\"store\"", "\"notes\""}) {
    const std::size_t here = text.find(std::string("\n  ") + std::string(key));
    CAPTURE(key);
    REQUIRE(here != std::string::npos);
    CHECK(here >= last);
    last = here;
  }
}

}  // namespace
}  // namespace widegate
