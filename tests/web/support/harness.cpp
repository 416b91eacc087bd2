#include "tests/web/support/harness.h"

#include <doctest/doctest.h>

#include "core/catalogue/catalogue_json.h"
#include "imgui.h"
#include "tests/web/support/raster.h"

namespace widegate::test {
namespace {

Catalogue library() {
  auto catalogue = built_in_catalogue();
  REQUIRE(catalogue.has_value());
  return *catalogue;
}

}  // namespace

const std::vector<Device>& devices() {
  static const std::vector<Device> kDevices = {
      {"nothing", 0, 0, 1, true},
      {"sliver", 1, 700, 1, true},
      {"small phone", 360, 640, 2, true},
      {"phone", 390, 844, 3, true, {0, 47, 0, 34}},
      {"phone on its side", 844, 390, 3, true, {47, 0, 47, 21}},
      {"tablet", 768, 1024, 2, true},
      {"laptop", 1440, 900, 1, false},
      {"projector", 1920, 1080, 1, false},
      {"4K", 3840, 2160, 1, false},
  };
  return kDevices;
}

Screen::Screen(const Device& device, std::map<std::string, std::string> kept,
               std::string_view fragment, RestOfProgram rest, bool own_address)
    : ui(platform, library()) {
  platform.kept = std::move(kept);
  platform.fragment_text = fragment;
  platform.rest_of_program = rest;
  platform.own_address = own_address;
  input.width = device.width;
  input.height = device.height;
  input.pixel_ratio = device.pixel_ratio;
  input.safe_area = device.safe_area;
  input.coarse_pointer = device.touch;
  ui.init();
  ImGuiIO& io = ImGui::GetIO();
  io.BackendFlags |= ImGuiBackendFlags_RendererHasTextures;
  if (device.touch) io.AddMouseSourceEvent(ImGuiMouseSource_TouchScreen);
}

void Screen::answer_textures() {
  for (ImTextureData* texture : ImGui::GetPlatformIO().Textures) {
    if (texture->Status == ImTextureStatus_WantDestroy) {
      texture->SetTexID(ImTextureID_Invalid);
      texture->SetStatus(ImTextureStatus_Destroyed);
    } else if (texture->Status != ImTextureStatus_OK) {
      texture->SetTexID(reinterpret_cast<ImTextureID>(texture));
      texture->SetStatus(ImTextureStatus_OK);
    }
  }
}

void Screen::frame() {
  ui.frame(input);
  answer_textures();
}

int Screen::settle(int most) {
  int drawn = 0;
  do {
    frame();
    ++drawn;
  } while (ui.seconds_to_next_frame() == 0 && drawn < most);
  return drawn;
}

void Screen::move_to(float x, float y) {
  ImGui::GetIO().AddMousePosEvent(x, y);
  ui.touch();
}

void Screen::press() {
  ImGui::GetIO().AddMouseButtonEvent(0, true);
  ui.touch();
}

void Screen::lift() {
  ImGui::GetIO().AddMouseButtonEvent(0, false);
  ui.touch();
}

void Screen::tap(float x, float y) {
  move_to(x, y);
  settle();
  press();
  settle();
  lift();
  settle();
}

void Screen::drag(float x, float y, float to_x, float to_y, int steps) {
  move_to(x, y);
  settle();
  press();
  settle();
  for (int i = 1; i <= steps; ++i) {
    const float part = static_cast<float>(i) / static_cast<float>(steps);
    move_to(x + (to_x - x) * part, y + (to_y - y) * part);
    frame();
  }
  lift();
  settle();
}

void Screen::wheel(float notches) {
  ImGui::GetIO().AddMouseWheelEvent(0, notches);
  ui.touch();
  settle();
}

const Control& Screen::control(std::string_view id) const {
  const Control* found = ui.mirror().find(id);
  REQUIRE_MESSAGE(found != nullptr, std::string(id));
  return *found;
}

std::string Screen::headline(std::size_t place) const {
  REQUIRE(place < ui.mirror().headline.size());
  return ui.mirror().headline[place].value_text;
}

void Screen::reveal(std::string_view id) {
  ui.focus(id);
  settle();
  ui.focus("");
  settle();
}

Image Screen::picture() const { return rasterise(*ImGui::GetDrawData(), input.pixel_ratio); }

}  // namespace widegate::test
