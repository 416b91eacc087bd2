// Runs the vector files published beside the ASC FDL standard (public repository ascmitc/fdl), when
// the environment variable WIDEGATE_FDL_VECTORS names the folder that holds them. Also checks that
// the rows this repository carries are all of them.
#include <doctest/doctest.h>

#include <cstdlib>
#include <fstream>
#include <iterator>
#include <nlohmann/json.hpp>

#include "core/handover/fdl/read.h"
#include "core/handover/fdl/vocabulary.h"
#include "core/handover/fdl/write.h"
#include "tests/core/handover/fdl/vector_cases.h"

namespace widegate::fdl {
namespace {

using Json = nlohmann::ordered_json;

/// The file, or a discarded value when no folder is named.
Json vectors(const std::string& file) {
  const char* folder = std::getenv("WIDEGATE_FDL_VECTORS");
  if (folder == nullptr || *folder == '\0') return Json(Json::value_t::discarded);
  std::ifstream stream(std::string(folder) + "/" + file);
  REQUIRE_MESSAGE(stream.good(), "cannot open ", folder, "/", file);
  const std::string text{std::istreambuf_iterator<char>(stream), {}};
  Json json = Json::parse(text, nullptr, false);
  REQUIRE_FALSE(json.is_discarded());
  return json;
}

bool missing(const Json& json, const char* key) {
  return !json.contains(key) || json[key].is_null();
}
double number(const Json& json, const char* key) { return json[key].get<double>(); }
std::string text(const Json& json, const char* key) {
  return missing(json, key) ? std::string() : json[key].get<std::string>();
}
Size size(const Json& json, const char* key) {
  if (missing(json, key)) return {};
  return {number(json[key], "width"), number(json[key], "height")};
}
WholeSize whole(const Json& json, const char* key) { return to_whole(size(json, key)); }
Point point(const Json& json, const char* key) {
  if (missing(json, key)) return {};
  return {number(json[key], "x"), number(json[key], "y")};
}

RoundRule rule(const Json& json) {
  RoundRule result;
  REQUIRE(read_word(kParityWords, text(json, "even"), result.parity));
  REQUIRE(read_word(kRoundModeWords, text(json, "mode"), result.mode));
  return result;
}

Layers layers(const Json& json) {
  return {size(json, "canvas_dims"),
          {point(json, "effective_anchor"), size(json, "effective_dims")},
          {point(json, "protection_anchor"), size(json, "protection_dims")},
          {point(json, "framing_anchor"), size(json, "framing_dims")}};
}

void read_case(const Json& json, RoundingCase& row) {
  row = {number(json["input"], "value"), rule(json["params"]), number(json, "expected")};
}
void read_case(const Json& json, GapCase& row) {
  row.origin = point(json, "anchor_offset");
  row.expected = layers(json["expected"]);
}
void read_case(const Json& json, ScaleCase& row) {
  row.source_squeeze = number(json, "source_squeeze");
  row.scale = number(json, "scale_factor");
  row.target_squeeze = number(json, "target_squeeze");
  row.expected = layers(json["expected"]);
}
void read_case(const Json& json, RoundLayersCase& row) {
  row.rule = rule(json);
  row.expected = layers(json["expected"]);
}
void read_case(const Json& json, OffsetCase& row) {
  row.offset = point(json, "offset");
  row.expected = layers(json["expected_geometry"]);
  row.effective = point(json, "expected_theo_eff");
  row.protection = point(json, "expected_theo_prot");
  row.framing = point(json, "expected_theo_fram");
}
void read_case(const Json& json, CropCase& row) {
  row.effective = point(json, "theo_eff");
  row.protection = point(json, "theo_prot");
  row.framing = point(json, "theo_fram");
  row.expected = layers(json["expected"]);
}
void read_case(const Json& json, PathCase& row) {
  row.path = text(json, "path");
  row.expected = {point(json, "expected_anchor"), size(json, "expected_dims")};
}
void read_case(const Json& json, IntentCase& row) {
  row.canvas = size(json, "canvas_dims");
  row.working = size(json, "working_dims");
  row.squeeze = number(json, "squeeze");
  row.aspect = whole(json, "aspect_ratio");
  row.protection = number(json, "protection");
  row.rule = rule(json["rounding"]);
  const Json& want = json["expected"];
  row.framing = {point(want, "anchor_point"), size(want, "dimensions")};
  CHECK(want["has_protection"].get<bool>() == !absent(size(want, "protection_dimensions")));
  row.outer = {point(want, "protection_anchor_point"), size(want, "protection_dimensions")};
}

void read_template(const Json& json, TemplateCase& row) {
  row.target = whole(json, "target_dimensions");
  row.target_squeeze = number(json, "target_anamorphic_squeeze");
  row.fit_source = text(json, "fit_source");
  row.fit_method = text(json, "fit_method");
  row.horizontal = text(json, "alignment_method_horizontal");
  row.vertical = text(json, "alignment_method_vertical");
  row.preserve = text(json, "preserve_from_source_canvas");
  row.maximum = whole(json, "maximum_dimensions");
  CHECK(json["has_maximum_dimensions"].get<bool>() == (row.maximum != WholeSize{}));
  row.pad = json["pad_to_maximum"].get<bool>();
  row.rule = rule(json["round"]);
}

void read_case(const Json& json, TemplateCase& row) {
  const Json& canvas = json["source_canvas"];
  const Json& decision = json["source_framing"];
  row.source = {
      size(canvas, "dimensions"),
      {point(canvas, "effective_anchor_point"), size(canvas, "effective_dimensions")},
      {point(decision, "protection_anchor_point"), size(decision, "protection_dimensions")},
      {point(decision, "anchor_point"), size(decision, "dimensions")}};
  row.source_squeeze = number(canvas, "anamorphic_squeeze");
  read_template(json["template"], row);
  const Json& want = json["expected"];
  row.scale = number(want, "scale_factor");
  row.bounding_box = size(want, "scaled_bounding_box");
  row.translation = point(want, "content_translation");
  row.expected = {size(want, "output_canvas_dims"),
                  {point(want, "output_effective_anchor"), size(want, "output_effective_dims")},
                  {point(want, "output_protection_anchor"), size(want, "output_protection_dims")},
                  {point(want, "output_fd_anchor"), size(want, "output_fd_dims")}};
}

/// Checks each entry of the file; the repository must carry the same entries, in the same order.
template <class Row>
void check_all(const Json& entries, std::span<const Row> carried) {
  REQUIRE(entries.size() == carried.size());
  for (std::size_t i = 0; i < entries.size(); ++i) {
    Row row{};
    if constexpr (requires { row.name; }) {
      row.name = text(entries[i], "label");
      CHECK(row.name == carried[i].name);
    }
    if constexpr (requires { row.input; }) row.input = layers(entries[i]["input"]);
    read_case(entries[i], row);
    check_case(row);
  }
}

/// Each document must be refused with as many problems as the vector counts.
void check_documents(const std::string& file) {
  const Json json = vectors(file);
  if (json.is_discarded()) return;
  for (const Json& entry : json["vectors"]) {
    CAPTURE(text(entry, "label"));
    const auto reading = read_document(entry["input"].dump());
    const std::size_t count = reading ? 0 : reading.error().size();
    CHECK(count == entry["expected_error_count"].get<std::size_t>());
  }
}

TEST_CASE("published files: rounding") {
  const Json json = vectors("rounding_vectors.json");
  if (!json.is_discarded()) check_all(json["vectors"], rounding_cases());
}

TEST_CASE("published files: geometry") {
  const Json json = vectors("geometry_vectors.json");
  if (json.is_discarded()) return;
  check_all(json["fill_hierarchy_gaps"], gap_cases());
  check_all(json["normalize_and_scale"], scale_cases());
  check_all(json["round"], round_layers_cases());
  check_all(json["apply_offset"], offset_cases());
  check_all(json["crop"], crop_cases());
  check_all(json["get_dims_anchor_from_path"], path_cases());
}

TEST_CASE("published files: intents") {
  const Json json = vectors("from_intent_vectors.json");
  if (!json.is_discarded()) check_all(json["vectors"], intent_cases());
}

TEST_CASE("published files: templates") {
  const Json json = vectors("template_vectors.json");
  if (!json.is_discarded()) check_all(json["vectors"], template_cases());
}

TEST_CASE("published files: validation") { check_documents("validation_vectors.json"); }
TEST_CASE("published files: schema") { check_documents("schema_validation_vectors.json"); }

TEST_CASE("published files: round trips keep keys, order and numbers") {
  const Json json = vectors("roundtrip_vectors.json");
  if (json.is_discarded()) return;
  for (const Json& entry : json["vectors"]) {
    CAPTURE(text(entry, "label"));
    const auto reading = read_document(entry["input"].dump());
    REQUIRE(reading.has_value());
    CHECK(write_document(reading->document) == entry["expected"].dump(2) + "\n");
  }
}

}  // namespace
}  // namespace widegate::fdl
