// The validation vectors published beside the ASC FDL standard, under their own names, as edits of
// our own sample: what is wrong, how many problems there must be, and where we say it is.
#include <doctest/doctest.h>

#include "core/handover/fdl/read.h"
#include "tests/core/handover/fdl/sample.h"

namespace widegate::fdl {
namespace {

struct Row {
  const char* name;
  const char* patch;
  std::vector<const char*> pointers;  ///< One per expected problem.
};

void check_rows(std::string_view base, const std::vector<Row>& rows) {
  for (const Row& row : rows) {
    CAPTURE(row.name);
    const auto reading = read_document(patched(base, row.patch));
    const Problems problems = reading ? Problems{} : reading.error();
    for (const Problem& problem : problems) CAPTURE(to_line(problem));
    REQUIRE(problems.size() == row.pointers.size());
    for (std::size_t i = 0; i < problems.size(); ++i) {
      CHECK(problems[i].pointer == row.pointers[i]);
      CHECK_FALSE(problems[i].value.empty());
      CHECK_FALSE(problems[i].accepted.empty());
    }
  }
}

constexpr std::string_view kHeaderOnly =
    R"({"uuid": "0f8fad5b-d9cb-469f-a165-70867728950e", "version": {"major": 2, "minor": 0}})";

const std::vector<Row> kSemantic = {
    {"valid_minimal", "[]", {}},
    {"valid_with_effective_dims",
     R"([{"op":"add","path":"/contexts/0/canvases/0/effective_dimensions",
          "value":{"width":4096,"height":2100}},
         {"op":"add","path":"/contexts/0/canvases/0/effective_anchor_point",
          "value":{"x":0.0,"y":30.0}}])",
     {}},
    {"valid_with_protection",
     R"([{"op":"add","path":"/contexts/0/canvases/0/framing_decisions/0/protection_dimensions",
          "value":{"width":4096.0,"height":1714.0}},
         {"op":"add","path":"/contexts/0/canvases/0/framing_decisions/0/protection_anchor_point",
          "value":{"x":0.0,"y":223.0}}])",
     {}},
    {"duplicate_framing_intent_id",
     R"([{"op":"add","path":"/framing_intents/-",
          "value":{"id":"FI_239","aspect_ratio":{"width":239,"height":100}}}])",
     {"/framing_intents/1/id"}},
    {"default_fi_not_in_list",
     R"([{"op":"add","path":"/default_framing_intent","value":"NONEXISTENT"}])",
     {"/default_framing_intent"}},
    {"duplicate_canvas_id",
     R"([{"op":"copy","from":"/contexts/0","path":"/contexts/1"}])",
     {"/contexts/1/canvases/0/id"}},
    {"fd_id_mismatch",
     R"([{"op":"replace","path":"/contexts/0/canvases/0/framing_decisions/0/id",
          "value":"CVS_OCF-WRONG_FI"}])",
     {"/contexts/0/canvases/0/framing_decisions/0/id"}},
    {"source_canvas_not_found",
     R"([{"op":"replace","path":"/contexts/0/canvases/0/source_canvas_id","value":"NONEXISTENT"}])",
     {"/contexts/0/canvases/0/source_canvas_id"}},
    {"dim_hierarchy_fd_exceeds_canvas",
     R"([{"op":"replace","path":"/contexts/0/canvases/0/framing_decisions/0/dimensions",
          "value":{"width":5000.0,"height":3000.0}}])",
     {"/contexts/0/canvases/0/framing_decisions/0/dimensions"}},
    {"negative_anchor_point",
     R"([{"op":"replace","path":"/contexts/0/canvases/0/framing_decisions/0/anchor_point/x",
          "value":-10.0}])",
     {"/contexts/0/canvases/0/framing_decisions/0/anchor_point/x"}},
    {"anchor_exceeds_canvas",
     R"([{"op":"replace","path":"/contexts/0/canvases/0/framing_decisions/0/anchor_point/x",
          "value":5000.0}])",
     {"/contexts/0/canvases/0/framing_decisions/0/anchor_point"}},
    {"negative_effective_anchor",
     R"([{"op":"add","path":"/contexts/0/canvases/0/effective_dimensions",
          "value":{"width":4000,"height":2100}},
         {"op":"add","path":"/contexts/0/canvases/0/effective_anchor_point",
          "value":{"x":-5.0,"y":30.0}}])",
     {"/contexts/0/canvases/0/effective_anchor_point/x"}},
    {"fd_references_missing_fi",
     R"([{"op":"replace","path":"/contexts/0/canvases/0/framing_decisions/0/framing_intent_id",
          "value":"MISSING_FI"}])",
     {"/contexts/0/canvases/0/framing_decisions/0/framing_intent_id"}},
};

const std::vector<Row> kSchema = {
    {"missing_uuid", R"([{"op":"remove","path":"/uuid"}])", {""}},
    {"missing_version", R"([{"op":"remove","path":"/version"}])", {""}},
    {"unknown_version_no_schema",
     R"([{"op":"replace","path":"/version/major","value":99}])",
     {"/version"}},
    {"unknown_minor_version_no_schema",
     R"([{"op":"replace","path":"/version/minor","value":1}])",
     {"/version"}},
    {"unknown_top_level_property",
     R"([{"op":"add","path":"/unknown_field","value":1}])",
     {"/unknown_field"}},
    {"underscore_extension_allowed", R"([{"op":"add","path":"/_custom_extension","value":1}])", {}},
    {"fdl_id_too_long",
     R"([{"op":"add","path":"/framing_intents","value":[
          {"id":"A23456789012345678901234567890123","aspect_ratio":{"width":16,"height":9}}]}])",
     {"/framing_intents/0/id"}},
    {"fdl_id_invalid_chars",
     R"([{"op":"add","path":"/framing_intents","value":[
          {"id":"two words!","aspect_ratio":{"width":16,"height":9}}]}])",
     {"/framing_intents/0/id"}},
    {"framing_intent_missing_required",
     R"([{"op":"add","path":"/framing_intents","value":[{"label":"x"}]}])",
     {"/framing_intents/0"}},
    {"dimensions_int_zero_width",
     R"([{"op":"add","path":"/framing_intents","value":[
          {"id":"FI_1","aspect_ratio":{"width":0,"height":9}}]}])",
     {"/framing_intents/0/aspect_ratio/width"}},
    {"dimensions_int_negative",
     R"([{"op":"add","path":"/framing_intents","value":[
          {"id":"FI_1","aspect_ratio":{"width":-1,"height":9}}]}])",
     {"/framing_intents/0/aspect_ratio/width"}},
    {"canvas_missing_required_fields",
     R"([{"op":"add","path":"/contexts","value":[{"canvases":[{"label":"x"}]}]}])",
     {"/contexts/0/canvases/0"}},
    {"effective_dims_without_anchor",
     R"([{"op":"add","path":"/contexts","value":[{"canvases":[
          {"id":"CVS_1","source_canvas_id":"CVS_1","dimensions":{"width":1920,"height":1080},
           "effective_dimensions":{"width":1920,"height":1080}}]}]}])",
     {"/contexts/0/canvases/0"}},
    {"protection_dims_without_anchor",
     R"([{"op":"add","path":"/contexts","value":[{"canvases":[
          {"id":"CVS_1","source_canvas_id":"CVS_1","dimensions":{"width":1920,"height":1080},
           "framing_decisions":[{"id":"CVS_1-FI_1","framing_intent_id":"FI_1",
             "dimensions":{"width":1920.0,"height":1080.0},"anchor_point":{"x":0,"y":0},
             "protection_dimensions":{"width":1920.0,"height":1080.0}}]}]}]}])",
     {"/contexts/0/canvases/0/framing_decisions/0"}},
    {"invalid_fit_method",
     R"([{"op":"add","path":"/canvas_templates","value":[
          {"id":"CT_1","target_dimensions":{"width":1920,"height":1080},
           "target_anamorphic_squeeze":1.0,"fit_source":"canvas.dimensions",
           "fit_method":"other"}]}])",
     {"/canvas_templates/0/fit_method"}},
    {"invalid_fit_source",
     R"([{"op":"add","path":"/canvas_templates","value":[
          {"id":"CT_1","target_dimensions":{"width":1920,"height":1080},
           "target_anamorphic_squeeze":1.0,"fit_source":"other","fit_method":"width"}]}])",
     {"/canvas_templates/0/fit_source"}},
    {"anamorphic_squeeze_zero",
     R"([{"op":"add","path":"/contexts","value":[{"canvases":[
          {"id":"CVS_1","source_canvas_id":"CVS_1","dimensions":{"width":1920,"height":1080},
           "anamorphic_squeeze":0}]}]}])",
     {"/contexts/0/canvases/0/anamorphic_squeeze"}},
    {"valid_minimal_schema", "[]", {}},
    {"valid_full_document",
     R"([{"op":"add","path":"/default_framing_intent","value":"FI_239"},
         {"op":"add","path":"/framing_intents","value":[
          {"id":"FI_239","aspect_ratio":{"width":239,"height":100},"protection":0.0}]},
         {"op":"add","path":"/contexts","value":[{"context_creator":"tests","canvases":[
          {"id":"CVS_OCF","source_canvas_id":"CVS_OCF","dimensions":{"width":4096,"height":2160},
           "effective_dimensions":{"width":4000,"height":2100},
           "effective_anchor_point":{"x":48.0,"y":30.0},"anamorphic_squeeze":1.0,
           "framing_decisions":[{"id":"CVS_OCF-FI_239","framing_intent_id":"FI_239",
             "dimensions":{"width":3800.0,"height":1600.0},"anchor_point":{"x":100.0,"y":250.0},
             "protection_dimensions":{"width":3900.0,"height":1700.0},
             "protection_anchor_point":{"x":50.0,"y":200.0}}]}]}]},
         {"op":"add","path":"/canvas_templates","value":[
          {"id":"CT_HD","target_dimensions":{"width":1920,"height":1080},
           "target_anamorphic_squeeze":1.0,"fit_source":"framing_decision.dimensions",
           "fit_method":"width","alignment_method_vertical":"center",
           "alignment_method_horizontal":"center","round":{"even":"even","mode":"up"}}]}])",
     {}},
    {"framing_decision_id_pattern",
     R"([{"op":"add","path":"/contexts","value":[{"canvases":[
          {"id":"CVS_1","source_canvas_id":"CVS_1","dimensions":{"width":1920,"height":1080},
           "framing_decisions":[{"id":"NO_HYPHEN","framing_intent_id":"FI_1",
             "dimensions":{"width":1920.0,"height":1080.0},
             "anchor_point":{"x":0,"y":0}}]}]}]}])",
     {"/contexts/0/canvases/0/framing_decisions/0/id"}},
};

}  // namespace

TEST_CASE("published vectors: rules between objects") { check_rows(kSample, kSemantic); }
TEST_CASE("published vectors: schema rules") { check_rows(kHeaderOnly, kSchema); }

}  // namespace widegate::fdl
