// What must hold for every valid input: nesting, containment, the maximum, the parity asked for,
// and where the picture lands; and that any document survives being written and read.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "core/handover/fdl/apply_template.h"
#include "core/handover/fdl/intent.h"
#include "core/handover/fdl/read.h"
#include "core/handover/fdl/vocabulary.h"
#include "core/handover/fdl/write.h"
#include "tests/core/handover/fdl/dice.h"
#include "tests/core/handover/fdl/sample.h"
#include "tests/core/handover/fdl/vector_cases.h"
#include "tests/core/support/rounds.h"

namespace widegate::fdl {
namespace {

constexpr double kTolerance = 1e-6;
constexpr double kSqueezes[] = {1, 1, 1, 1.25, 1.3, 1.33, 1.5, 1.65, 1.8, 2, 0.5};

int inputs_to_try() { return widegate::testing::rounds(20'000, 5'000); }

/// A box inside `outer`, sometimes flush with it.
Box box_inside(Dice& dice, const Box& outer, bool whole) {
  const double share = dice.one_in(3) ? 1 : dice.between(0.5, 1);
  Size size{outer.size.width * share, outer.size.height * (dice.one_in(2) ? share : 1)};
  if (whole) size = to_size(to_whole({std::floor(size.width), std::floor(size.height)}));
  return {{outer.anchor.x + (outer.size.width - size.width) * dice.between(0, 1),
           outer.anchor.y + (outer.size.height - size.height) * dice.between(0, 1)},
          size};
}

TemplateCase random_case(Dice& dice) {
  TemplateCase row{};
  row.source.canvas = {static_cast<double>(dice.whole(16, 9000)),
                       static_cast<double>(dice.whole(16, 9000))};
  Box parent{{}, row.source.canvas};
  if (dice.one_in(2)) parent = row.source.effective = box_inside(dice, parent, true);
  if (dice.one_in(2)) parent = row.source.protection = box_inside(dice, parent, false);
  row.source.framing = box_inside(dice, parent, false);
  row.source_squeeze = dice.pick(kSqueezes);
  row.target_squeeze = dice.one_in(6) ? 0 : dice.pick(kSqueezes);
  row.target = {dice.whole(16, 8192), dice.whole(16, 8192)};
  row.fit_method = std::string(dice.pick(kFitMethodWords).first);
  row.fit_source = std::string(dice.pick(kLayerWords).first);
  if (dice.one_in(2)) row.preserve = std::string(dice.pick(kLayerWords).first);
  row.horizontal = std::string(dice.pick(kHorizontalWords).first);
  row.vertical = std::string(dice.pick(kVerticalWords).first);
  if (dice.one_in(2)) {
    row.maximum = {dice.whole(row.target.width, 2 * row.target.width),
                   dice.whole(row.target.height, 2 * row.target.height)};
    row.pad = dice.one_in(2);
  }
  row.rule = {dice.pick(kParityWords).second, dice.pick(kRoundModeWords).second};
  return row;
}

bool named_layers_exist(const TemplateCase& row) {
  const CanvasTemplate entry = template_of(row);
  if (absent(layer_box(row.source, entry.fit_source).size)) return false;
  return !entry.preserve_from_source_canvas ||
         !absent(layer_box(row.source, *entry.preserve_from_source_canvas).size);
}

bool contains(const Box& outer, const Box& inner) {
  return inner.anchor.x >= outer.anchor.x - kTolerance &&
         inner.anchor.y >= outer.anchor.y - kTolerance &&
         inner.anchor.x + inner.size.width <= outer.anchor.x + outer.size.width + kTolerance &&
         inner.anchor.y + inner.size.height <= outer.anchor.y + outer.size.height + kTolerance;
}

bool nested(const Layers& layers) {
  const Box canvas{{}, layers.canvas};
  const bool protects = !absent(layers.protection.size);
  const Box& parent = protects ? layers.protection : layers.effective;
  return contains(canvas, layers.effective) &&
         (!protects || contains(layers.effective, layers.protection)) &&
         contains(parent, layers.framing);
}

/// One side of the canvas: whole, not above the maximum, of the parity asked for unless the maximum
/// set it.
bool side_is_right(double side, double maximum, RoundRule rule) {
  if (side != std::nearbyint(side)) return false;
  if (maximum > 0 && side >= maximum) return side == maximum;
  return rule.parity == Parity::whole || std::fmod(side, 2) == 0;
}

bool same_place(Point a, Point b) {
  return std::fabs(a.x - b.x) <= 1e-5 && std::fabs(a.y - b.y) <= 1e-5;
}

/// The framing's corner must land on the new framing's anchor, unless the framing was cut. Rounding
/// the canvas down may put the corner before the first pixel; the anchor then stays at 0.
bool lands(const AppliedTemplate& applied, const TemplateCase& row) {
  const Box& from = row.source.framing;
  const Box& to = applied.layers.framing;
  const Point corner = landing(applied, from.anchor);
  const double width =
      from.size.width * row.source_squeeze * applied.scale.value() / applied.squeeze;
  const double height = from.size.height * applied.scale.value();
  const bool cut = to.size.width < width - kTolerance || to.size.height < height - kTolerance;
  return cut || same_place({std::max(0.0, corner.x), std::max(0.0, corner.y)}, to.anchor);
}

}  // namespace

TEST_CASE("a template's result is nested, contained, within the maximum and in place") {
  Dice dice(20260228);
  int applied_count = 0;
  int refused = 0;
  const int inputs = inputs_to_try();
  while (applied_count + refused < inputs) {
    const TemplateCase row = random_case(dice);
    if (!named_layers_exist(row)) continue;
    const auto applied = apply_template(template_of(row), canvas_of(row), decision_of(row));
    if (!applied) {
      // Cutting, or rounding a tiny canvas down, may lose the framing; nothing else is refused
      // here.
      CHECK(applied.error().front().pointer == "/target_dimensions");
      CHECK((row.maximum != WholeSize{} || row.rule.mode != RoundMode::up));
      ++refused;
      continue;
    }
    ++applied_count;
    const Size maximum = to_size(row.maximum);
    const bool good = nested(applied->layers) && lands(*applied, row) &&
                      side_is_right(applied->layers.canvas.width, maximum.width, row.rule) &&
                      side_is_right(applied->layers.canvas.height, maximum.height, row.rule);
    if (!good) FAIL("input ", applied_count + refused);
  }
  CHECK(refused < inputs / 10);
}

TEST_CASE("an intent placed in an area stays in it, keeps its ratio and its protection") {
  Dice dice(7341);
  const int inputs = inputs_to_try();
  for (int i = 0; i < inputs; ++i) {
    const Box canvas{
        {}, {static_cast<double>(dice.whole(16, 9000)), static_cast<double>(dice.whole(16, 9000))}};
    const Box area = box_inside(dice, canvas, true);
    const IntentShape intent{{dice.whole(1, 300), dice.whole(1, 300)},
                             dice.one_in(2) ? 0 : dice.between(0, 0.9)};
    const double squeeze = dice.pick(kSqueezes);
    const DecisionBoxes exact = place_intent(intent, area, squeeze, std::nullopt);
    const Box& outer = exact.protection ? *exact.protection : exact.framing;
    const double ratio = outer.size.width * squeeze *
                         static_cast<double>(intent.aspect_ratio.height) /
                         (outer.size.height * static_cast<double>(intent.aspect_ratio.width));
    const RoundRule rule{dice.pick(kParityWords).second, dice.pick(kRoundModeWords).second};
    const DecisionBoxes whole = place_intent(intent, area, squeeze, rule);
    const bool good =
        contains(area, outer) && contains(outer, exact.framing) && std::fabs(ratio - 1) < 1e-12 &&
        (outer.size.width == area.size.width || outer.size.height == area.size.height) &&
        exact.protection.has_value() == (intent.protection > 0) &&
        contains(area, whole.protection.value_or(whole.framing)) &&
        contains(whole.protection.value_or(area), whole.framing);
    if (!good) FAIL("input ", i);
  }
}

TEST_CASE("any document comes back from its text unchanged") {
  Dice dice(99);
  const Document sample = read_or_fail(kSample);
  for (int i = 0; i < 5'000; ++i) {
    TemplateCase row = random_case(dice);
    if (row.target_squeeze == 0) row.target_squeeze = 1;
    Document document = sample;
    Canvas canvas = canvas_of(row);
    FramingDecision decision = decision_of(row);
    decision.framing_intent_id = sample.framing_intents->front().id;
    decision.id = decision_id(canvas.id, decision.framing_intent_id);
    decision.label = "caf\xc3\xa9 \"1\"\n\x01";
    canvas.framing_decisions = {decision};
    canvas.custom = {{"_steps", "[1,0.1,{\"a\":null}]"}};
    document.contexts->front().canvases->push_back(canvas);
    document.canvas_templates = {template_of(row)};
    if (!row.pad) document.canvas_templates->front().pad_to_maximum.reset();
    const auto again = read_document(write_document(document));
    if (!again || !(again->document == document)) FAIL("input ", i);
  }
}

}  // namespace widegate::fdl
