// Fingers, mice and wheels against real ImGui windows without any screen: taps, drags, scrolling
// with inertia, pinches, and that none of them does what another should.
#include "web/ui/touch.h"

#include <doctest/doctest.h>
#include <imgui.h>
#include <imgui_internal.h>

#include <cmath>
#include <random>
#include <string>

#include "web/look/fonts.h"

namespace widegate {
namespace {

constexpr int kSliders = 40;
constexpr float kWidth = 360;
constexpr float kRowHeight = 44;

// A screen as the app's: a surface on top, below it a list of sliders that scrolls, a button first.
class Bench {
 public:
  Bench() : context_(ImGui::CreateContext()) {
    ImGui::SetCurrentContext(context_);
    ImGuiIO& io = ImGui::GetIO();
    io.IniFilename = nullptr;
    io.BackendFlags |= ImGuiBackendFlags_RendererHasTextures;
    [[maybe_unused]] const Fonts fonts = load_fonts();
    ImGui::GetStyle().WindowPadding = {0, 0};
    ImGui::GetStyle().ItemSpacing = {0, 0};
    touch.set_surfaces({{0, 0, kWidth, 200}});
    run(3);
  }
  Bench(const Bench&) = delete;
  Bench& operator=(const Bench&) = delete;
  ~Bench() { ImGui::DestroyContext(context_); }

  void run(int frames) {
    for (int i = 0; i < frames; ++i) frame();
  }

  // Frames until nothing moves any more; false when that takes over ten seconds.
  bool settle() {
    for (int i = 0; i < 600; ++i) {
      frame();
      const bool queued = context_->InputEventsQueue.Size > 0;
      if (!queued && touch.seconds_to_update(now) < 0) return true;
    }
    return false;
  }

  void send(PointerPhase phase, float x, float y, int id = 1,
            PointerKind kind = PointerKind::touch) {
    touch.pointer({kind, phase, id, 0, {x, y}, now});
  }

  void tap(float x, float y) {
    send(PointerPhase::down, x, y);
    now += 0.05;
    send(PointerPhase::up, x, y);
    run(6);
  }

  // A finger's way from one point to another in `steps` frames; lifted unless `keep`.
  void drag(ImVec2 from, ImVec2 to, int steps = 10, bool keep = false) {
    send(PointerPhase::down, from.x, from.y);
    for (int i = 1; i <= steps; ++i) {
      const float t = static_cast<float>(i) / static_cast<float>(steps);
      frame();
      send(PointerPhase::move, from.x + (to.x - from.x) * t, from.y + (to.y - from.y) * t);
    }
    frame();
    if (!keep) send(PointerPhase::up, to.x, to.y);
    run(4);
  }

  [[nodiscard]] float scroll() const { return scroll_; }
  [[nodiscard]] float scroll_most() const { return scroll_most_; }
  [[nodiscard]] ImGuiID active() const { return context_->ActiveId; }
  // Middle of a slider as it stands on the screen.
  [[nodiscard]] ImVec2 slider(int i) const {
    return {kWidth / 2, 200 + kRowHeight * static_cast<float>(i + 1) + kRowHeight / 2 - scroll_};
  }

  TouchLayer touch;
  double now = 100;
  int clicks = 0;
  float value[kSliders] = {};
  float surface_drag_px = 0;
  bool hovering_button = false;

 private:
  void frame() {
    now += 1.0 / 60;
    touch.update(now);
    ImGuiIO& io = ImGui::GetIO();
    io.DisplaySize = {kWidth, 700};
    io.DeltaTime = 1.0F / 60;
    ImGui::NewFrame();
    ImGui::SetNextWindowPos({0, 0});
    ImGui::SetNextWindowSize(io.DisplaySize);
    ImGui::Begin("screen", nullptr, ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoMove);
    ImGui::InvisibleButton("surface", {kWidth, 200});
    if (ImGui::IsItemActive()) surface_drag_px += io.MouseDelta.x;
    ImGui::BeginChild("list", {kWidth, 500}, 0, ImGuiWindowFlags_NoScrollbar);
    if (ImGui::Button("Tap", {kWidth, kRowHeight})) ++clicks;
    hovering_button = ImGui::IsItemHovered();
    const float padding = (kRowHeight - ImGui::GetTextLineHeight()) / 2;
    ImGui::PushStyleVar(ImGuiStyleVar_FramePadding, ImVec2(0, padding));
    for (int i = 0; i < kSliders; ++i) {
      ImGui::SetNextItemWidth(kWidth);
      ImGui::SliderFloat(("##" + std::to_string(i)).c_str(), &value[i], 0, 100);
    }
    ImGui::PopStyleVar();
    scroll_ = ImGui::GetScrollY();
    scroll_most_ = ImGui::GetScrollMaxY();
    ImGui::EndChild();
    ImGui::End();
    ImGui::Render();
    for (ImTextureData* texture : ImGui::GetPlatformIO().Textures) {
      if (texture->Status == ImTextureStatus_OK) continue;
      const bool gone = texture->Status == ImTextureStatus_WantDestroy;
      texture->SetTexID(gone ? ImTextureID_Invalid : ImTextureID{1});
      texture->SetStatus(gone ? ImTextureStatus_Destroyed : ImTextureStatus_OK);
    }
  }

  ImGuiContext* context_;
  float scroll_ = 0;
  float scroll_most_ = 0;
};

TEST_CASE("five taps are five clicks, and nothing stays hovered") {
  Bench bench;
  for (int i = 0; i < 5; ++i) bench.tap(100, 220);
  CHECK(bench.clicks == 5);
  CHECK_FALSE(bench.hovering_button);
  CHECK(bench.active() == 0);
  // One pixel inside the edges hits, beside them misses.
  bench.tap(1, 201);
  bench.tap(kWidth - 2, 200 + kRowHeight - 2);
  CHECK(bench.clicks == 7);
  bench.tap(100, 198);
  CHECK(bench.clicks == 7);
}

TEST_CASE("taps in quick succession, without frames between them, all count") {
  Bench bench;
  for (int i = 0; i < 5; ++i) {
    bench.send(PointerPhase::down, 100, 220);
    bench.now += 0.02;
    bench.send(PointerPhase::up, 100, 220);
  }
  CHECK(bench.settle());
  CHECK(bench.clicks == 5);
}

TEST_CASE("a finger that moves along a slider drags it") {
  Bench bench;
  const ImVec2 at = bench.slider(3);
  bench.drag(at, {at.x + 60, at.y + 3});
  const float dragged = bench.value[3];
  CHECK(dragged > 50);
  CHECK(bench.scroll() == 0);
}

TEST_CASE("a drag past the end of the list is not a press either") {
  Bench bench;
  const ImVec2 at = bench.slider(3);
  bench.drag(at, {at.x - 60, at.y + 100}, 12);
  CHECK(bench.scroll() == 0);
  CHECK(bench.value[3] == 0);
}

TEST_CASE("a drag across sliders scrolls, runs on, and changes none") {
  Bench bench;
  const ImVec2 at = bench.slider(6);
  bench.drag(at, {at.x + 10, at.y - 150});
  const float lifted = bench.scroll();
  CHECK(lifted > 100);
  CHECK(bench.settle());
  CHECK(bench.scroll() > lifted + 20);
  for (const float value : bench.value) CHECK(value == 0);
}

TEST_CASE("no inertia with reduced motion, or after a finger that rested") {
  Bench bench;
  bench.touch.reduce_motion(true);
  bench.drag({180, 600}, {180, 450});
  const float lifted = bench.scroll();
  CHECK(bench.settle());
  CHECK(bench.scroll() == lifted);
  bench.touch.reduce_motion(false);
  bench.drag({180, 600}, {180, 500}, 10, true);
  bench.run(20);
  bench.send(PointerPhase::up, 180, 500);
  bench.run(2);
  const float rested = bench.scroll();
  CHECK(bench.settle());
  CHECK(bench.scroll() == rested);
}

TEST_CASE("a touch during inertia only stops it") {
  Bench bench;
  bench.drag({180, 650}, {180, 350}, 6);
  CHECK(bench.touch.seconds_to_update(bench.now) == 0);
  const float running = bench.scroll();
  bench.tap(180, 400);
  const float stopped = bench.scroll();
  CHECK(bench.settle());
  CHECK(bench.scroll() == stopped);
  CHECK(stopped < running + 100);
  for (const float value : bench.value) CHECK(value == 0);
}

TEST_CASE("scrolling stops at both ends") {
  Bench bench;
  for (int i = 0; i < 20; ++i) bench.drag({180, 650}, {180, 250}, 4);
  CHECK(bench.settle());
  CHECK(bench.scroll() == bench.scroll_most());
  for (int i = 0; i < 20; ++i) bench.drag({180, 250}, {180, 650}, 4);
  CHECK(bench.settle());
  CHECK(bench.scroll() == 0);
  for (const float value : bench.value) CHECK(value == 0);
}

TEST_CASE("a finger held still hovers, and lifting it is still a tap") {
  Bench bench;
  bench.send(PointerPhase::down, 100, 220);
  CHECK(bench.touch.seconds_to_update(bench.now) > 0.3);
  bench.run(30);
  CHECK(bench.hovering_button);
  CHECK(bench.clicks == 0);
  bench.send(PointerPhase::up, 100, 220);
  bench.run(6);
  CHECK(bench.clicks == 1);
  CHECK_FALSE(bench.hovering_button);
}

TEST_CASE("a second finger during a slider drag changes nothing") {
  Bench bench;
  const ImVec2 at = bench.slider(2);
  bench.drag(at, {at.x + 40, at.y}, 8, true);
  const float before = bench.value[2];
  bench.send(PointerPhase::down, 50, 600, 2);
  bench.run(2);
  bench.send(PointerPhase::move, 50, 500, 2);
  bench.run(2);
  CHECK(bench.value[2] == before);
  CHECK(bench.scroll() == 0);
  bench.send(PointerPhase::move, at.x + 80, at.y, 1);
  bench.run(2);
  CHECK(bench.value[2] > before);
  bench.send(PointerPhase::up, 50, 500, 2);
  bench.send(PointerPhase::up, at.x + 80, at.y, 1);
  bench.run(4);
  CHECK(bench.active() == 0);
}

TEST_CASE("two fingers on the surface pinch; the one left over does nothing") {
  Bench bench;
  bench.send(PointerPhase::down, 160, 100, 1);
  bench.run(1);
  bench.send(PointerPhase::down, 200, 100, 2);
  bench.run(1);
  for (int i = 1; i <= 10; ++i) {
    const auto by = static_cast<float>(4 * i);
    bench.send(PointerPhase::move, 160 - by, 100, 1);
    bench.send(PointerPhase::move, 200 + by, 100, 2);
    bench.run(1);
  }
  float factor = 1;
  for (const ZoomGesture& zoom : bench.touch.take_zooms()) {
    factor *= zoom.factor;
    CHECK(zoom.at.x == doctest::Approx(180).epsilon(0.05));
  }
  CHECK(factor == doctest::Approx(3).epsilon(1e-4));
  const float before = bench.surface_drag_px;
  bench.send(PointerPhase::up, 120, 100, 1);
  bench.run(2);
  bench.send(PointerPhase::move, 300, 150, 2);
  bench.run(2);
  bench.send(PointerPhase::up, 300, 150, 2);
  bench.run(4);
  CHECK(bench.surface_drag_px == before);
  CHECK(bench.touch.take_zooms().empty());
  CHECK(bench.active() == 0);
  bench.tap(100, 220);
  CHECK(bench.clicks == 1);
}

TEST_CASE("one finger drags the surface at once") {
  Bench bench;
  bench.drag({100, 100}, {150, 100});
  CHECK(bench.surface_drag_px == doctest::Approx(50).epsilon(0.01));
  CHECK(bench.scroll() == 0);
}

TEST_CASE("the wheel scrolls pixel for pixel, and zooms the surface") {
  Bench bench;
  bench.touch.wheel({{180, 500}, {0, 100}, false});
  bench.run(2);
  CHECK(bench.scroll() == 100);
  bench.touch.wheel({{180, 500}, {0, 30}, false});
  bench.touch.wheel({{180, 500}, {0, 30}, false});
  bench.run(2);
  CHECK(bench.scroll() == 160);
  bench.touch.wheel({{180, 500}, {0, -1000}, false});
  bench.run(2);
  CHECK(bench.scroll() == 0);
  bench.touch.wheel({{180, 100}, {0, -100}, false});
  const auto turned = bench.touch.take_zooms();
  REQUIRE(turned.size() == 1);
  CHECK(turned[0].factor > 1.1F);
  bench.touch.wheel({{180, 100}, {0, -50}, true});
  const auto pinched = bench.touch.take_zooms();
  REQUIRE(pinched.size() == 1);
  CHECK(pinched[0].factor == doctest::Approx(std::exp(0.5)));
}

TEST_CASE("a cancelled touch clicks nothing and leaves the slider where it was") {
  Bench bench;
  bench.send(PointerPhase::down, 100, 220);
  bench.run(2);
  bench.send(PointerPhase::cancel, 100, 220);
  bench.run(4);
  CHECK(bench.clicks == 0);
  const ImVec2 at = bench.slider(1);
  bench.drag(at, {at.x + 60, at.y}, 8, true);
  const float before = bench.value[1];
  bench.send(PointerPhase::cancel, 0, 0);
  bench.run(4);
  CHECK(bench.value[1] == before);
  CHECK(bench.active() == 0);
}

TEST_CASE("a mouse is passed on as it is") {
  Bench bench;
  bench.send(PointerPhase::move, 100, 220, 1, PointerKind::mouse);
  bench.run(2);
  CHECK(bench.hovering_button);
  bench.send(PointerPhase::down, 100, 220, 1, PointerKind::mouse);
  bench.send(PointerPhase::up, 100, 220, 1, PointerKind::mouse);
  bench.run(4);
  CHECK(bench.clicks == 1);
  bench.send(PointerPhase::cancel, -1, -1, 1, PointerKind::mouse);
  bench.run(2);
  CHECK_FALSE(bench.hovering_button);
}

TEST_CASE("any order of events leaves nothing held once all fingers are up") {
  std::mt19937 random(20);
  const auto any = [&](int most) {
    return static_cast<int>(random() % static_cast<unsigned>(most));
  };
  Bench bench;
  for (int i = 0; i < 4000; ++i) {
    const auto phase = static_cast<PointerPhase>(any(4));
    const auto kind = static_cast<PointerKind>(any(3));
    bench.send(phase, static_cast<float>(any(500)) - 50, static_cast<float>(any(900)) - 100, any(4),
               kind);
    if (any(10) == 0) {
      bench.touch.wheel({{180, static_cast<float>(any(700))},
                         {static_cast<float>(any(400)) - 200, static_cast<float>(any(400)) - 200},
                         any(2) == 0});
    }
    if (any(2) == 0) bench.run(1);
    if (any(200) == 0) bench.touch.reset();
  }
  for (int id = 0; id < 4; ++id) {
    bench.send(PointerPhase::up, 10, 10, id, PointerKind::touch);
    bench.send(PointerPhase::up, 10, 10, id, PointerKind::mouse);
  }
  CHECK(bench.settle());
  CHECK(bench.active() == 0);
  CHECK_FALSE(bench.touch.pressed());
  for (const float value : bench.value) CHECK(std::isfinite(value));
  for (const ZoomGesture& zoom : bench.touch.take_zooms()) {
    CHECK(std::isfinite(zoom.factor));
    CHECK(zoom.factor > 0);
  }
}

}  // namespace
}  // namespace widegate
