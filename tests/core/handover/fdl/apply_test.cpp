// Canvas templates worked by hand, for what the published vectors leave open: squeezes other than 1
// on the output, clipping at a negative exact anchor, odd maxima, rounding against a maximum,
// preserve inside fit source, defaults, binary noise, and refusals.
#include "core/handover/fdl/apply_template.h"

#include <doctest/doctest.h>

#include "tests/core/handover/fdl/vector_cases.h"

namespace widegate::fdl {
namespace {

constexpr RoundRule kEvenUp{Parity::even, RoundMode::up};
constexpr RoundRule kEvenDown{Parity::even, RoundMode::down};
constexpr const char* kCanvas = "canvas.dimensions";
constexpr const char* kFraming = "framing_decision.dimensions";

// Layers stand as canvas, effective area, protection, framing; a box as anchor, size. The comments
// carry the arithmetic: n/d is the scale, x' = x * si * n / (d * so).
const TemplateCase kByHand[] = {
    // n/d = 2048*2 / 4096 = 1; across 4096 * 1 / 2 = 2048.
    {"spherical source, 2x output",
     {{4096, 1716}, {}, {}, {{48, 58}, {4000, 1600}}},
     1,
     {2048, 1716},
     2,
     kCanvas,
     "width",
     "center",
     "center",
     "",
     {},
     false,
     kEvenUp,
     1,
     {2048, 1716},
     {0, 0},
     {{2048, 1716}, {{0, 0}, {2048, 1716}}, {}, {{24, 58}, {2000, 1600}}}},
    // Output squeeze 0 keeps 2: n/d = 1712*2 / (3424*2) = 1/2.
    {"output squeeze 0 keeps the source's",
     {{3424, 2860}, {}, {}, {{0, 0}, {3424, 2860}}},
     2,
     {1712, 0},
     0,
     kFraming,
     "width",
     "center",
     "center",
     "",
     {},
     false,
     kEvenUp,
     0.5,
     {1712, 1430},
     {0, 0},
     {{1712, 1430}, {{0, 0}, {1712, 1430}}, {}, {{0, 0}, {1712, 1430}}}},
    // n/d = 3600*1.5 / (3000*1.8) = 1; across 3000 * 1.8 / 1.5 = 3600.
    {"1.8x source, 1.5x output",
     {{3000, 2000}, {}, {}, {{300, 200}, {2400, 1600}}},
     1.8,
     {3600, 0},
     1.5,
     kCanvas,
     "width",
     "center",
     "center",
     "",
     {},
     false,
     kEvenUp,
     1,
     {3600, 2000},
     {0, 0},
     {{3600, 2000}, {{0, 0}, {3600, 2000}}, {}, {{360, 200}, {2880, 1600}}}},
    // Scale 1. Across 4000 > 3000: offset (3000-4000)/2 = -500. Protection starts 500 left of the
    // output, so 2400 - 500 = 1900 of it is left; framing 2000 - 500 = 1500.
    {"crop cuts what lies left of the output",
     {{4000, 2000}, {}, {{0, 400}, {2400, 1200}}, {{0, 500}, {2000, 1000}}},
     1,
     {4000, 2000},
     1,
     kCanvas,
     "width",
     "center",
     "center",
     "",
     {3000, 2000},
     false,
     kEvenUp,
     1,
     {4000, 2000},
     {-500, 0},
     {{3000, 2000}, {{0, 0}, {3000, 2000}}, {{0, 400}, {1900, 1200}}, {{0, 500}, {1500, 1000}}}},
    // Scale 1/2: 2000 x 1000 cut to 1919 x 979; set to the maximum, so it stays odd.
    {"an odd maximum stays odd",
     {{4000, 2000}, {}, {}, {{0, 0}, {4000, 2000}}},
     1,
     {2000, 1000},
     1,
     kCanvas,
     "width",
     "left",
     "top",
     "",
     {1919, 979},
     false,
     kEvenUp,
     0.5,
     {2000, 1000},
     {0, 0},
     {{1919, 979}, {{0, 0}, {1919, 979}}, {}, {{0, 0}, {1919, 979}}}},
    // Scale 1921/4000: 1921 x 960.5 fits the maximum; even and up would be 1922 x 962, held at
    // 1921 x 961. Down grows by 0.5, half above the picture.
    {"rounding up stops at the maximum",
     {{4000, 2000}, {}, {}, {{0, 0}, {4000, 2000}}},
     1,
     {1921, 0},
     1,
     kCanvas,
     "width",
     "center",
     "center",
     "",
     {1921, 961},
     false,
     kEvenUp,
     0.48025,
     {1921, 960.5},
     {0, 0.25},
     {{1921, 961}, {{0, 0}, {1921, 961}}, {}, {{0, 0.25}, {1921, 960.5}}}},
    // Preserving the framing of a fitted canvas would drop the canvas; the canvas wins.
    {"preserve inside the fit source is ignored",
     {{4000, 2000}, {}, {}, {{500, 250}, {2000, 1000}}},
     1,
     {2000, 0},
     1,
     kCanvas,
     "width",
     "center",
     "center",
     kFraming,
     {},
     false,
     kEvenUp,
     0.5,
     {2000, 1000},
     {0, 0},
     {{2000, 1000}, {{0, 0}, {2000, 1000}}, {}, {{250, 125}, {1000, 500}}}},
    // Everything kept, scale 1620/3240 = 1/2.
    {"four layers, off centre, whole canvas preserved",
     {{5000, 3000},
      {{200, 300}, {4000, 2500}},
      {{400, 800}, {3600, 1500}},
      {{580, 875}, {3240, 1350}}},
     1,
     {1620, 0},
     1,
     kFraming,
     "width",
     "center",
     "center",
     kCanvas,
     {},
     false,
     kEvenUp,
     0.5,
     {2500, 1500},
     {0, 0},
     {{2500, 1500},
      {{100, 150}, {2000, 1250}},
      {{200, 400}, {1800, 750}},
      {{290, 437.5}, {1620, 675}}}},
    // Scale 1215/3240 = 3/8: 1875 x 1125, down to 1874 x 1124: everything moves by -1/2. Effective
    // height 937.5 becomes 938, a quarter of a pixel further up.
    {"four layers, rounded down",
     {{5000, 3000},
      {{200, 300}, {4000, 2500}},
      {{400, 800}, {3600, 1500}},
      {{580, 875}, {3240, 1350}}},
     1,
     {1215, 0},
     1,
     kFraming,
     "width",
     "center",
     "center",
     kCanvas,
     {},
     false,
     kEvenDown,
     0.375,
     {1875, 1125},
     {-0.5, -0.5},
     {{1874, 1124},
      {{74.5, 111.75}, {1500, 938}},
      {{149.5, 299.5}, {1350, 562.5}},
      {{217, 327.625}, {1215, 506.25}}}},
    // Scale 1. Target in the middle of the maximum: offsets 500 and 250, less the framing's anchor.
    // The canvas reaches beyond the output on all sides and is cut to it.
    {"padding to a maximum smaller than the preserved canvas",
     {{4000, 2000}, {}, {}, {{1000, 500}, {2000, 1000}}},
     1,
     {2000, 1000},
     1,
     kFraming,
     "width",
     "left",
     "top",
     kCanvas,
     {3000, 1500},
     true,
     kEvenUp,
     1,
     {4000, 2000},
     {-500, -250},
     {{3000, 1500}, {{0, 0}, {3000, 1500}}, {}, {{500, 250}, {2000, 1000}}}},
};

/// A framing as wide as its canvas, fitted by width: what rounding makes of the canvas.
AppliedTemplate width_fit(double canvas_width, double squeeze, std::int64_t target,
                          RoundRule rule) {
  TemplateCase row{};
  row.source = {{canvas_width, 2000}, {}, {}, {{0, 0}, {canvas_width, 2000}}};
  row.source_squeeze = squeeze;
  row.target = {target, 0};
  row.target_squeeze = 1;
  row.fit_source = kFraming;
  row.fit_method = "width";
  row.horizontal = row.vertical = "center";
  row.rule = rule;
  const auto applied = apply_template(template_of(row), canvas_of(row), decision_of(row));
  REQUIRE(applied.has_value());
  return *applied;
}

/// A valid row to break in one way.
TemplateCase plain() { return kByHand[7]; }

Problems refusal(const CanvasTemplate& entry, const TemplateCase& source) {
  const auto applied = apply_template(entry, canvas_of(source), decision_of(source));
  REQUIRE_FALSE(applied.has_value());
  return applied.error();
}

}  // namespace

TEST_CASE("canvas templates worked by hand") {
  for (const TemplateCase& row : kByHand) check_case(row);
}

TEST_CASE("binary noise does not cost two pixels") {
  // 4448 * 1.3 * 3840 / (4448 * 1.3) is 3840.0000000000005 in double precision,
  // 4320 * 1.33 * 3840 / (4320 * 1.33) is 3839.9999999999995.
  REQUIRE(4448 * 1.3 * 3840 / (4448 * 1.3) > 3840);
  REQUIRE(4320 * 1.33 * 3840 / (4320 * 1.33) < 3840);
  const AppliedTemplate above = width_fit(4448, 1.3, 3840, kEvenUp);
  CHECK(above.layers.canvas.width == 3840);
  CHECK(above.layers.effective.size.width == 3840);
  CHECK(above.layers.effective.anchor.x == 0);
  CHECK(above.layers.framing.size.width == 3840);
  CHECK(above.translation.x == 0);
  const AppliedTemplate below = width_fit(4320, 1.33, 3840, kEvenDown);
  CHECK(below.layers.canvas.width == 3840);
  CHECK(below.layers.effective.size.width == 3840);
  CHECK(below.layers.framing.size.width == doctest::Approx(3840).epsilon(1e-15));
  CHECK(below.translation.x == 0);
}

TEST_CASE("defaults: centred, even and up, no maximum, no padding") {
  TemplateCase row = kByHand[8];
  CanvasTemplate entry = template_of(row);
  entry.round = RoundField{kEvenUp, {}};
  const auto explicit_result = apply_template(entry, canvas_of(row), decision_of(row));
  entry.round.reset();
  entry.alignment_method_horizontal.reset();
  entry.alignment_method_vertical.reset();
  entry.pad_to_maximum.reset();
  const auto default_result = apply_template(entry, canvas_of(row), decision_of(row));
  REQUIRE(explicit_result.has_value());
  REQUIRE(default_result.has_value());
  CHECK(explicit_result->layers == default_result->layers);
  CHECK(default_result->layers.canvas == Size{1876, 1126});
}

TEST_CASE("padding without a maximum does nothing") {
  TemplateCase row = plain();
  row.pad = true;
  const auto padded = apply_template(template_of(row), canvas_of(row), decision_of(row));
  REQUIRE(padded.has_value());
  CHECK(padded->layers == plain().expected);
}

TEST_CASE("a source pixel lands where the framing says") {
  for (const TemplateCase& row : kByHand) {
    CAPTURE(row.name);
    const auto applied = apply_template(template_of(row), canvas_of(row), decision_of(row));
    REQUIRE(applied.has_value());
    const Point corner{row.source.framing.anchor.x + row.source.framing.size.width,
                       row.source.framing.anchor.y + row.source.framing.size.height};
    const Point landed = landing(*applied, corner);
    const Box& framing = applied->layers.framing;
    CHECK(landed.x >= framing.anchor.x + framing.size.width - 1e-9);
    CHECK(landed.y >= framing.anchor.y + framing.size.height - 1e-9);
  }
  const auto applied =
      apply_template(template_of(plain()), canvas_of(plain()), decision_of(plain()));
  CHECK(landing(*applied, {580, 875}) == Point{290, 437.5});
}

TEST_CASE("a layer the source does not have is refused, not replaced") {
  TemplateCase row = plain();
  row.source.effective = {};
  row.source.protection = {};
  CanvasTemplate entry = template_of(row);
  entry.fit_source = Layer::effective;
  entry.preserve_from_source_canvas = Layer::protection;
  const Problems problems = refusal(entry, row);
  REQUIRE(problems.size() == 2);
  CHECK(problems[0].pointer == "/fit_source");
  CHECK(problems[0].value == "\"canvas.effective_dimensions\"");
  CHECK(problems[1].pointer == "/preserve_from_source_canvas");
}

TEST_CASE("a target side the fit method uses must be above zero") {
  CanvasTemplate entry = template_of(plain());
  entry.target_dimensions = {{0, 0}, {}};
  entry.fit_method = FitMethod::width;
  CHECK(refusal(entry, plain()).front().pointer == "/target_dimensions/width");
  entry.fit_method = FitMethod::height;
  CHECK(refusal(entry, plain()).front().pointer == "/target_dimensions/height");
  entry.fit_method = FitMethod::fit_all;
  CHECK(refusal(entry, plain()).size() == 2);
  entry.fit_method = FitMethod::fill;
  CHECK(refusal(entry, plain()).size() == 2);
}

TEST_CASE("a protection larger than the effective area is refused") {
  TemplateCase row = plain();
  row.source.protection.size.width = 4001;
  CHECK(refusal(template_of(row), row).front().pointer == "/fit_source");
}

TEST_CASE("a result that loses the framing, or is no canvas, is refused") {
  TemplateCase lost = kByHand[3];
  lost.source.framing = {{0, 500}, {400, 1000}};  // wholly left of the crop at 500
  lost.source.protection = {};
  CHECK(refusal(template_of(lost), lost).front().pointer == "/target_dimensions");
  TemplateCase tiny = plain();
  tiny.source.framing.size.width = 1e-300;
  CHECK(refusal(template_of(tiny), tiny).front().pointer == "/target_dimensions");
  TemplateCase huge = plain();
  huge.target = {2'147'483'647, 0};
  CHECK(refusal(template_of(huge), huge).front().pointer == "/target_dimensions");
  CanvasTemplate nothing = template_of(plain());
  nothing.target_dimensions = {{1, 0}, {}};
  nothing.round = RoundField{kEvenDown, {}};
  CHECK(refusal(nothing, plain()).front().pointer == "/target_dimensions");
}

}  // namespace widegate::fdl
