// Plans to framing decision lists and back, over every sensor mode of the built-in library.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "core/catalogue/catalogue_json.h"
#include "core/handover/fdl/apply_document.h"
#include "core/handover/fdl/effective_area.h"
#include "core/handover/fdl/plan_export.h"
#include "core/handover/fdl/plan_import.h"
#include "core/handover/fdl/read.h"
#include "core/handover/fdl/template_library.h"
#include "core/handover/fdl/write.h"
#include "core/optics/mode_geometry.h"
#include "core/plan/plan_check.h"
#include "core/report/evaluate.h"
#include "tests/core/handover/fdl/dice.h"
#include "tests/core/handover/fdl/sample.h"
#include "tests/core/support/random_plans.h"

namespace widegate::fdl {
namespace {

const Catalogue& library() {
  static const Catalogue kLibrary = [] {
    auto catalogue = built_in_catalogue();
    REQUIRE(catalogue.has_value());
    return *catalogue;
  }();
  return kLibrary;
}

PlanExport export_or_fail(const Plan& plan) {
  const Report report = evaluate(plan, library());
  for (const Problem& problem : report.problems) MESSAGE(to_line(problem));
  auto result = export_plan(plan, library(), report);
  REQUIRE(result.has_value());
  return *result;
}

/// The export as a reader gets it: written and read again, without problem or warning.
Document exported(const Plan& plan) {
  const std::string text = write_document(export_or_fail(plan).document);
  const auto reading = read_document(text);
  if (!reading) {
    for (const Problem& problem : reading.error()) MESSAGE(to_line(problem));
  }
  REQUIRE(reading.has_value());
  for (const Problem& warning : reading->warnings) MESSAGE(to_line(warning));
  CHECK(reading->warnings.empty());
  return reading->document;
}

PlanImport import_or_fail(const Document& document, const Plan& current) {
  auto result = import_plan(document, current, library());
  if (!result) {
    for (const Problem& problem : result.error()) MESSAGE(to_line(problem));
  }
  REQUIRE(result.has_value());
  return *result;
}

/// The format with the mode's recording option and its first codec that works, or nothing.
std::optional<FormatChoice> format_of(const Plan& plan, const Camera& camera,
                                      const SensorMode& mode, const Recording& recording) {
  for (const std::string& codec : recording.codecs) {
    Plan trial = plan;
    trial.format = {camera.id, mode.id, recording.id, codec};
    if (check_plan(trial, library()).empty()) return trial.format;
  }
  return std::nullopt;
}

FrameLine random_line(Dice& dice, int index) {
  constexpr Rational kAspects[] = {Rational(239, 100), Rational(16, 9), Rational(37, 20),  2, 1,
                                   Rational(4, 3),     Rational(9, 16), Rational(276, 100)};
  constexpr AnchorKind kKinds[] = {AnchorKind::centre, AnchorKind::top, AnchorKind::common_top,
                                   AnchorKind::free};
  FrameLine line;
  line.name = "Line " + std::to_string(index);
  line.aspect = dice.pick(kAspects);
  if (dice.one_in(4)) line.aspect = Rational(dice.whole(100, 9999), dice.whole(1000, 1000));
  if (dice.one_in(2)) line.protection = Rational(dice.whole(0, 499), 1000);
  line.anchor.kind = dice.pick(kKinds);
  if (line.anchor.kind == AnchorKind::free) {
    line.anchor.x = Rational(dice.whole(-100, 100), 100);
    line.anchor.y = Rational(dice.whole(-33, 33), 33);
  }
  return line;
}

double largest_difference(const ExactRect& a, const ExactRect& b) {
  double most = 0;
  for (const auto side :
       {&ExactRect::left, &ExactRect::top, &ExactRect::width, &ExactRect::height}) {
    most = std::max(most, std::fabs((a.*side).to_double() - (b.*side).to_double()));
  }
  return most;
}

bool same_frames(const Plan& a, const Plan& b) {
  const Report left = evaluate(a, library());
  const Report right = evaluate(b, library());
  if (!left.problems.empty() || !right.problems.empty()) return false;
  if (left.frames.size() != right.frames.size()) return false;
  for (std::size_t i = 0; i < left.frames.size(); ++i) {
    const FrameReport& x = left.frames[i];
    const FrameReport& y = right.frames[i];
    if (x.name != y.name) return false;
    if (largest_difference(x.photosites, y.photosites) > 1e-9) return false;
    if (largest_difference(x.protected_photosites, y.protected_photosites) > 1e-9) return false;
  }
  return true;
}

Plan demo() {
  Plan plan;
  FrameLine& cinema = plan.deliverable.frame_lines.front();
  cinema.name = "Cinema";
  cinema.aspect = Rational(239, 100);
  cinema.protection = Rational(1, 20);
  FrameLine& broadcast = plan.deliverable.frame_lines.emplace_back();
  broadcast.name = "Broadcast";
  broadcast.aspect = Rational(16, 9);
  return plan;
}

}  // namespace

TEST_CASE("every mode of the library: exported plans keep the rules and come back the same") {
  Dice dice(42);
  int plans = 0;
  for (const Camera& camera : library().cameras) {
    for (const SensorMode& mode : camera.modes) {
      for (const Recording& recording : mode.recordings) {
        CAPTURE(camera.id);
        CAPTURE(mode.id);
        CAPTURE(recording.id);
        Plan plan;
        const auto format = format_of(plan, camera, mode, recording);
        if (!format) continue;
        plan.format = *format;
        constexpr Rational kSqueezes[] = {1, 2, Rational(9, 5), Rational(3, 2), Rational(133, 100)};
        plan.lens.squeeze = dice.pick(kSqueezes);
        plan.lens.image_circle_mm = dice.between(10, 80);
        plan.deliverable.frame_lines.clear();
        for (int i = 1; i <= static_cast<int>(dice.whole(1, 8)); ++i) {
          plan.deliverable.frame_lines.push_back(random_line(dice, i));
        }
        const PlanImport import = import_or_fail(exported(plan), Plan{});
        CHECK(same_frames(plan, import.plan));
        ++plans;
      }
    }
  }
  CHECK(plans > 30);
}

TEST_CASE("random plans, with cameras of their own, come back with the same frame lines") {
  testing::Dice dice(1917);
  int exchanged = 0;
  for (int i = 0; i < 500; ++i) {
    CAPTURE(i);
    const Plan plan = testing::random_plan(dice, library());
    // A frame of a random codec may be larger than a random card: nothing to exchange.
    if (!evaluate(plan, library()).problems.empty()) continue;
    Plan current;
    current.own = plan.own;
    current.store = plan.store;
    CHECK(same_frames(plan, import_or_fail(exported(plan), current).plan));
    ++exchanged;
  }
  CHECK(exchanged > 450);
}

TEST_CASE("intents, canvases and decisions of an export") {
  Plan plan = demo();
  plan.lens.squeeze = 2;
  const Report report = evaluate(plan, library());
  const Document document = exported(plan);
  CHECK(document.fdl_creator == "Widegate");
  CHECK(document.default_framing_intent == "line_1");
  const auto& intents = rows(document.framing_intents);
  REQUIRE(intents.size() == 2);
  CHECK(intents[0].label == "Cinema");
  CHECK(intents[0].aspect_ratio == WholeSizeField{{239, 100}, {}});
  CHECK(intents[0].protection == 0.05);
  const Camera& camera = *find_row(library().cameras, plan.format.camera);
  const SensorMode& mode = *find_row(camera.modes, plan.format.mode);
  REQUIRE(rows(document.contexts).size() == 1);
  const auto& canvases = rows(document.contexts->front().canvases);
  const Canvas& gate = canvases.front();
  CHECK(gate.source_canvas_id == gate.id);
  CHECK(gate.dimensions == WholeSizeField{{mode.width_photosites, mode.height_photosites}, {}});
  CHECK(gate.photosite_dimensions == gate.dimensions);
  CHECK(gate.physical_dimensions->width == doctest::Approx(mode.width_mm).epsilon(1e-5));
  CHECK(gate.anamorphic_squeeze == 2.0);
  const auto& decisions = rows(gate.framing_decisions);
  REQUIRE(decisions.size() == 2);
  CHECK(decisions[0].id == gate.id + "-line_1");
  const ExactRect& frame = report.frames[0].photosites;
  CHECK(decisions[0].dimensions ==
        SizeField{{frame.width.to_double(), frame.height.to_double()}, {}});
  CHECK(decisions[0].anchor_point ==
        PointField{{frame.left.to_double(), frame.top.to_double()}, {}});
  CHECK(decisions[0].protection_dimensions.has_value());
  CHECK_FALSE(decisions[1].protection_dimensions.has_value());
}

TEST_CASE("every raster of the mode is a canvas derived from the mode's, the chosen one first") {
  for (const Camera& camera : library().cameras) {
    for (const SensorMode& mode : camera.modes) {
      CAPTURE(camera.id);
      CAPTURE(mode.id);
      Plan plan = demo();
      const auto format = format_of(plan, camera, mode, mode.recordings.back());
      if (!format) continue;
      plan.format = *format;
      plan.lens.squeeze = 2;
      const Report report = evaluate(plan, library());
      const Document document = exported(plan);
      const auto& canvases = rows(document.contexts->front().canvases);
      const Geometry last = make_geometry(mode, mode.recordings.back(), 2);
      for (std::size_t i = 1; i < canvases.size(); ++i) {
        CHECK(canvases[i].source_canvas_id == canvases[0].id);
        CHECK_FALSE(canvases[i].photosite_dimensions.has_value());
        CHECK_FALSE(canvases[i].physical_dimensions.has_value());
      }
      const bool own_raster = last.recorded_width_pixels != mode.width_photosites ||
                              last.recorded_height_pixels != mode.height_photosites ||
                              last.in_camera_desqueeze != Rational(1);
      const Canvas& chosen = canvases[own_raster ? 1 : 0];
      CHECK(chosen.dimensions.width == last.recorded_width_pixels);
      CHECK(chosen.dimensions.height == last.recorded_height_pixels);
      CHECK(chosen.anamorphic_squeeze == (Rational(2) / last.in_camera_desqueeze).to_double());
      const PixelRect& pixels = report.frames[0].pixels;
      const FramingDecision& decision = rows(chosen.framing_decisions)[0];
      CHECK(decision.dimensions.width == doctest::Approx(pixels.width).epsilon(1e-14));
      CHECK(decision.anchor_point.y == doctest::Approx(pixels.top).epsilon(1e-14));
    }
  }
}

TEST_CASE("effective dimensions: none when covered or unknown, inside the circle otherwise") {
  Plan plan = demo();
  plan.lens.image_circle_mm = 100;
  CHECK_FALSE(rows(exported(plan).contexts->front().canvases)[0].effective_dimensions.has_value());
  plan.lens.set.clear();
  plan.lens.image_circle_mm.reset();
  CHECK_FALSE(rows(exported(plan).contexts->front().canvases)[0].effective_dimensions.has_value());

  const Report wide = evaluate(plan, library());
  plan.lens.image_circle_mm = wide.mode.diagonal_mm * 0.97;
  const Canvas canvas = rows(exported(plan).contexts->front().canvases)[0];
  REQUIRE(canvas.effective_dimensions.has_value());
  const double width_mm = static_cast<double>(canvas.effective_dimensions->width) *
                          wide.mode.width_mm / static_cast<double>(wide.mode.width_photosites);
  const double height_mm = static_cast<double>(canvas.effective_dimensions->height) *
                           wide.mode.height_mm / static_cast<double>(wide.mode.height_photosites);
  const double diagonal = std::sqrt(width_mm * width_mm + height_mm * height_mm);
  CHECK(diagonal <= *plan.lens.image_circle_mm);
  CHECK(diagonal > *plan.lens.image_circle_mm - 0.02);

  plan.lens.image_circle_mm = 10;
  const PlanExport dark = export_or_fail(plan);
  CHECK_FALSE(rows(dark.document.contexts->front().canvases)[0].effective_dimensions.has_value());
  CHECK(dark.remarks.size() == 1);
}

TEST_CASE("the lit rectangle, by hand") {
  // Circle 5 on a 4 x 3 mode: just covers. 4.9: between the need and the mode, nearest to 4.9/sqrt
  // 2 = 3.4648 is the width at full height, sqrt(4.9^2 - 3^2) = 3.8742.
  const auto covered = effective_share({4, 3, 5, 4, 3});
  REQUIRE(covered.has_value());
  CHECK(covered->width == doctest::Approx(1));
  CHECK(covered->height == doctest::Approx(1));
  const auto full_height = effective_share({4, 3, 4.9, 2, 1});
  CHECK(full_height->width == doctest::Approx(std::sqrt(4.9 * 4.9 - 9) / 4));
  CHECK(full_height->height == doctest::Approx(1));
  // A frame 3.95 wide needs that width; sqrt(4.9^2 - 3.95^2) = 2.8994 high.
  const auto wide = effective_share({4, 3, 4.9, 3.95, 1.5});
  CHECK(wide->width == doctest::Approx(3.95 / 4));
  CHECK(wide->height == doctest::Approx(std::sqrt(4.9 * 4.9 - 3.95 * 3.95) / 3));
  CHECK_FALSE(effective_share({4, 3, 4, 3.95, 1.5}).has_value());
  CHECK(effective_side(0.5, 4001, 1000.2) == 2000);
  CHECK(effective_side(0.5, 4001, 2000.2) == 2001);
  CHECK(effective_side(1, 4001, 4001) == 4001);
}

TEST_CASE("every delivery applies to every mode of the library and gives its raster") {
  const std::vector<std::pair<std::string, Size>> fixed = {{"UHD", {3840, 2160}},
                                                           {"SCOPE_4K", {4096, 1716}},
                                                           {"FLAT_4K", {3996, 2160}},
                                                           {"HD_PROXY", {1920, 1080}}};
  for (const Camera& camera : library().cameras) {
    for (const SensorMode& mode : camera.modes) {
      CAPTURE(camera.id);
      CAPTURE(mode.id);
      Plan plan = demo();
      const auto format = format_of(plan, camera, mode, mode.recordings.front());
      if (!format) continue;
      plan.format = *format;
      plan.lens.squeeze = 2;
      const Document source = exported(plan);
      const Canvas& gate = rows(source.contexts->front().canvases)[0];
      const Document templates = template_document(delivery_templates(gate));
      CHECK(read_document(write_document(templates)).value().warnings.empty());
      REQUIRE(rows(templates.canvas_templates).size() == fixed.size() + 1);
      for (const auto& [id, raster] : fixed) {
        ApplyChoice choice;
        choice.canvas_template = id;
        const auto applied = apply_to_document(source, templates, choice);
        REQUIRE(applied.has_value());
        CHECK(applied->numbers.layers.canvas == raster);
        CHECK(applied->numbers.squeeze == 1);
        CHECK(read_document(write_document(applied->document)).value().warnings.empty());
      }
      ApplyChoice pull;
      pull.canvas_template = "VFX_PULL";
      const auto applied = apply_to_document(source, templates, pull);
      REQUIRE(applied.has_value());
      CHECK(applied->numbers.layers.canvas == to_size(gate.dimensions));
      CHECK(applied->numbers.scale.value() == 1);
      const Size framing = rows(gate.framing_decisions)[0].dimensions;
      CHECK(applied->numbers.layers.framing.size.width ==
            doctest::Approx(framing.width).epsilon(1e-14));
      CHECK(applied->numbers.layers.framing.size.height ==
            doctest::Approx(framing.height).epsilon(1e-14));
    }
  }
}

TEST_CASE("a plan with problems is not exported") {
  Plan plan = demo();
  plan.format.mode = "no such mode";
  const Report report = evaluate(plan, library());
  const auto result = export_plan(plan, library(), report);
  REQUIRE_FALSE(result.has_value());
  CHECK(result.error() == report.problems);
}

TEST_CASE("a foreign document: what it says is taken, the rest is kept and listed") {
  Plan current = demo();
  current.title = "kept";
  const std::string text = patched(kSample, R"([
      {"op":"add","path":"/contexts/0/clip_id","value":{"clip_name":"A1"}},
      {"op":"add","path":"/contexts/0/canvases/0/photosite_dimensions",
       "value":{"width":12345,"height":999}},
      {"op":"replace","path":"/contexts/0/canvases/0/anamorphic_squeeze","value":1.8},
      {"op":"add","path":"/framing_intents/-",
       "value":{"id":"TALL","aspect_ratio":{"width":1,"height":99}}},
      {"op":"add","path":"/framing_intents/-",
       "value":{"label":"social","id":"SQUARE","aspect_ratio":{"width":1,"height":1}}}])");
  const PlanImport import = import_or_fail(read_or_fail(text), current);
  CHECK(import.plan.title == "kept");
  CHECK(import.plan.format == current.format);
  CHECK(import.plan.lens.squeeze == Rational(9, 5));
  REQUIRE(import.plan.deliverable.frame_lines.size() == 2);
  // 4096 x 1714 in a 1.8x canvas is 4.30:1; the intent says 2.39.
  CHECK(import.plan.deliverable.frame_lines[0].aspect.to_double() ==
        doctest::Approx(4096 * 1.8 / 1714).epsilon(1e-6));
  CHECK(import.plan.deliverable.frame_lines[1].name == "social");
  std::vector<std::string> left;
  for (const ImportNote& note : import.left) left.push_back(note.pointer);
  const std::vector<std::string> expected = {
      "/contexts/0/canvases/0/photosite_dimensions", "/contexts/0/canvases/0/framing_decisions/0",
      "/framing_intents/1", "/framing_intents/2", "/contexts/0/clip_id"};
  CHECK(left == expected);
}

TEST_CASE("a decision rounded to even pixels gives its intent's frame line") {
  const PlanImport import = import_or_fail(read_or_fail(kSample), Plan{});
  REQUIRE(import.plan.deliverable.frame_lines.size() == 1);
  const FrameLine& line = import.plan.deliverable.frame_lines[0];
  CHECK(line.aspect == Rational(239, 100));
  CHECK(line.protection == Rational(0));
  CHECK(line.anchor == Anchor{});
  CHECK(line.name == "wide");
}

TEST_CASE("a box smaller than its intent says becomes protection; an odd place is remarked on") {
  const std::string text = patched(kSample, R"([
      {"op":"replace","path":"/contexts/0/canvases/0/framing_decisions/0/dimensions",
       "value":{"width":3072.0,"height":1285.4}},
      {"op":"replace","path":"/contexts/0/canvases/0/framing_decisions/0/anchor_point",
       "value":{"x":0.0,"y":0.0}}])");
  const PlanImport import = import_or_fail(read_or_fail(text), Plan{});
  const FrameLine& line = import.plan.deliverable.frame_lines[0];
  CHECK(line.protection == Rational(1, 4));
  // The protected area is as wide as the canvas and 4096 / 2.39 = 1713.8 high, so the plan cannot
  // move the line into the corner: (4096 - 3072) / 2 = 512 and (1713.8 - 1285.4) / 2 = 214.2 off.
  CHECK(line.anchor.kind == AnchorKind::top);
  const auto moved = std::find_if(import.left.begin(), import.left.end(), [](const auto& note) {
    return note.text.find("512.0 pixels across and 214.2 down") != std::string::npos;
  });
  CHECK(moved != import.left.end());
}

TEST_CASE("the default intent becomes the main frame line; at most eight are taken") {
  std::string patch = R"([{"op":"add","path":"/default_framing_intent","value":"I9"})";
  for (int i = 1; i <= 9; ++i) {
    const std::string id = std::to_string(i);
    patch += R"(,{"op":"add","path":"/framing_intents/-","value":{"id":"I)" + id +
             R"(","aspect_ratio":{"width":)" + std::to_string(10 + i) + R"(,"height":10}}})";
  }
  const PlanImport import = import_or_fail(read_or_fail(patched(kSample, patch + "]")), Plan{});
  REQUIRE(import.plan.deliverable.frame_lines.size() == 8);
  CHECK(import.plan.deliverable.frame_lines[0].name == "I9");
  CHECK(import.plan.deliverable.frame_lines[1].name == "wide");
}

TEST_CASE("a list without intents is refused") {
  const Document document = read_or_fail(
      R"({"uuid": "0f8fad5b-d9cb-469f-a165-70867728950e", "version": {"major": 2, "minor": 0}})");
  const auto result = import_plan(document, Plan{}, library());
  REQUIRE_FALSE(result.has_value());
  CHECK(result.error().front().pointer == "/framing_intents");
}

}  // namespace widegate::fdl
