// The scene through the lens without a screen: which boxes are asked for, with which numbers, and
// the controls beside it.
#include <doctest/doctest.h>
#include <imgui.h>

#include <vector>

#include "tests/web/support/harness.h"
#include "web/door/scene_quad.h"

using namespace widegate;
using namespace widegate::test;

namespace {

void draw_nothing(const ImDrawList*, const ImDrawCmd*) {}

/// The quads of the last frame, in the order they are drawn.
std::vector<SceneQuad> quads() {
  std::vector<SceneQuad> found;
  for (const ImDrawList* list : ImGui::GetDrawData()->CmdLists) {
    for (const ImDrawCmd& command : list->CmdBuffer) {
      if (command.UserCallback != draw_nothing) continue;
      CHECK(command.UserCallbackDataSize == sizeof(SceneQuad));
      found.push_back(*static_cast<const SceneQuad*>(command.UserCallbackData));
    }
  }
  return found;
}

struct SceneScreen : Screen {
  explicit SceneScreen(const Device& device) : Screen(device) {
    ui.draw_scenes_with(draw_nothing);
    settle();
    ui.set("view:picture", "scene");
    settle();
  }
};

const std::vector<Device>& usual_devices() {
  static const std::vector<Device> kUsual = {devices()[2], devices()[3], devices()[4],
                                             devices()[6]};
  return kUsual;
}

}  // namespace

TEST_CASE("the sensor picture asks for no scene, the scene for one box inside the picture") {
  for (const Device& device : usual_devices()) {
    CAPTURE(device.name);
    SceneScreen screen(device);
    REQUIRE(quads().size() == 1);
    const SceneQuad quad = quads()[0];
    const RectPx area = screen.ui.mirror().surfaces.front();
    CHECK(quad.box.x >= area.x - 0.1F);
    CHECK(quad.box.x + quad.box.width <= area.x + area.width + 0.1F);
    CHECK(quad.box.y >= area.y - 0.1F);
    CHECK(quad.box.y + quad.box.height <= area.y + area.height + 0.1F);
    CHECK(quad.box.width / quad.box.height == doctest::Approx(4992.0 / 3744).epsilon(0.001));
    CHECK(quad.half_width_m == doctest::Approx(1.1418).epsilon(0.001));
    CHECK(quad.columns == 0);
    screen.ui.set("view:picture", "sensor");
    screen.settle();
    CHECK(quads().empty());
  }
}

TEST_CASE("de-squeezing slides, and jumps when less motion is wanted") {
  for (const bool reduced : {false, true}) {
    SceneScreen screen(devices()[3]);
    screen.input.reduced_motion = reduced;
    screen.ui.set("/lens/squeeze", "2");
    screen.settle();
    const auto aspect = [] { return quads().at(0).box.width / quads().at(0).box.height; };
    const float squeezed = aspect();
    screen.ui.set("view:desqueezed", "true");
    screen.frame();
    const float on_the_way = aspect();
    CHECK((on_the_way < 1.9F * squeezed) == !reduced);
    screen.settle(60);
    CHECK(aspect() / squeezed == doctest::Approx(2).epsilon(0.001));
    CHECK(screen.ui.seconds_to_next_frame() < 0);
  }
}

TEST_CASE("a longer lens shows less of the scene") {
  SceneScreen screen(devices()[3]);
  const float wide = quads().at(0).half_width_m;
  screen.ui.set("/lens/focal_mm", "70");
  screen.settle();
  CHECK(quads().at(0).half_width_m < 0.52F * wide);
}

TEST_CASE("the magnifier shows one spot in three rasters, coarser for a smaller recording") {
  for (const Device& device : usual_devices()) {
    CAPTURE(device.name);
    SceneScreen screen(device);
    screen.ui.set("view:magnifier", "true");
    screen.settle();
    const auto panes = quads();
    REQUIRE(panes.size() == 4);
    CHECK(panes[1].columns == 4992);
    CHECK(panes[2].columns == 4992);
    CHECK(panes[3].columns == doctest::Approx(3840));
    // One photosite is large enough to be seen, in all panes alike.
    const float photosite = panes[1].box.width / (panes[1].reach_x * panes[1].columns);
    CHECK(photosite > 5);
    for (std::size_t i = 1; i < 4; ++i) {
      CHECK(panes[i].middle_x == panes[1].middle_x);
      CHECK(panes[i].reach_x == doctest::Approx(panes[1].reach_x));
      CHECK(panes[i].box.y >= panes[0].box.y + panes[0].box.height - 0.1F);
    }
  }
}

TEST_CASE("a finger moves the magnifier's spot: a tap there, a drag slowly") {
  SceneScreen screen(devices()[3]);
  screen.ui.set("view:magnifier", "true");
  screen.settle();
  const RectPx mode = quads().at(0).box;
  screen.tap(mode.x + mode.width * 0.75F, mode.y + mode.height * 0.25F);
  CHECK(quads().at(1).middle_x == doctest::Approx(0.5).epsilon(0.05));
  CHECK(quads().at(1).middle_y == doctest::Approx(-0.5).epsilon(0.05));
  const float x = mode.x + mode.width * 0.5F;
  const float y = mode.y + mode.height * 0.5F;
  const float before = quads().at(1).middle_x;
  screen.drag(x, y, x - 40, y);
  const float way = before - quads().at(1).middle_x;
  CHECK(way > 0.05F);
  CHECK(way < 40 / (mode.width / 2));
  screen.ui.set("view:spot-across", "-12.5");
  screen.settle();
  CHECK(quads().at(1).middle_x == doctest::Approx(-0.125));
  screen.ui.set("view:spot-across", "nonsense");
  screen.settle();
  CHECK(quads().at(1).middle_x == doctest::Approx(-0.125));
}

TEST_CASE("the row under the picture switches it, with targets for a thumb") {
  for (const Device& device : usual_devices()) {
    CAPTURE(device.name);
    Screen screen(device);
    screen.settle();
    const RectPx box = screen.control("view:picture").rect;
    const auto pictures = static_cast<float>(screen.control("view:picture").choices.size());
    CHECK(screen.control("view:picture").visible);
    CHECK(box.height >= (device.height < 700 && device.height > 500 ? 42.0F : 44.0F));
    CHECK(box.width >= 44 * pictures);
    screen.tap(box.x + box.width * 1.5F / pictures, box.y + box.height / 2);
    CHECK(screen.value("view:picture") == "Scene");
    screen.tap(box.x + 10, box.y + box.height / 2);
    CHECK(screen.value("view:picture") == "Sensor");
  }
}

TEST_CASE("without anybody to draw scenes the picture still has its lines") {
  Screen screen(devices()[3]);
  screen.settle();
  screen.ui.set("view:picture", "scene");
  screen.settle();
  CHECK(screen.ui.seconds_to_next_frame() < 0);
  CHECK(screen.ui.mirror().surfaces.size() == 1);
}
