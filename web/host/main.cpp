// The browser's side of the front end: the functions the page's script calls (web/shell/program.js)
// and the one program object behind them. All policy is in Ui and TouchLayer; this is plumbing.
#include <emscripten/em_macros.h>
#include <imgui.h>
#include <imgui_internal.h>

#include <algorithm>
#include <array>
#include <cstdint>
#include <optional>
#include <utility>
#include <vector>

#include "core/base/version.h"
#include "core/catalogue/catalogue_json.h"
#include "web/door/mirror_text.h"
#include "web/host/inbox.h"
#include "web/host/renderer.h"
#include "web/host/web_platform.h"
#include "web/ui/touch.h"
#include "web/ui/ui.h"

namespace widegate {
namespace {

// What the script reads after each frame, in this order (web/shell/program.js).
enum StatusSlot : std::uint8_t {
  state_version,
  rect_version,
  background,
  is_dark,
  cursor,
  typing,
  frame_count,
  layers,
  slot_count
};

struct Host {
  explicit Host(Catalogue library) : ui(platform, std::move(library)) {}

  WebPlatform platform;
  Ui ui;
  Renderer renderer;
  TouchLayer touch;
  FrameInput input;
  int width_device_px = 0;
  int height_device_px = 0;
  double last_frame_s = -1;
  bool next_follows = false;  ///< The last frame asked for the next one at once.
  std::array<double, slot_count> status{};
  std::string mirror;  // Handed to the script; holds until the next call.
  std::string entry;
  std::vector<float> rects;
};

std::optional<Host>& slot() {
  static std::optional<Host> host;
  return host;
}

// Valid after wg_start() answered true; the script calls nothing before.
Host& host() { return *slot(); }

void note_status(Host& host) {
  host.status[state_version] = static_cast<double>(host.ui.state_version());
  host.status[rect_version] = static_cast<double>(host.ui.rect_version());
  host.status[background] = host.ui.background();
  host.status[is_dark] = host.ui.dark() ? 1 : 0;
  host.status[cursor] = ImGui::GetMouseCursor();
  host.status[typing] = host.ui.text_request() ? 1 : 0;
  host.status[frame_count] = static_cast<double>(host.ui.frame_count());
  host.status[layers] = host.ui.layers();
}

// 0 at once, above 0 after so many seconds, below 0 never.
double sooner(double a, double b) {
  if (a < 0) return b;
  if (b < 0) return a;
  return std::min(a, b);
}

/// Seconds.
constexpr double kUsualFrame = 1.0 / 60;

// The true time, however slow the machine is: what moves arrives when it should. After a rest the
// time that passed says nothing about the next frame.
float frame_time(Host& host, double now_s) {
  const double passed = now_s - std::exchange(host.last_frame_s, now_s);
  return static_cast<float>(host.next_follows && passed > 0 ? passed : kUsualFrame);
}

double next_frame_s(const Host& host, double now_s) {
  if (ImGui::GetCurrentContext()->InputEventsQueue.Size > 0) return 0;
  return sooner(host.ui.seconds_to_next_frame(), host.touch.seconds_to_update(now_s));
}

// The key that ImGui calls so, or none.
ImGuiKey key_named(const std::string& name) {
  for (int key = ImGuiKey_NamedKey_BEGIN; key < ImGuiKey_NamedKey_END; ++key) {
    if (name == ImGui::GetKeyName(static_cast<ImGuiKey>(key))) return static_cast<ImGuiKey>(key);
  }
  return ImGuiKey_None;
}

}  // namespace
}  // namespace widegate

using widegate::host;
using widegate::Host;
using widegate::take_pushed;

extern "C" {

/// Makes the program; call once. 0: the built-in library is broken, nothing else may be called.
/// 1: no WebGL 2, everything but drawing works. 2: everything works.
EMSCRIPTEN_KEEPALIVE int wg_start() {
  auto library = widegate::built_in_catalogue();
  if (!library) return 0;
  widegate::slot().emplace(std::move(*library));
  host().ui.init();
  host().ui.draw_scenes_with(widegate::Renderer::draw_scene);
  return host().renderer.start() ? 2 : 1;
}

/// Canvas in CSS pixels and in device pixels, their ratio, and the browser's text size in CSS px.
EMSCRIPTEN_KEEPALIVE void wg_resize(float width, float height, int width_device_px,
                                    int height_device_px, float ratio, float root_font_px) {
  Host& h = host();
  h.input.width = width;
  h.input.height = height;
  h.width_device_px = width_device_px;
  h.height_device_px = height_device_px;
  h.input.pixel_ratio = ratio;
  h.input.root_font_px = root_font_px;
  h.ui.touch();
}

EMSCRIPTEN_KEEPALIVE void wg_safe_area(float left, float top, float right, float bottom) {
  host().input.safe_area = {left, top, right, bottom};
  host().ui.touch();
}

/// How much of the canvas a keyboard covers from below, CSS pixels.
EMSCRIPTEN_KEEPALIVE void wg_keyboard(float height) {
  host().input.keyboard = height;
  host().ui.touch();
}

/// What the person told the system; each 0 or 1.
EMSCRIPTEN_KEEPALIVE void wg_preferences(int dark, int contrast, int reduced_motion, int coarse) {
  Host& h = host();
  h.input.prefers_dark = dark != 0;
  h.input.prefers_contrast = contrast != 0;
  h.input.reduced_motion = reduced_motion != 0;
  h.input.coarse_pointer = coarse != 0;
  h.touch.reduce_motion(reduced_motion != 0);
  h.ui.touch();
}

/// Colours of a forced-colours mode, 0xRRGGBB, or `active` 0 for none.
EMSCRIPTEN_KEEPALIVE void wg_forced_colours(int active, unsigned canvas, unsigned canvas_text,
                                            unsigned button_face, unsigned button_text,
                                            unsigned highlight, unsigned highlight_text,
                                            unsigned grey_text) {
  Host& h = host();
  h.input.forced_colours.reset();
  if (active != 0) {
    h.input.forced_colours = widegate::SystemColours{
        canvas, canvas_text, button_face, button_text, highlight, highlight_text, grey_text};
  }
  h.ui.touch();
}

/// One pointer event. kind: 0 mouse, 1 touch, 2 pen; phase: 0 down, 1 move, 2 up, 3 cancel.
EMSCRIPTEN_KEEPALIVE void wg_pointer(int kind, int phase, int id, int button, float x, float y,
                                     double time_s) {
  host().touch.pointer({static_cast<widegate::PointerKind>(kind),
                        static_cast<widegate::PointerPhase>(phase),
                        id,
                        button,
                        {x, y},
                        time_s});
  host().ui.touch();
}

/// A turn of the wheel by CSS pixels; `zoom` when control was held.
EMSCRIPTEN_KEEPALIVE void wg_wheel(float x, float y, float dx, float dy, int zoom) {
  host().touch.wheel({{x, y}, {dx, dy}, zoom != 0});
  host().ui.touch();
}

/// Pushed: a key's name as ImGui::GetKeyName has it. Modifiers held, as bits: 1 control, 2 shift,
/// 4 alt, 8 meta.
EMSCRIPTEN_KEEPALIVE void wg_key(int down, int modifiers) {
  ImGuiIO& io = ImGui::GetIO();
  io.AddKeyEvent(ImGuiMod_Ctrl, (modifiers & 1) != 0);
  io.AddKeyEvent(ImGuiMod_Shift, (modifiers & 2) != 0);
  io.AddKeyEvent(ImGuiMod_Alt, (modifiers & 4) != 0);
  io.AddKeyEvent(ImGuiMod_Super, (modifiers & 8) != 0);
  const ImGuiKey key = widegate::key_named(take_pushed());
  if (key != ImGuiKey_None) io.AddKeyEvent(key, down != 0);
  host().ui.touch();
}

/// The window lost the focus: no key or finger is held any more.
EMSCRIPTEN_KEEPALIVE void wg_blur() {
  ImGui::GetIO().ClearInputKeys();
  host().touch.reset();
  host().ui.touch();
}

/// One frame. `visible` 0 computes it without drawing. Seconds until the next wanted frame: 0 at
/// once, below 0 none.
EMSCRIPTEN_KEEPALIVE double wg_frame(double now_s, int visible) {
  Host& h = host();
  h.touch.set_surfaces(h.ui.mirror().surfaces);
  h.touch.update(now_s);
  for (const auto& zoom : h.touch.take_zooms()) h.ui.zoom_at(zoom.at.x, zoom.at.y, zoom.factor);
  h.input.delta_s = widegate::frame_time(h, now_s);
  h.renderer.new_frame();
  h.ui.frame(h.input);
  h.renderer.draw(ImGui::GetDrawData(), h.width_device_px, h.height_device_px, visible != 0);
  widegate::note_status(h);
  const double wait_s = widegate::next_frame_s(h, now_s);
  h.next_follows = wait_s == 0;
  return wait_s;
}

/// Numbers about the last frame, see StatusSlot.
EMSCRIPTEN_KEEPALIVE const double* wg_status() { return host().status.data(); }

/// The version of the program.
EMSCRIPTEN_KEEPALIVE const char* wg_version() { return widegate::kProgramVersion.data(); }

/// The mirror as JSON, ending in a zero byte.
EMSCRIPTEN_KEEPALIVE const char* wg_mirror() {
  host().mirror = widegate::mirror_text(host().ui.mirror());
  return host().mirror.c_str();
}

/// Four floats for each control of the mirror.
EMSCRIPTEN_KEEPALIVE const float* wg_rects() {
  host().rects = widegate::rects_of(host().ui.mirror());
  return host().rects.data();
}

/// What is being typed into as JSON, or "null".
EMSCRIPTEN_KEEPALIVE const char* wg_entry() {
  host().entry = widegate::entry_text(host().ui.text_request());
  return host().entry.c_str();
}

/// Pushed: id. Typing into a control begins from the page.
EMSCRIPTEN_KEEPALIVE void wg_begin_entry() {
  host().ui.begin_text(take_pushed());
  host().ui.touch();
}

EMSCRIPTEN_KEEPALIVE void wg_end_entry(int keep) {
  host().ui.end_text(keep != 0);
  host().ui.touch();
}

/// Pushed: id, text. 1 when accepted.
EMSCRIPTEN_KEEPALIVE int wg_set() {
  const std::string id = take_pushed();
  const std::string text = take_pushed();
  const bool accepted = host().ui.set(id, text);
  host().ui.touch();
  return accepted ? 1 : 0;
}

/// Pushed: id.
EMSCRIPTEN_KEEPALIVE void wg_activate() {
  host().ui.activate(take_pushed());
  host().ui.touch();
}

/// Pushed: id.
EMSCRIPTEN_KEEPALIVE void wg_step(int steps) {
  host().ui.step(take_pushed(), steps);
  host().ui.touch();
}

/// Pushed: id.
EMSCRIPTEN_KEEPALIVE void wg_reset() {
  host().ui.reset(take_pushed());
  host().ui.touch();
}

/// Pushed: key of a figure, empty to put its working away.
EMSCRIPTEN_KEEPALIVE void wg_show_working() {
  host().ui.show_working(take_pushed());
  host().ui.touch();
}

/// Closes what lies on top.
EMSCRIPTEN_KEEPALIVE void wg_dismiss() {
  host().ui.dismiss();
  host().ui.touch();
}

/// Pushed: id, empty for none.
EMSCRIPTEN_KEEPALIVE void wg_focus() {
  host().ui.focus(take_pushed());
  host().ui.touch();
}

/// Pushed: fragment without '#'.
EMSCRIPTEN_KEEPALIVE void wg_fragment() {
  host().ui.fragment_changed(take_pushed());
  host().ui.touch();
}

/// Pushed: key.
EMSCRIPTEN_KEEPALIVE void wg_stored_changed() {
  host().ui.stored_changed(take_pushed());
  host().ui.touch();
}

/// The rest of the program came, or did not.
EMSCRIPTEN_KEEPALIVE void wg_rest_changed() {
  host().ui.rest_changed();
  host().ui.touch();
}

/// Pushed: purpose, name, text.
EMSCRIPTEN_KEEPALIVE void wg_file() {
  const std::string purpose = take_pushed();
  const std::string name = take_pushed();
  const std::string text = take_pushed();
  host().ui.file_opened(purpose, name, text);
  host().ui.touch();
}

/// Pushed: name, why in words.
EMSCRIPTEN_KEEPALIVE void wg_file_refused() {
  const std::string name = take_pushed();
  const std::string why = take_pushed();
  host().ui.file_refused(name, why);
  host().ui.touch();
}

EMSCRIPTEN_KEEPALIVE void wg_context_lost() { host().renderer.lose(); }

EMSCRIPTEN_KEEPALIVE void wg_context_restored() {
  host().renderer.restore();
  host().ui.touch();
}
}

int main() { return 0; }
