// From a source text and a template text to the text of the result.
#include "core/handover/fdl/apply_document.h"

#include <doctest/doctest.h>

#include "core/handover/fdl/read.h"
#include "tests/core/handover/fdl/sample.h"

namespace widegate::fdl {
namespace {

constexpr std::string_view kTemplates = R"({
  "uuid": "00000000-0000-4000-8000-000000000001",
  "version": {"major": 2, "minor": 0},
  "canvas_templates": [
    {"label": "half", "id": "HALF", "target_dimensions": {"width": 2048, "height": 0},
     "target_anamorphic_squeeze": 1.0, "fit_source": "canvas.dimensions", "fit_method": "width"},
    {"id": "PAD", "target_dimensions": {"width": 1920, "height": 1080},
     "target_anamorphic_squeeze": 1.0, "fit_source": "framing_decision.dimensions",
     "fit_method": "fit_all", "maximum_dimensions": {"width": 1920, "height": 1080},
     "pad_to_maximum": true}
  ]
})";

// A second context, whose canvas was made from the first one's.
std::string two_generations() {
  return patched(kSample, R"([
      {"op":"add","path":"/framing_intents/-",
       "value":{"id":"FI_178","aspect_ratio":{"width":16,"height":9}}},
      {"op":"add","path":"/contexts/-","value":{"label":"plates","canvases":[
        {"id":"PLATE","source_canvas_id":"CVS_OCF","dimensions":{"width":2000,"height":1000},
         "framing_decisions":[
          {"id":"PLATE-FI_239","framing_intent_id":"FI_239",
           "dimensions":{"width":2000,"height":836},"anchor_point":{"x":0,"y":82}},
          {"id":"PLATE-FI_178","framing_intent_id":"FI_178",
           "dimensions":{"width":1600,"height":900},"anchor_point":{"x":200,"y":50}}]}]}}])");
}

AppliedDocument apply_or_fail(const std::string& source, const ApplyChoice& choice) {
  auto applied = apply_to_document(read_or_fail(source), read_or_fail(kTemplates), choice);
  REQUIRE(applied.has_value());
  return *applied;
}

}  // namespace

TEST_CASE("the result holds source canvas, new canvas, intents and template, and keeps the rules") {
  const auto result = apply_text(kSample, kTemplates, {});
  REQUIRE(result.has_value());
  const Document document = read_or_fail(result->text);
  CHECK(document.fdl_creator == "Widegate");
  CHECK(document.default_framing_intent == "FI_239");
  CHECK(document.framing_intents == read_or_fail(kSample).framing_intents);
  REQUIRE(rows(document.canvas_templates).size() == 1);
  CHECK(document.canvas_templates->front().id == "HALF");
  REQUIRE(rows(document.contexts).size() == 1);
  CHECK(document.contexts->front().label == "half");
  const auto& canvases = rows(document.contexts->front().canvases);
  REQUIRE(canvases.size() == 2);
  CHECK(canvases[0].id == "CVS_OCF");
  const Canvas& made = canvases[1];
  CHECK(made.source_canvas_id == "CVS_OCF");
  CHECK(made.label == "half: ferry deck gate");
  CHECK(made.dimensions == WholeSizeField{{2048, 1080}, {}});
  CHECK(made.effective_dimensions == WholeSizeField{{2048, 1080}, {}});
  CHECK(made.anamorphic_squeeze == 1.0);
  REQUIRE(rows(made.framing_decisions).size() == 1);
  const FramingDecision& decision = made.framing_decisions->front();
  CHECK(decision.id == made.id + "-FI_239");
  CHECK(decision.dimensions == SizeField{{2048, 857}, {}});
  CHECK(decision.anchor_point == PointField{{0, 111.5}, {}});
  const CustomFields expected = {{"_scale_factor", "0.5"},
                                 {"_content_translation", R"({"x":0.0,"y":0.0})"},
                                 {"_scaled_bounding_box", R"({"width":2048.0,"height":1080.0})"}};
  CHECK(made.custom == expected);
}

TEST_CASE("the same input gives the same document, another input another UUID") {
  const auto once = apply_text(kSample, kTemplates, {});
  const auto twice = apply_text(kSample, kTemplates, {});
  ApplyChoice other;
  other.canvas_template = "PAD";
  const auto padded = apply_text(kSample, kTemplates, other);
  REQUIRE((once && twice && padded));
  CHECK(once->text == twice->text);
  CHECK(read_or_fail(once->text).uuid != read_or_fail(padded->text).uuid);
  CHECK(once->source_warnings.empty());
  const std::string uuid = read_or_fail(once->text).uuid;
  CHECK(uuid[14] == '8');
  CHECK(std::string("89ab").find(uuid[19]) != std::string::npos);
}

TEST_CASE("context, canvas, decision and template can be chosen") {
  ApplyChoice choice;
  choice.context = "plates";
  CHECK(apply_or_fail(two_generations(), choice).numbers.layers.canvas == Size{2048, 1024});
  choice.decision = "FI_178";
  choice.canvas_template = "PAD";
  choice.new_canvas_id = "HD_1";
  const AppliedDocument hd = apply_or_fail(two_generations(), choice);
  CHECK(hd.canvas_id == "HD_1");
  CHECK(hd.numbers.layers.framing.size == Size{1920, 1080});
  CHECK(hd.document.default_framing_intent == "FI_178");
}

TEST_CASE("the decision for the default framing intent is taken first") {
  const std::string source = patched(
      two_generations(), R"([{"op":"add","path":"/default_framing_intent","value":"FI_178"}])");
  ApplyChoice choice;
  choice.canvas = "PLATE";
  CHECK(apply_or_fail(source, choice).document.default_framing_intent == "FI_178");
}

TEST_CASE("canvases the source was derived from come along, oldest first") {
  ApplyChoice choice;
  choice.canvas = "PLATE";
  const AppliedDocument result = apply_or_fail(two_generations(), choice);
  const auto& canvases = rows(result.document.contexts->front().canvases);
  REQUIRE(canvases.size() == 3);
  CHECK(canvases[0].id == "CVS_OCF");
  CHECK(canvases[1].id == "PLATE");
  CHECK(canvases[2].source_canvas_id == "PLATE");
}

TEST_CASE("canvases that name each other as source do not go round for ever") {
  const std::string source = patched(
      two_generations(),
      R"([{"op":"replace","path":"/contexts/0/canvases/0/source_canvas_id","value":"PLATE"}])");
  CHECK(rows(apply_or_fail(source, {}).document.contexts->front().canvases).size() == 3);
}

TEST_CASE("what cannot be chosen or applied is refused, in the document it belongs to") {
  const auto problems = [](const ApplyChoice& choice) {
    auto result = apply_text(kSample, kTemplates, choice);
    REQUIRE_FALSE(result.has_value());
    return result.error();
  };
  ApplyChoice choice;
  choice.canvas = "NOWHERE";
  choice.canvas_template = "NONE";
  CHECK(problems(choice).source.front().pointer == "/contexts");
  CHECK(problems(choice).templates.front().pointer == "/canvas_templates");
  choice = {};
  choice.new_canvas_id = "two words";
  CHECK(problems(choice).source.size() == 1);
  choice.new_canvas_id = "CVS_OCF";
  CHECK(problems(choice).source.size() == 1);
  const std::string fits_missing_layer =
      patched(kTemplates, R"([{"op":"replace","path":"/canvas_templates/1/fit_source",
                               "value":"canvas.effective_dimensions"}])");
  choice = {};
  choice.canvas_template = "PAD";
  const auto missing = apply_text(kSample, fits_missing_layer, choice);
  REQUIRE_FALSE(missing.has_value());
  CHECK(missing.error().templates.front().pointer == "/canvas_templates/1/fit_source");
  const auto broken = apply_text("{", "[", {});
  REQUIRE_FALSE(broken.has_value());
  CHECK(broken.error().source.size() == 1);
  CHECK(broken.error().templates.size() == 1);
}

}  // namespace widegate::fdl
