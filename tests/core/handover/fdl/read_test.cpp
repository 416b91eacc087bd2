// What reading refuses, what it only warns of, and how it says so.
#include <doctest/doctest.h>

#include "core/handover/fdl/read.h"
#include "tests/core/handover/fdl/sample.h"

namespace widegate::fdl {
namespace {

constexpr std::string_view kTemplate =
    R"([{"op":"add","path":"/canvas_templates/-","value":
         {"id":"HD","target_dimensions":{"width":1920,"height":1080},
          "target_anamorphic_squeeze":1.0,"fit_source":"framing_decision.dimensions",
          "fit_method":"width"}}])";

Problems problems_of(const std::string& text) {
  auto reading = read_document(text);
  return reading ? Problems{} : reading.error();
}

Problems warnings_of(const std::string& text) {
  auto reading = read_document(text);
  REQUIRE(reading.has_value());
  return reading->warnings;
}

std::string with_template(std::string_view patch) {
  return patched(patched(kSample, kTemplate), patch);
}

}  // namespace

TEST_CASE("a problem names the pointer, the value and what is accepted") {
  const Problems problems = problems_of(patched(
      kSample,
      R"([{"op":"replace","path":"/contexts/0/canvases/0/dimensions/width","value":40.5}])"));
  REQUIRE(problems.size() == 1);
  CHECK(problems[0].pointer == "/contexts/0/canvases/0/dimensions/width");
  CHECK(problems[0].value == "40.5");
  CHECK(problems[0].accepted == "a whole number from 1 to 2147483647");
}

TEST_CASE("all schema problems are reported at once, references only after them") {
  const Problems problems = problems_of(patched(kSample, R"([
      {"op":"replace","path":"/uuid","value":7},
      {"op":"replace","path":"/framing_intents/0/label","value":false},
      {"op":"replace","path":"/contexts/0/canvases/0/source_canvas_id","value":"NOWHERE"},
      {"op":"replace","path":"/canvas_templates","value":{}}])"));
  REQUIRE(problems.size() == 3);
  CHECK(problems[0].pointer == "/uuid");
  CHECK(problems[1].pointer == "/framing_intents/0/label");
  CHECK(problems[2].pointer == "/canvas_templates");
}

TEST_CASE("pointers escape '~' and '/'") {
  const Problems problems =
      problems_of(patched(kSample, R"([{"op":"add","path":"/a~1b~0c","value":1}])"));
  REQUIRE(problems.size() == 1);
  CHECK(problems[0].pointer == "/a~1b~0c");
}

TEST_CASE("every member refuses a value of the wrong type without stopping the reader") {
  const char* values[] = {"null", "true", "\"\"", "-1", "[]", "{}", "[[]]", "1e300"};
  const char* places[] = {"/uuid",
                          "/version",
                          "/version/major",
                          "/framing_intents",
                          "/framing_intents/0",
                          "/framing_intents/0/aspect_ratio",
                          "/framing_intents/0/aspect_ratio/height",
                          "/contexts/0",
                          "/contexts/0/canvases",
                          "/contexts/0/canvases/0/dimensions",
                          "/contexts/0/canvases/0/framing_decisions/0/anchor_point/y",
                          "/canvas_templates/0/fit_method",
                          "/canvas_templates/0/target_dimensions",
                          "/canvas_templates/0/target_dimensions/width"};
  for (const char* place : places) {
    for (const char* value : values) {
      CAPTURE(place);
      CAPTURE(value);
      const bool empty_text_is_text = std::string(place) == "/uuid" && value[0] == '"';
      const bool empty_list_is_a_list =
          std::string(value) == "[]" && (std::string(place) == "/framing_intents" ||
                                         std::string(place) == "/contexts/0/canvases");
      const bool empty_object_is_a_context =
          std::string(value) == "{}" && std::string(place) == "/contexts/0";
      const std::string patch =
          std::string(R"([{"op":"replace","path":")") + place + R"(","value":)" + value + "}]";
      const Problems problems = problems_of(with_template(patch));
      if (empty_text_is_text || empty_object_is_a_context) {
        CHECK(problems.empty());
      } else if (empty_list_is_a_list) {
        // No schema problem; what refers into the list may now be missing.
        for (const Problem& problem : problems) CHECK(problem.pointer.ends_with("_id"));
      } else {
        CHECK_FALSE(problems.empty());
      }
    }
  }
}

TEST_CASE("text that is not JSON is refused with its line") {
  const Problems problems = problems_of("{\n  \"uuid\": \"x\",\n  oops\n}");
  REQUIRE(problems.size() == 1);
  CHECK(problems[0].pointer.empty());
  CHECK(problems[0].value.ends_with("(line 3)"));
  CHECK(problems_of("").size() == 1);
  CHECK(problems_of("\xff\xfe").size() == 1);
  CHECK(problems_of("{\"uuid\": \"\xc3\x28\"}").size() == 1);
  CHECK(problems_of("[]").size() == 1);
  CHECK(problems_of("{\"_x\": 1e999}").size() == 1);
}

TEST_CASE("a document wrong in many places is not reported on without end") {
  std::string intents = "[0";
  for (int i = 0; i < 1000; ++i) intents += ",0";
  const Problems problems = problems_of(
      patched(kSample, R"([{"op":"replace","path":"/framing_intents","value":)" + intents + "]}]"));
  CHECK(problems.size() == 100);
}

TEST_CASE("documents built to exhaust the reader are refused") {
  const std::string deep(100'000, '[');
  const Problems too_deep = problems_of("{\"_x\": " + deep);
  REQUIRE(too_deep.size() == 1);
  CHECK(too_deep[0].pointer.starts_with("/_x/0/0/0"));
  std::string wide = "{";
  for (int i = 0; i < 5000; ++i) wide += "\"_" + std::to_string(i) + "\": 0,";
  wide += "\"_\": 0}";
  CHECK(problems_of(wide).size() == 1);
}

TEST_CASE("a key that occurs twice in an object is refused") {
  const Problems problems = problems_of(R"({"_x": {"a": 1, "a": 2}})");
  REQUIRE(problems.size() == 1);
  CHECK(problems[0].pointer == "/_x/a");
}

TEST_CASE("brackets and colons inside text do not count as structure") {
  const std::string brackets(200, '[');
  const std::string text =
      patched(kSample, R"([{"op":"add","path":"/_x","value":")" + brackets + R"(\\\":\\\\"}])");
  CHECK(problems_of(text).empty());
}

TEST_CASE("long values are shortened at a character") {
  std::string label;
  for (int i = 0; i < 100; ++i) label += "\xc3\xbc";
  const Problems problems = problems_of(patched(
      kSample, R"([{"op":"replace","path":"/framing_intents/0/id","value":")" + label + R"("}])"));
  REQUIRE(problems.size() == 1);
  CHECK(problems[0].value.size() <= 80);
  CHECK(problems[0].value.ends_with("\xbc...\""));
}

TEST_CASE("a clip is a file or a sequence, not both; its index mark is one character") {
  const auto clip = [](const char* value) {
    return patched(kSample, std::string(R"([{"op":"add","path":"/contexts/0/clip_id","value":)") +
                                value + "}]");
  };
  CHECK(problems_of(clip(R"({"clip_name":"A1","file":"A1.mov"})")).empty());
  CHECK(problems_of(clip(R"({"file":"A1.mov"})")).size() == 1);
  const std::string sequence = R"("sequence":{"value":"A#","min":0,"max":9,"idx":)";
  CHECK(problems_of(clip((R"({"clip_name":"A1",)" + sequence + "\"#\"}}").c_str())).empty());
  CHECK(problems_of(clip((R"({"clip_name":"A1",)" + sequence + "\"\xc3\xbc\"}}").c_str())).empty());
  CHECK(problems_of(clip((R"({"clip_name":"A1",)" + sequence + "\"##\"}}").c_str())).size() == 1);
  CHECK(problems_of(clip((R"({"clip_name":"A1","file":"f",)" + sequence + "\"#\"}}").c_str()))
            .size() == 1);
}

TEST_CASE("protection is a share below one") {
  const auto protection = [](const char* value) {
    return problems_of(
        patched(kSample,
                std::string(R"([{"op":"replace","path":"/framing_intents/0/protection","value":)") +
                    value + "}]"));
  };
  CHECK(protection("0").empty());
  CHECK(protection("0.999").empty());
  CHECK(protection("1").size() == 1);
  CHECK(protection("10").size() == 1);
  CHECK(protection("-0.1").size() == 1);
}

TEST_CASE("what older or looser writers do is taken with a warning") {
  const auto warns = [](std::string_view patch) {
    const Problems warnings = warnings_of(with_template(patch));
    REQUIRE(warnings.size() == 1);
    return warnings[0].pointer;
  };
  CHECK(warns(R"([{"op":"replace","path":"/uuid","value":"not-hex"}])") == "/uuid");
  CHECK(warns(R"([{"op":"add","path":"/canvas_templates/0/preserve_from_source_canvas",
                   "value":"none"}])") == "/canvas_templates/0/preserve_from_source_canvas");
  CHECK(warns(R"([{"op":"add","path":"/canvas_templates/0/maximum_dimensions",
                   "value":{"width":0,"height":0}}])") == "/canvas_templates/0/maximum_dimensions");
  CHECK(warns(R"([{"op":"replace","path":"/canvas_templates/0/target_anamorphic_squeeze",
                   "value":0}])") == "/canvas_templates/0/target_anamorphic_squeeze");
  CHECK(warns(R"([{"op":"add","path":"/canvas_templates/0/maximum_dimensions",
                   "value":{"width":1280,"height":720}}])") ==
        "/canvas_templates/0/maximum_dimensions");
  CHECK(
      warns(R"([{"op":"replace","path":"/contexts/0/canvases/0/framing_decisions/0/anchor_point/y",
                   "value":500.0}])") == "/contexts/0/canvases/0/framing_decisions/0/anchor_point");
}

TEST_CASE("a maximum with one side of zero is refused") {
  CHECK(problems_of(with_template(R"([{"op":"add","path":"/canvas_templates/0/maximum_dimensions",
                                       "value":{"width":1920,"height":0}}])"))
            .size() == 1);
}

TEST_CASE("repeated decisions and templates are refused") {
  const Problems decision = problems_of(
      patched(kSample, R"([{"op":"copy","from":"/contexts/0/canvases/0/framing_decisions/0",
                            "path":"/contexts/0/canvases/0/framing_decisions/1"}])"));
  REQUIRE(decision.size() == 1);
  CHECK(decision[0].pointer == "/contexts/0/canvases/0/framing_decisions/1/id");
  const Problems entry = problems_of(with_template(
      R"([{"op":"copy","from":"/canvas_templates/0","path":"/canvas_templates/1"}])"));
  REQUIRE(entry.size() == 1);
  CHECK(entry[0].pointer == "/canvas_templates/1/id");
}

TEST_CASE("sizes must fall from canvas to framing, skipping what is missing") {
  const auto decision = [](const char* width) {
    return problems_of(patched(kSample, std::string(R"([{"op":"add",
            "path":"/contexts/0/canvases/0/framing_decisions/0/protection_dimensions",
            "value":{"width":)") + width + R"(,"height":2000.0}},
           {"op":"add","path":"/contexts/0/canvases/0/framing_decisions/0/protection_anchor_point",
            "value":{"x":0,"y":0}}])"));
  };
  CHECK(decision("4096").empty());
  CHECK(decision("4097")[0].pointer.ends_with("/protection_dimensions"));
  CHECK(decision("4095")[0].pointer.ends_with("/0/dimensions"));
}

}  // namespace widegate::fdl
