// Plans as JSON documents: exact round trips, every kind of wrong input named where it is, and
// hostile text that must never do worse than be refused.
#include "core/plan/plan_json.h"

#include <doctest/doctest.h>

#include <array>

#include "core/catalogue/catalogue_json.h"
#include "core/encode/json_text.h"
#include "core/report/evaluate.h"
#include "tests/core/support/random_plans.h"
#include "tests/core/support/rounds.h"

using namespace widegate;
using widegate::testing::Dice;
using widegate::testing::random_plan;

namespace {

const Catalogue& library() {
  static const Catalogue kLibrary = built_in_catalogue().value();
  return kLibrary;
}

/// A document with these members beside the version.
std::string document(std::string_view members) {
  return "{\"widegate_plan\": 1" + std::string(members.empty() ? "" : ", ") + std::string(members) +
         "}";
}

Problems problems_of(std::string_view text) {
  const auto plan = plan_from_json(text, library());
  return plan ? Problems{} : plan.error();
}

struct Refused {
  std::string_view members;   ///< Beside the version.
  std::string_view pointer;   ///< Of the first problem.
  std::string_view value;     ///< As it is shown.
  std::string_view accepted;  ///< How the words begin.
};

}  // namespace

TEST_CASE("the default plan comes back from its own text") {
  const std::string text = plan_to_json(Plan{});
  const auto again = plan_from_json(text, library());
  REQUIRE(again.has_value());
  CHECK(*again == Plan{});
  CHECK(plan_to_json(*again) == text);
  CHECK(plan_from_json(document(""), library()) == Plan{});
}

TEST_CASE("random plans come back exactly, and equal plans give equal text") {
  Dice dice(2039);
  Plan plan;
  const int count = testing::rounds(5'000, 1'000);
  for (int i = 0; i < count; ++i) {
    if (i % 50 == 0) plan = random_plan(dice, library());
    testing::change_something(dice, plan, library());
    const std::string text = plan_to_json(plan);
    const auto again = plan_from_json(text, library());
    if (!again) {
      for (const Problem& problem : again.error()) MESSAGE(to_line(problem));
    }
    REQUIRE(again.has_value());
    REQUIRE(*again == plan);
    REQUIRE(plan_to_json(*again) == text);
  }
}

TEST_CASE("every random plan evaluates without a problem") {
  Dice dice(77);
  for (int i = 0; i < 300; ++i) {
    const Plan plan = random_plan(dice, library());
    REQUIRE(evaluate(plan, library()).problems.empty());
  }
}

TEST_CASE("numbers may be written in any of the ways that mean the same") {
  const auto plan = plan_from_json(document(R"("deliverable": {"width_pixels": 2048.0,
      "frame_lines": [{"aspect": 2.39}, {"aspect": "16/9"}, {"aspect": 2}, {"aspect": "1.85"}]},
      "run": {"sensor_rate": "48000/1001", "shutter_angle_deg": 172.8})"),
                                   library());
  REQUIRE(plan.has_value());
  CHECK(plan->deliverable.width_pixels == 2048);
  CHECK(plan->deliverable.frame_lines[0].aspect == Rational(239, 100));
  CHECK(plan->deliverable.frame_lines[1].aspect == Rational(16, 9));
  CHECK(plan->deliverable.frame_lines[2].aspect == Rational(2));
  CHECK(plan->deliverable.frame_lines[3].aspect == Rational(37, 20));
  CHECK(plan->run.sensor_rate == Rational(48000, 1001));
  CHECK(plan->run.shutter_angle_deg == Rational(864, 5));
}

TEST_CASE("every kind of wrong value is refused where it stands") {
  constexpr auto kRows = std::to_array<Refused>({
      // unknown key
      {R"("lense": {})", "/lense", "an object", "one of the keys widegate_plan, title, format"},
      {R"("lens": {"focal": 35})", "/lens/focal", "35", "one of the keys set, focal_mm"},
      {R"("lens/focal_mm": 35)", "/lens~1focal_mm", "35", "one of the keys"},
      {R"("deliverable": {"frame_lines": [{"#": 1}]})", "/deliverable/frame_lines/0/#", "1",
       "one of the keys name, aspect, protection, anchor"},
      {R"("a~b": null)", "/a~0b", "null", "one of the keys"},
      {"\"bad\\nkey\": 1", "/bad?key", "1", "one of the keys"},
      // wrong type
      {R"("lens": 5)", "/lens", "5", "an object"},
      {R"("lens": {"focal_mm": "35"})", "/lens/focal_mm", "\"35\"", "a number from 1 to 3000 mm"},
      {R"("lens": {"focal_mm": true})", "/lens/focal_mm", "true", "a number"},
      {R"("lens": {"focal_mm": null})", "/lens/focal_mm", "null", "a number"},
      {R"("lens": {"focal_mm": [35]})", "/lens/focal_mm", "a list", "a number"},
      {R"("title": 7)", "/title", "7", "text on one line, 0 to 120 bytes"},
      {R"("deliverable": {"frame_lines": {}})", "/deliverable/frame_lines", "an object", "a list"},
      {R"("deliverable": {"frame_lines": []})", "/deliverable/frame_lines", "a list of 0",
       "a list of 1 to 8"},
      {R"("deliverable": {"frame_lines": [1]})", "/deliverable/frame_lines/0", "1", "an object"},
      {R"("deliverable": {"frame_lines": [{},{},{},{},{},{},{},{},{}]})",
       "/deliverable/frame_lines", "a list of 9", "a list of 1 to 8"},
      {R"("choose": {"cameras": "alder"})", "/choose/cameras", "\"alder\"", "a list"},
      {R"("choose": {"cameras": [1]})", "/choose/cameras/0", "1", "a camera id"},
      {R"("choose": {"must_meet_mandate": 1})", "/choose/must_meet_mandate", "1", "true or false"},
      {R"("own": [])", "/own", "a list", "an object"},
      // sizes
      {R"("deliverable": {"width_pixels": -1920})", "/deliverable/width_pixels", "-1920",
       "a whole number from 16 to 65535 px"},
      {R"("deliverable": {"width_pixels": 0})", "/deliverable/width_pixels", "0", "a whole number"},
      {R"("deliverable": {"width_pixels": 1e30})", "/deliverable/width_pixels", "1e+30",
       "a whole number"},
      {R"("deliverable": {"width_pixels": 1920.5})", "/deliverable/width_pixels", "1920.5",
       "a whole number"},
      {R"("deliverable": {"width_pixels": 18446744073709551615})", "/deliverable/width_pixels",
       "18446744073709551615", "a whole number"},
      {R"("deliverable": {"width_pixels": 100000000000000000000})", "/deliverable/width_pixels",
       "1e+20", "a whole number"},
      {R"("lens": {"focal_mm": 1e-400})", "/lens/focal_mm", "0.0", "a number from 1"},
      {R"("lens": {"focal_mm": 3000.0001})", "/lens/focal_mm", "3000.0001", "a number from 1"},
      // not a number
      {R"("lens": {"focal_mm": "NaN"})", "/lens/focal_mm", "\"NaN\"", "a number"},
      {R"("run": {"sensor_rate": "NaN"})", "/run/sensor_rate", "\"NaN\"",
       "a whole number or an exact fraction"},
      {R"("run": {"sensor_rate": "Infinity"})", "/run/sensor_rate", "\"Infinity\"", "a whole"},
      // rates and fractions
      {R"("run": {"sensor_rate": "0/0"})", "/run/sensor_rate", "\"0/0\"", "a whole number or"},
      {R"("run": {"sensor_rate": "24/0"})", "/run/sensor_rate", "\"24/0\"", "a whole number or"},
      {R"("run": {"sensor_rate": 0})", "/run/sensor_rate", "0", "a whole number or"},
      {R"("run": {"sensor_rate": "-24"})", "/run/sensor_rate", "\"-24\"", "a whole number or"},
      {R"("run": {"sensor_rate": "24 000"})", "/run/sensor_rate", "\"24 000\"", "a whole number"},
      {R"("run": {"sensor_rate": "1/10011"})", "/run/sensor_rate", "\"1/10011\"", "a whole"},
      {R"("run": {"sensor_rate": 23.976})", "/run/sensor_rate", "23.976",
       "the exact fraction \"24000/1001\""},
      {R"("run": {"project_rate": "29.97"})", "/run/project_rate", "\"29.97\"",
       "the exact fraction \"30000/1001\""},
      {R"("run": {"shutter_angle_deg": 0})", "/run/shutter_angle_deg", "0", "a number or a"},
      {R"("run": {"shutter_angle_deg": 360.5})", "/run/shutter_angle_deg", "360.5", "a number or"},
      {R"("deliverable": {"frame_lines": [{"protection": 0.5}]})",
       "/deliverable/frame_lines/0/protection", "0.5", "a number or a fraction"},
      {R"("deliverable": {"frame_lines": [{"aspect": 2.3911}]})",
       "/deliverable/frame_lines/0/aspect", "2.3911", "a number or a fraction"},
      // choices and text
      {R"("lens": {"match": "area"})", "/lens/match", "\"area\"", "one of width, height, diagonal"},
      {R"("lens": {"match": " width"})", "/lens/match", "\" width\"", "one of width"},
      {R"("title": "two\nlines")", "/title", "\"two?lines\"", "text on one line, 0 to 120 bytes"},
      {R"("store": {"currency": ""})", "/store/currency", "\"\"",
       "text on one line, 1 to 12 bytes"},
      // ids
      {R"("format": {"camera": "oak"})", "/format/camera", "\"oak\"", "a camera: alder, birch"},
      {R"("format": {"mode": "no-such"})", "/format/mode", "\"no-such\"",
       "a sensor mode of this camera: open-gate"},
      {R"("format": {"mode": "Open Gate"})", "/format/mode", "\"Open Gate\"", "an id"},
      {R"("format": {"recording": "raw"})", "/format/recording", "\"raw\"",
       "a recording option of this mode: as-read"},
      {R"("format": {"codec": "dpx-10"})", "/format/codec", "\"dpx-10\"",
       "a codec of this recording option: bayer-12-packed"},
      {R"("lens": {"set": "thames"})", "/lens/set", "\"thames\"", "empty text, or a lens set"},
      {R"("store": {"card": ""})", "/store/card", "\"\"", "an id"},
      {R"("store": {"tape": "lto-1"})", "/store/tape", "\"lto-1\"", "empty text, or a tape"},
      {R"("choose": {"cameras": ["alder", "oak"]})", "/choose/cameras/1", "\"oak\"", "a camera"},
      // values that do not hold beside one another
      {R"("lens": {"focal_mm": 100, "focus_m": 0.1})", "/lens/focus_m", "0.1",
       "a distance beyond the focal length"},
      {R"("run": {"shutter_kind": "time", "shutter_time_s": "1/20"})", "/run/shutter_time_s",
       "1/20", "at most one frame at the sensor rate, 1/24 s"},
      {R"("shooting": {"recorded_hours_per_day": 11})", "/shooting/recorded_hours_per_day", "11",
       "at most the shooting day of 10 h"},
      {R"("deliverable": {"frame_lines": [{"anchor": {"x": 1}}]})",
       "/deliverable/frame_lines/0/anchor/x", "1", "0, or the anchor kind \"free\""},
      {R"("format": {"mode": "wide-16x9", "recording": "resample-1920", "codec": "avc-intra-100"})",
       "/format/codec", "\"avc-intra-100\"",
       "a codec with a known frame size for 1920 x 1080 at 24 fps"},
      // one's own rows
      {R"("own": {"widegate_catalogue": 1})", "/own/widegate_catalogue", "1", "one of the keys"},
      {R"("own": {"cards": [{"id": "x"}]})", "/own/cards/0/name", "nothing",
       "text on one line, 1 to 80"},
  });
  for (const Refused& row : kRows) {
    CAPTURE(row.members);
    const Problems problems = problems_of(document(row.members));
    REQUIRE_FALSE(problems.empty());
    CHECK(problems.front().pointer == row.pointer);
    CHECK(problems.front().value == row.value);
    CHECK(problems.front().accepted.substr(0, row.accepted.size()) == row.accepted);
    CHECK(to_line(problems.front()).find('\n') == std::string::npos);
  }
}

TEST_CASE("text that is not JSON is one problem that names the byte") {
  constexpr auto kRows = std::to_array<std::pair<std::string_view, std::string_view>>({
      {"", "the end of the text at byte 0 (line 1)"},
      {"hello", "\"hello\" at byte 0 (line 1)"},
      {"{\"widegate_plan\": 1,\n \"lens\": {\"focal_mm\": NaN}}", "\"NaN}}\" at byte 43 (line 2)"},
      {"{\"widegate_plan\": 1", "the end of the text at byte 19 (line 1)"},
      {"{\"widegate_plan\": 1} x", "\"x\" at byte 21 (line 1)"},
      {"{\"widegate_plan\": 0x1}", "\"x1}\" at byte 19 (line 1)"},
      {"{\"title\": \"\xff\"}", "\"?\"}\" at byte 11 (line 1)"},
      {"{'widegate_plan': 1}", "\"'widegate_plan':\" at byte 1 (line 1)"},
  });
  for (const auto& [row_text, value] : kRows) {
    const auto text = row_text;
    CAPTURE(text);
    const Problems problems = problems_of(text);
    REQUIRE(problems.size() == 1);
    CHECK(problems.front().pointer.empty());
    CHECK(problems.front().value == value);
    CHECK(problems.front().accepted == "a JSON document");
  }
  const Problems huge = problems_of(document(R"("lens": {"focal_mm": 1e999})"));
  REQUIRE(huge.size() == 1);
  CHECK(huge.front().accepted == "a number below 1.8e308");
}

TEST_CASE("another version, none, or no object at all is said plainly") {
  const Problems newer = problems_of(R"({"widegate_plan": 2, "lenses": []})");
  REQUIRE(newer.size() == 1);
  CHECK(to_line(newer.front()) ==
        "/widegate_plan: 2 is not accepted; expected 1, the version of this kind of document");
  const Problems none = problems_of(R"({"lenses": []})");
  REQUIRE(none.size() == 2);
  CHECK(none[0].pointer == "/widegate_plan");
  CHECK(none[0].value == "nothing");
  CHECK(none[1].pointer == "/lenses");
  CHECK(problems_of("[]").front().accepted == "an object");
  CHECK(problems_of("null").front().value == "null");
  CHECK(problems_of(R"({"widegate_plan": "1"})").front().value == "\"1\"");
}

TEST_CASE("every problem of a document is reported, not only the first") {
  const Problems problems = problems_of(
      document(R"("title": 1, "lens": {"focal_mm": -1, "f_number": "x"}, "own": {"cards": 1})"));
  CHECK(problems.size() == 4);
  std::string many = "\"own\": {\"cards\": [0";
  for (int i = 0; i < 100'000; ++i) many += ",0";
  CHECK(problems_of(document(many + "]}")).size() == 100);
}

TEST_CASE("repeated keys, deep nesting and crowded objects are refused") {
  const Problems twice =
      problems_of(R"({"widegate_plan": 1, "lens": {"f_number": 2, "f_number": 4}})");
  REQUIRE(twice.size() == 1);
  CHECK(twice.front().pointer == "/lens/f_number");
  CHECK(twice.front().accepted == "each key once in an object");

  std::string deep = "{\"widegate_plan\": 1, \"own\": ";
  for (int i = 0; i < 100'000; ++i) deep += "[";
  const Problems nested = problems_of(deep);
  REQUIRE(nested.size() == 1);
  CHECK(nested.front().accepted == "at most 16 levels");
  CHECK(nested.front().pointer.substr(0, 8) == "/own/0/0");

  std::string crowded = "{\"widegate_plan\": 1";
  for (int i = 0; i < 1000; ++i) crowded += ", \"k" + std::to_string(i) + "\": 1";
  CHECK(problems_of(crowded + "}").front().accepted == "at most 64 keys in an object");
}

TEST_CASE("a cut or damaged document is refused or read, never worse") {
  Dice dice(5);
  const std::string text = plan_to_json(random_plan(dice, library()));
  for (std::size_t length = 0; length < text.size(); length += 7) {
    REQUIRE_FALSE(plan_from_json(text.substr(0, length), library()).has_value());
  }
  constexpr std::string_view kBytes = "0123456789-.eE\"\\{}[]:,/ntf\xff ";
  for (int i = 0; i < 3000; ++i) {
    std::string damaged = text;
    for (std::int64_t changes = dice.whole(1, 3); changes > 0; --changes) {
      const auto at =
          static_cast<std::size_t>(dice.whole(0, static_cast<std::int64_t>(text.size()) - 1));
      damaged[at] = dice.pick(kBytes);
    }
    const auto plan = plan_from_json(damaged, library());
    if (plan) {
      REQUIRE(plan_from_json(plan_to_json(*plan), library()) == *plan);
    } else {
      REQUIRE_FALSE(plan.error().empty());
    }
  }
}
