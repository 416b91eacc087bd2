#include "tests/bench/frame_bench.h"

#include <memory>
#include <string>

#include "core/catalogue/catalogue_json.h"
#include "imgui.h"
#include "tests/bench/bench.h"
#include "web/ui/ui.h"

namespace widegate::bench {
namespace {

class NoPlatform : public Platform {
 public:
  void wake() override {}
  RestOfProgram rest() const override { return RestOfProgram::here; }
  void want_rest() override {}
  bool copy_text(std::string_view) override { return false; }
  std::string page_address() const override { return {}; }
  std::string fragment() const override { return {}; }
  std::string own_fragment() const override { return {}; }
  void replace_fragment(std::string_view) override {}
  std::optional<std::string> stored(std::string_view) const override { return std::nullopt; }
  bool store(std::string_view, std::string_view) override { return true; }
  bool can_share() const override { return false; }
  void share(std::string_view, std::string_view) override {}
  void save_file(std::string_view, std::string_view, std::string_view) override {}
  void open_file(std::string_view, std::string_view) override {}
  void print_document(std::string_view) override {}
  void show_picture(std::string_view, std::string_view) override {}
};

/// A phone with a null renderer, drawn until it rests.
class Phone {
 public:
  Phone() : ui_(platform_, built_in_catalogue().value_or(Catalogue{})) {
    ui_.init();
    ImGui::GetIO().BackendFlags |= ImGuiBackendFlags_RendererHasTextures;
    input_.width = 390;
    input_.height = 844;
    input_.pixel_ratio = 3;
    input_.coarse_pointer = true;
    for (int i = 0; i < 5; ++i) draw();
  }

  void draw() {
    ui_.frame(input_);
    for (ImTextureData* texture : ImGui::GetPlatformIO().Textures) {
      const bool gone = texture->Status == ImTextureStatus_WantDestroy;
      texture->SetTexID(gone ? ImTextureID_Invalid : ImTextureID{1});
      texture->SetStatus(gone ? ImTextureStatus_Destroyed : ImTextureStatus_OK);
    }
  }

  Ui& ui() { return ui_; }

  /// Puts a finger on a slider's track; returns how far it may move to either side.
  float hold_slider(std::string_view id) {
    ui_.focus(id);
    for (int i = 0; i < 5; ++i) draw();
    const RectPx track = ui_.mirror().find(id)->rect;
    at_ = {track.x + track.width / 2, track.y + track.height / 2};
    ImGuiIO& io = ImGui::GetIO();
    io.AddMouseSourceEvent(ImGuiMouseSource_TouchScreen);
    io.AddMousePosEvent(at_.x, at_.y);
    draw();
    io.AddMouseButtonEvent(0, true);
    for (int i = 0; i < 5; ++i) draw();
    return track.width / 8;
  }

  void drag_by(float side) { ImGui::GetIO().AddMousePosEvent(at_.x + side, at_.y); }

 private:
  NoPlatform platform_;
  FrameInput input_;
  ImVec2 at_;
  Ui ui_;
};

}  // namespace

void draw_still_frame(std::int64_t times) {
  static Phone phone;
  for (std::int64_t i = 0; i < times; ++i) {
    phone.draw();
    keep(ImGui::GetDrawData());
  }
}

void draw_dragged_frame(std::int64_t times) {
  static Phone phone;
  static float side = phone.hold_slider("/lens/focal_mm");
  for (std::int64_t i = 0; i < times; ++i) {
    side = -side;
    phone.drag_by(side);
    phone.draw();
    keep(ImGui::GetDrawData());
  }
}

void change_a_value(std::int64_t times) {
  static Phone phone;
  static int focal = 20;
  for (std::int64_t i = 0; i < times; ++i) {
    focal = focal == 20 ? 21 : 20;
    keep(phone.ui().set("/lens/focal_mm", std::to_string(focal)));
    phone.draw();
  }
}

}  // namespace widegate::bench
