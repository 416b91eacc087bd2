// The mirror as JSON: read back by a JSON library, with hostile text in it.
#include "web/door/mirror_text.h"

#include <doctest/doctest.h>

#include <limits>
#include <nlohmann/json.hpp>
#include <string>

namespace widegate {
namespace {

using nlohmann::json;

constexpr const char* kHostile = "\"</script>\\ \n\t\x01 \xC2\xB0 \xE2\x80\xA8 {}[],:";

Mirror example() {
  Mirror mirror;
  mirror.title = kHostile;
  mirror.message = "damaged";
  mirror.sections.push_back({.id = "cover",
                             .title = "Cover",
                             .question = "?",
                             .has_verdict = true,
                             .severity = Severity::fail,
                             .verdict = kHostile,
                             .notes = {"Fine: a", "Caution: b"}});
  Control control;
  control.id = "/lens/focal_mm";
  control.kind = ControlKind::slider;
  control.section = "cover";
  control.min = -0.125;
  control.max = std::numeric_limits<double>::infinity();
  control.value = 1.0 / 3;
  control.choices = {{"35", kHostile, ""}, {"50", "50 mm", "long"}};
  control.visible = true;
  control.rect = {1, 2, 3, 4};
  mirror.controls.push_back(control);
  control.id = "command:undo";
  control.kind = ControlKind::action;
  control.visible = false;
  control.pressed = true;
  mirror.controls.push_back(control);
  ResultRow row;
  row.key = "headline.fov";
  row.value_text = "42.1";
  row.unit = "\xC2\xB0";
  mirror.headline.push_back(row);
  mirror.working.title = "t";
  mirror.working.numbers = {"a", kHostile};
  mirror.lesson.working.source = kHostile;
  return mirror;
}

TEST_CASE("the text is JSON and gives every text back") {
  const json read = json::parse(mirror_text(example()), nullptr, false);
  REQUIRE_FALSE(read.is_discarded());
  CHECK(read["title"] == kHostile);
  CHECK(read["message"] == "damaged");
  CHECK(read["sections"][0]["verdict"] == kHostile);
  CHECK(read["sections"][0]["severity"] == "fail");
  CHECK(read["sections"][0]["notes"].size() == 2);
  CHECK(read["controls"].size() == 2);
  CHECK(read["controls"][0]["kind"] == "slider");
  CHECK(read["controls"][0]["choices"][0]["label"] == kHostile);
  CHECK(read["controls"][1]["pressed"] == true);
  CHECK(read["headline"][0]["unit"] == "\xC2\xB0");
  CHECK(read["working"]["numbers"][1] == kHostile);
  CHECK(read["lesson"]["working"]["source"] == kHostile);
}

TEST_CASE("numbers keep fifteen digits; what JSON cannot say is 0") {
  const json read = json::parse(mirror_text(example()));
  CHECK(read["controls"][0]["min"].get<double>() == -0.125);
  CHECK(read["controls"][0]["value"].get<double>() == doctest::Approx(1.0 / 3).epsilon(1e-14));
  CHECK(read["controls"][0]["max"] == 0);
}

TEST_CASE("an empty mirror is a whole document too") {
  const json read = json::parse(mirror_text({}), nullptr, false);
  REQUIRE_FALSE(read.is_discarded());
  CHECK(read["controls"].empty());
}

TEST_CASE("rectangles follow the controls; what is not in sight has none") {
  const auto rects = rects_of(example());
  CHECK(rects == std::vector<float>{1, 2, 3, 4, 0, 0, 0, 0});
}

TEST_CASE("the text field's request, or null") {
  CHECK(entry_text(std::nullopt) == "null");
  TextRequest request;
  request.id = "/title";
  request.text = kHostile;
  request.rect = {1.5F, 2, 3, 4};
  const json read = json::parse(entry_text(request), nullptr, false);
  REQUIRE_FALSE(read.is_discarded());
  CHECK(read["text"] == kHostile);
  CHECK(read["x"].get<double>() == 1.5);
  CHECK(read["numeric"] == false);
}

}  // namespace
}  // namespace widegate
