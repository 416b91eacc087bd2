// Documents read and written again: key order, custom fields on every object, numbers.
#include <doctest/doctest.h>

#include <nlohmann/json.hpp>

#include "core/handover/fdl/read.h"
#include "core/handover/fdl/write.h"
#include "tests/core/handover/fdl/sample.h"

namespace widegate::fdl {
namespace {

using Json = nlohmann::ordered_json;

// Every kind of object once, each with a custom field, in canonical order.
constexpr std::string_view kEverything = R"({
  "uuid": "0f8fad5b-d9cb-469f-a165-70867728950e",
  "version": {"major": 2, "minor": 0, "_note": "kept"},
  "fdl_creator": "tests",
  "default_framing_intent": "WIDE",
  "framing_intents": [
    {"label": "wide", "id": "WIDE",
     "aspect_ratio": {"width": 239, "height": 100, "_note": [1, 2.5, null]},
     "protection": 0.1, "_note": {"b": 1, "a": {"z": "\u00fc"}}}
  ],
  "contexts": [
    {"label": "deck", "context_creator": "tests",
     "clip_id": {"clip_name": "A001",
                 "sequence": {"value": "A001_###", "idx": "#", "min": 0, "max": 99, "_note": 1},
                 "_note": true},
     "canvases": [
       {"label": "gate", "id": "GATE", "source_canvas_id": "GATE",
        "dimensions": {"width": 5000, "height": 3000, "_note": 1},
        "effective_dimensions": {"width": 4800, "height": 2800, "_note": 2},
        "effective_anchor_point": {"x": 100.0, "y": 100.5, "_note": 3},
        "photosite_dimensions": {"width": 5000, "height": 3000, "_note": 4},
        "physical_dimensions": {"width": 27.0, "height": 16.2, "_note": 5},
        "anamorphic_squeeze": 1.8,
        "framing_decisions": [
          {"label": "wide", "id": "GATE-WIDE", "framing_intent_id": "WIDE",
           "dimensions": {"width": 3600.25, "height": 2711.4, "_note": 6},
           "anchor_point": {"x": 699.875, "y": 145.3, "_note": 7},
           "protection_dimensions": {"width": 4000.0, "height": 2790.0, "_note": 8},
           "protection_anchor_point": {"x": 500.0, "y": 105.0, "_note": 9},
           "_note": 10}
        ], "_note": 11}
     ], "_note": 12}
  ],
  "canvas_templates": [
    {"label": "delivery", "id": "UHD",
     "target_dimensions": {"width": 3840, "height": 2160, "_note": 13},
     "target_anamorphic_squeeze": 1.0,
     "fit_source": "framing_decision.protection_dimensions", "fit_method": "fit_all",
     "alignment_method_vertical": "top", "alignment_method_horizontal": "right",
     "preserve_from_source_canvas": "canvas.effective_dimensions",
     "maximum_dimensions": {"width": 4096, "height": 2304, "_note": 14},
     "pad_to_maximum": true, "round": {"even": "whole", "mode": "round", "_note": 15},
     "_note": 16}
  ],
  "_note": 17, "_second": "also"
})";

/// The same document with the members of every object in reverse order.
Json reversed(const Json& json) {
  if (json.is_array()) {
    Json result = Json::array();
    for (const Json& entry : json) result.push_back(reversed(entry));
    return result;
  }
  if (!json.is_object()) return json;
  std::vector<std::string> keys;
  for (const auto& [key, value] : json.items()) keys.push_back(key);
  Json result = Json::object();
  for (auto key = keys.rbegin(); key != keys.rend(); ++key) result[*key] = reversed(json[*key]);
  return result;
}

}  // namespace

TEST_CASE("a document with custom fields on every object comes back unchanged") {
  const Document document = read_or_fail(kEverything);
  CHECK(write_document(document) == Json::parse(kEverything).dump(2) + "\n");
  CHECK(read_or_fail(write_document(document)) == document);
}

TEST_CASE("members in any order are written in canonical order") {
  const Json shuffled = reversed(Json::parse(kEverything));
  const Document document = read_or_fail(shuffled.dump());
  const Json written = Json::parse(write_document(document));
  CHECK(Json(nlohmann::json(written)) == Json(nlohmann::json(shuffled)));
  std::vector<std::string> keys;
  for (const auto& [key, value] : written["canvas_templates"][0].items()) keys.push_back(key);
  const std::vector<std::string> expected = {"label",
                                             "id",
                                             "target_dimensions",
                                             "target_anamorphic_squeeze",
                                             "fit_source",
                                             "fit_method",
                                             "alignment_method_vertical",
                                             "alignment_method_horizontal",
                                             "preserve_from_source_canvas",
                                             "maximum_dimensions",
                                             "pad_to_maximum",
                                             "round",
                                             "_note"};
  CHECK(keys == expected);
}

TEST_CASE("missing lists stay missing, empty lists stay empty") {
  const char* header =
      R"({"uuid": "0f8fad5b-d9cb-469f-a165-70867728950e", "version": {"major": 2, "minor": 0}})";
  CHECK(write_document(read_or_fail(header)) == Json::parse(header).dump(2) + "\n");
  const std::string with_lists = patched(header, R"([
      {"op":"add","path":"/framing_intents","value":[]},
      {"op":"add","path":"/contexts","value":[{"canvases":[]}]},
      {"op":"add","path":"/canvas_templates","value":[]}])");
  CHECK(write_document(read_or_fail(with_lists)) == Json::parse(with_lists).dump(2) + "\n");
}

TEST_CASE("whole numbers may be written with a decimal point; sizes come back as they are meant") {
  const std::string text = patched(kSample, R"([
      {"op":"replace","path":"/contexts/0/canvases/0/dimensions/width","value":4096.0},
      {"op":"replace","path":"/contexts/0/canvases/0/framing_decisions/0/anchor_point/x",
       "value":0}])");
  const std::string written = write_document(read_or_fail(text));
  CHECK(written.find("\"width\": 4096,") != std::string::npos);
  CHECK(written.find("\"x\": 0.0,") != std::string::npos);
}

TEST_CASE("a null default framing intent is dropped with a warning") {
  const auto reading = read_document(
      patched(kSample, R"([{"op":"add","path":"/default_framing_intent","value":null}])"));
  REQUIRE(reading.has_value());
  CHECK_FALSE(reading->document.default_framing_intent.has_value());
  REQUIRE(reading->warnings.size() == 1);
  CHECK(reading->warnings[0].pointer == "/default_framing_intent");
  CHECK(write_document(reading->document).find("default_framing_intent") == std::string::npos);
}

TEST_CASE("a pad_to_maximum of false is not written") {
  const std::string text =
      patched(kEverything,
              R"([{"op":"replace","path":"/canvas_templates/0/pad_to_maximum","value":false}])");
  CHECK(write_document(read_or_fail(text)).find("pad_to_maximum") == std::string::npos);
}

}  // namespace widegate::fdl
