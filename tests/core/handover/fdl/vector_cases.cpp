// Every comparison is exact: these steps only add, multiply and divide, so each platform gives the
// same doubles.
#include "tests/core/handover/fdl/vector_cases.h"

#include <doctest/doctest.h>

#include "core/handover/fdl/apply_template.h"
#include "core/handover/fdl/intent.h"
#include "core/handover/fdl/vocabulary.h"

namespace widegate::fdl {
namespace {

void check_layers(const Layers& have, const Layers& want) {
  for (const Layer layer : {Layer::canvas, Layer::effective, Layer::protection, Layer::framing}) {
    CAPTURE(word_of(kLayerWords, layer));
    const Box left = layer_box(have, layer);
    const Box right = layer_box(want, layer);
    CHECK(left.size.width == right.size.width);
    CHECK(left.size.height == right.size.height);
    CHECK(left.anchor.x == right.anchor.x);
    CHECK(left.anchor.y == right.anchor.y);
  }
}

void check_point(Point have, Point want) {
  CHECK(have.x == want.x);
  CHECK(have.y == want.y);
}

}  // namespace

Canvas canvas_of(const TemplateCase& row) {
  Canvas canvas;
  canvas.id = std::string("A");
  canvas.source_canvas_id = std::string("A");
  canvas.dimensions = {to_whole(row.source.canvas), {}};
  if (!absent(row.source.effective.size)) {
    canvas.effective_dimensions = WholeSizeField{to_whole(row.source.effective.size), {}};
    canvas.effective_anchor_point = PointField{row.source.effective.anchor, {}};
  }
  canvas.anamorphic_squeeze = row.source_squeeze;
  return canvas;
}

FramingDecision decision_of(const TemplateCase& row) {
  FramingDecision decision;
  decision.id = std::string("A-B");
  decision.framing_intent_id = std::string("B");
  decision.dimensions = {row.source.framing.size, {}};
  decision.anchor_point = {row.source.framing.anchor, {}};
  if (!absent(row.source.protection.size)) {
    decision.protection_dimensions = SizeField{row.source.protection.size, {}};
    decision.protection_anchor_point = PointField{row.source.protection.anchor, {}};
  }
  return decision;
}

CanvasTemplate template_of(const TemplateCase& row) {
  CanvasTemplate entry;
  entry.id = std::string("T");
  entry.target_dimensions = {row.target, {}};
  entry.target_anamorphic_squeeze = row.target_squeeze;
  REQUIRE(read_word(kLayerWords, row.fit_source, entry.fit_source));
  REQUIRE(read_word(kFitMethodWords, row.fit_method, entry.fit_method));
  REQUIRE(read_word(kHorizontalWords, row.horizontal, entry.alignment_method_horizontal.emplace()));
  REQUIRE(read_word(kVerticalWords, row.vertical, entry.alignment_method_vertical.emplace()));
  if (!row.preserve.empty()) {
    REQUIRE(read_word(kLayerWords, row.preserve, entry.preserve_from_source_canvas.emplace()));
  }
  if (row.maximum != WholeSize{}) entry.maximum_dimensions = WholeSizeField{row.maximum, {}};
  entry.pad_to_maximum = row.pad;
  entry.round = RoundField{row.rule, {}};
  return entry;
}

void check_case(const RoundingCase& row) {
  CAPTURE(row.value);
  CAPTURE(word_of(kParityWords, row.rule.parity));
  CAPTURE(word_of(kRoundModeWords, row.rule.mode));
  CHECK(round_value(row.value, row.rule) == row.expected);
}

void check_case(const GapCase& row) {
  CAPTURE(row.name);
  check_layers(fill_gaps(row.input, row.origin), row.expected);
}

void check_case(const ScaleCase& row) {
  CAPTURE(row.name);
  const Ratio scale{row.scale, 1};
  check_layers(scaled(row.input, row.source_squeeze, scale, row.target_squeeze), row.expected);
}

void check_case(const RoundLayersCase& row) {
  CAPTURE(row.name);
  check_layers(rounded(row.input, row.rule).layers, row.expected);
}

void check_case(const OffsetCase& row) {
  CAPTURE(row.name);
  const ShiftedLayers have = shifted(row.input, row.offset);
  check_layers(have.layers, row.expected);
  check_point(have.effective, row.effective);
  check_point(have.protection, row.protection);
  check_point(have.framing, row.framing);
}

void check_case(const CropCase& row) {
  CAPTURE(row.name);
  check_layers(cropped({row.input, row.effective, row.protection, row.framing}), row.expected);
}

void check_case(const PathCase& row) {
  CAPTURE(row.name);
  Layer layer{};
  REQUIRE(read_word(kLayerWords, row.path, layer));
  const Box have = layer_box(row.input, layer);
  CHECK(have.size == row.expected.size);
  CHECK(have.anchor == row.expected.anchor);
}

void check_case(const IntentCase& row) {
  CAPTURE(row.name);
  const Point anchor{(row.canvas.width - row.working.width) / 2,
                     (row.canvas.height - row.working.height) / 2};
  const DecisionBoxes have =
      place_intent({row.aspect, row.protection}, {anchor, row.working}, row.squeeze, row.rule);
  CHECK(have.framing.size == row.framing.size);
  CHECK(have.framing.anchor == row.framing.anchor);
  CHECK(have.protection.has_value() == !absent(row.outer.size));
  CHECK(have.protection.value_or(Box{}).size == row.outer.size);
  CHECK(have.protection.value_or(Box{}).anchor == row.outer.anchor);
}

void check_case(const TemplateCase& row) {
  CAPTURE(row.name);
  const auto applied = apply_template(template_of(row), canvas_of(row), decision_of(row));
  REQUIRE(applied.has_value());
  CHECK(applied->scale.value() == row.scale);
  CHECK(applied->bounding_box.width == row.bounding_box.width);
  CHECK(applied->bounding_box.height == row.bounding_box.height);
  check_point(applied->translation, row.translation);
  check_layers(applied->layers, row.expected);
}

TEST_CASE("published vectors: rounding") {
  for (const auto& row : rounding_cases()) check_case(row);
}
TEST_CASE("published vectors: gaps between layers are filled") {
  for (const auto& row : gap_cases()) check_case(row);
}
TEST_CASE("published vectors: de-squeeze and scale") {
  for (const auto& row : scale_cases()) check_case(row);
}
TEST_CASE("published vectors: canvas and effective area become whole") {
  for (const auto& row : round_layers_cases()) check_case(row);
}
TEST_CASE("published vectors: offset") {
  for (const auto& row : offset_cases()) check_case(row);
}
TEST_CASE("published vectors: crop") {
  for (const auto& row : crop_cases()) check_case(row);
}
TEST_CASE("published vectors: a layer by its path") {
  for (const auto& row : path_cases()) check_case(row);
}
TEST_CASE("published vectors: framing decision from an intent") {
  for (const auto& row : intent_cases()) check_case(row);
}
TEST_CASE("published vectors: canvas template, end to end") {
  for (const auto& row : template_cases()) check_case(row);
}

}  // namespace widegate::fdl
