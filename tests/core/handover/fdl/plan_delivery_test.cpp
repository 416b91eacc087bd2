// A plan delivered: figures against the applied template, what is padded, cut, enlarged, dropped;
// and the table of editable template fields.
#include "core/handover/fdl/plan_delivery.h"

#include <doctest/doctest.h>

#include <string>

#include "core/catalogue/catalogue_json.h"
#include "core/handover/fdl/read.h"
#include "core/handover/fdl/template_fields.h"
#include "core/handover/fdl/write.h"
#include "core/report/evaluate.h"

using namespace widegate;
using namespace widegate::fdl;

namespace {

Delivery made(const DeliveryChoice& choice, const Plan& plan = {}) {
  static const Catalogue library = built_in_catalogue().value();
  const Report report = evaluate(plan, library);
  auto result = deliver(plan, library, report, choice);
  REQUIRE(result.has_value());
  return std::move(*result);
}

bool warns(const Delivery& delivery, std::string_view part) {
  for (const DeliveryNote& note : delivery.notes) {
    if (note.text.find(part) != std::string::npos) return true;
  }
  return false;
}

}  // namespace

TEST_CASE("picture and padding make up the canvas") {
  AppliedTemplate applied;
  applied.layers.canvas = {1920, 1080};
  applied.bounding_box = {1920, 803.4375};
  applied.translation = {0, 138.28125};
  const Box picture = picture_on_canvas(applied);
  CHECK(picture == Box{{0, 138.28125}, {1920, 803.4375}});
  applied.bounding_box = {4416, 2484};
  applied.translation = {-320, -84};
  CHECK(picture_on_canvas(applied) == Box{{0, 0}, {1920, 1080}});
  applied.translation = {2000, 0};
  CHECK(picture_on_canvas(applied).size.width == 0);
}

TEST_CASE("what a delivery loses is said") {
  DeliveryChoice choice;
  choice.canvas_template = kOwnTemplate;
  Plan plan;
  plan.deliverable.frame_lines.front().protection = Rational(1, 20);
  CHECK(warns(made(choice, plan), "protection is not in the result"));
  choice.own.preserve_from_source_canvas = Layer::canvas;
  CHECK_FALSE(warns(made(choice, plan), "protection is not in the result"));
  choice.own.target_dimensions = {{16000, 9000}, {}};
  CHECK(warns(made(choice, plan), "enlarged"));
  choice.own.target_dimensions = {{2000, 1000}, {}};
  choice.own.maximum_dimensions = WholeSizeField{{1500, 700}, {}};
  CHECK(warns(made(choice, plan), "cut off"));
  CHECK(warns(made(choice, plan), "of the framing's width"));
}

TEST_CASE("the delivered document keeps the rules and has the figures' canvas") {
  for (const char* id : {"UHD", "SCOPE_4K", "FLAT_4K", "HD_PROXY", "VFX_PULL", "OWN"}) {
    CAPTURE(id);
    DeliveryChoice choice;
    choice.canvas_template = id;
    const Delivery delivery = made(choice);
    CHECK(delivery.chosen.id == id);
    const auto document = delivered_document(delivery);
    REQUIRE(document.has_value());
    const auto again = read_document(write_document(*document));
    REQUIRE(again.has_value());
    CHECK(again->warnings.empty());
    const Canvas& canvas = rows(document->contexts).front().canvases->back();
    CHECK(canvas.source_canvas_id == delivery.canvas_id);
    CHECK(to_size(canvas.dimensions) == delivery.applied.layers.canvas);
  }
}

TEST_CASE("every template field reads back what it took, and refuses the rest") {
  CanvasTemplate entry = usual_own_template();
  entry.maximum_dimensions = WholeSizeField{{4096, 2160}, {}};
  for (const TemplateField& field : template_fields()) {
    CAPTURE(field.key);
    CHECK(with_template_field(entry, field.key, field.read(entry)).has_value());
    CHECK_FALSE(with_template_field(entry, field.key, "no such").has_value());
    if (field.kind == TemplateFieldKind::choice) {
      for (const TemplateOption& option : field.options) {
        const auto changed = with_template_field(entry, field.key, option.value);
        REQUIRE(changed.has_value());
        CHECK(field.read(*changed) == option.value);
      }
    } else if (field.kind != TemplateFieldKind::flag) {
      for (const double bad : {field.low / 2, field.high + 1, -1.0}) {
        CHECK_FALSE(with_template_field(entry, field.key, std::to_string(bad)).has_value());
      }
      for (const TemplateOption& option : field.options) {
        CHECK(with_template_field(entry, field.key, option.value).has_value());
      }
    }
  }
  CHECK_FALSE(with_template_field(entry, "id", "X").has_value());
  const auto none = with_template_field(entry, "maximum_dimensions", "false");
  REQUIRE(none.has_value());
  CHECK_FALSE(none->maximum_dimensions.has_value());
}
