#include "web/ui/touch.h"

#include <imgui_internal.h>

#include <cfloat>
#include <cmath>
#include <utility>

namespace widegate {
namespace {

constexpr float kSlopPx = 8;  // A finger that moved less is standing still.
constexpr float kClearlySideways = 1.2F;
constexpr double kHoldSeconds = 0.35;  // Then a tooltip may show.
constexpr double kFriction = 3.2;      // Inertia loses this share of its speed each second.
constexpr double kStopSpeed = 12;      // Pixels a second: below it inertia ends.
constexpr double kStaleSeconds =
    0.1;  // A finger that rested this long before lifting flings nothing.
constexpr float kWheelZoomPerPx = 0.002F;
constexpr float kPinchZoomPerPx = 0.01F;  // A track pad's pinch comes in much smaller steps.

bool contains(const RectPx& rect, ImVec2 at) {
  return at.x >= rect.x && at.x < rect.x + rect.width && at.y >= rect.y &&
         at.y < rect.y + rect.height;
}

ImVec2 clamped_into(const RectPx& rect, ImVec2 at) {
  return {ImClamp(at.x, rect.x, rect.x + ImMax(rect.width - 1, 0.0F)),
          ImClamp(at.y, rect.y, rect.y + ImMax(rect.height - 1, 0.0F))};
}

float scroll_limit(const ImGuiWindow& window, bool sideways) {
  return sideways ? window.ScrollMax.x : window.ScrollMax.y;
}

float scroll_offset(const ImGuiWindow& window, bool sideways) {
  return sideways ? window.Scroll.x : window.Scroll.y;
}

/// Where the window will stand in its next frame: several events may come before one.
float scroll_to_be(const ImGuiWindow& window, bool sideways) {
  const float target = sideways ? window.ScrollTarget.x : window.ScrollTarget.y;
  return target < FLT_MAX ? target : scroll_offset(window, sideways);
}

void set_scroll(ImGuiWindow* window, bool sideways, float offset) {
  if (sideways) {
    ImGui::SetScrollX(window, offset);
  } else {
    ImGui::SetScrollY(window, offset);
  }
}

// The innermost window under a point that can move along an axis by `delta`; when all are at their
// end, the innermost that scrolls at all, so that a drag never turns into a press there.
ImGuiWindow* scroll_target(ImVec2 at, bool sideways, float delta) {
  ImGuiWindow* window = nullptr;
  ImGui::FindHoveredWindowEx(at, true, &window, nullptr);
  ImGuiWindow* at_end = nullptr;
  while (window != nullptr) {
    const float limit = scroll_limit(*window, sideways);
    const float offset = scroll_offset(*window, sideways);
    if (limit > 0 && (delta > 0 ? offset < limit : offset > 0)) return window;
    if (limit > 0 && at_end == nullptr) at_end = window;
    const bool child = (window->Flags & ImGuiWindowFlags_ChildWindow) != 0;
    window = child ? window->ParentWindow : nullptr;
  }
  return at_end;
}

ImVec2 minus(ImVec2 a, ImVec2 b) { return {a.x - b.x, a.y - b.y}; }

float distance(ImVec2 a, ImVec2 b) { return std::hypot(a.x - b.x, a.y - b.y); }

}  // namespace

bool TouchLayer::pressed() const {
  return mouse_down_ || (finger_.state != FingerState::none && finger_.state != FingerState::dead);
}

std::vector<ZoomGesture> TouchLayer::take_zooms() { return std::exchange(zooms_, {}); }

void TouchLayer::pointer(const PointerEvent& event) {
  const bool hovering_pen = event.kind == PointerKind::pen && finger_.state == FingerState::none &&
                            event.phase == PointerPhase::move;
  if (event.kind == PointerKind::mouse || hovering_pen) {
    mouse(event);
    return;
  }
  ImGui::GetIO().AddMouseSourceEvent(ImGuiMouseSource_TouchScreen);
  switch (event.phase) {
    case PointerPhase::down:
      finger_down(event);
      break;
    case PointerPhase::move:
      finger_move(event);
      break;
    case PointerPhase::up:
    case PointerPhase::cancel:
      finger_up(event);
      break;
  }
}

void TouchLayer::mouse(const PointerEvent& event) {
  ImGuiIO& io = ImGui::GetIO();
  io.AddMouseSourceEvent(ImGuiMouseSource_Mouse);
  switch (event.phase) {
    case PointerPhase::down:
      scroll_ = {};
      mouse_down_ = true;
      io.AddMousePosEvent(event.position.x, event.position.y);
      io.AddMouseButtonEvent(event.button, true);
      break;
    case PointerPhase::move:
      io.AddMousePosEvent(event.position.x, event.position.y);
      break;
    case PointerPhase::up:
      mouse_down_ = false;
      io.AddMousePosEvent(event.position.x, event.position.y);
      io.AddMouseButtonEvent(event.button, false);
      break;
    case PointerPhase::cancel:  // Also: left the canvas.
      if (mouse_down_) cancel_press();
      mouse_down_ = false;
      io.AddMousePosEvent(-FLT_MAX, -FLT_MAX);
      break;
  }
}

void TouchLayer::finger_down(const PointerEvent& event) {
  if (finger_.state != FingerState::none) {
    second_down(event);
    return;
  }
  stopped_scroll_ = scroll_.free;
  scroll_ = {};
  finger_ = {FingerState::pending, event.id, event.position, event.position, event.time_s};
  if (surface_at(event.position) != nullptr) press();
}

void TouchLayer::second_down(const PointerEvent& event) {
  const RectPx* surface = surface_at(finger_.start);
  const bool both = surface != nullptr && contains(*surface, event.position);
  if (!both || finger_.state != FingerState::pressing) return;
  cancel_press();
  pinched_ = *surface;
  finger_.state = FingerState::pinching;
  second_ = {FingerState::pinching, event.id, event.position, event.position, event.time_s};
}

void TouchLayer::finger_move(const PointerEvent& event) {
  if (finger_.state == FingerState::pinching) {
    pinch_to(event);
    return;
  }
  if (finger_.state == FingerState::none || event.id != finger_.id) return;
  switch (finger_.state) {
    case FingerState::pending:
    case FingerState::hovering:
      decide(event);
      break;
    case FingerState::scrolling:
      scroll_to(event);
      break;
    case FingerState::pressing:
      ImGui::GetIO().AddMousePosEvent(event.position.x, event.position.y);
      break;
    case FingerState::none:
    case FingerState::pinching:
    case FingerState::dead:
      break;
  }
  finger_.last = event.position;
}

// A standing finger has moved: far enough along something that scrolls, it scrolls; else it drags.
// Nobody swipes quite straight: a slider moves only under what is clearly sideways.
void TouchLayer::decide(const PointerEvent& event) {
  if (distance(event.position, finger_.start) <= kSlopPx) return;
  const ImVec2 moved = minus(event.position, finger_.start);
  const bool sideways = std::abs(moved.x) > kClearlySideways * std::abs(moved.y);
  ImGuiWindow* target = scroll_target(finger_.start, sideways, sideways ? -moved.x : -moved.y);
  if (target == nullptr) {
    press();
    ImGui::GetIO().AddMousePosEvent(event.position.x, event.position.y);
    return;
  }
  ImGui::GetIO().AddMousePosEvent(-FLT_MAX, -FLT_MAX);
  finger_.state = FingerState::scrolling;
  scroll_ = {target->ID, sideways, 0, 0, event.time_s, false};
}

void TouchLayer::scroll_to(const PointerEvent& event) {
  ImGuiWindow* window = ImGui::FindWindowByID(scroll_.window);
  if (window == nullptr) return;
  const ImVec2 moved = minus(event.position, finger_.last);
  const double by = scroll_.sideways ? -moved.x : -moved.y;
  scroll_by(*window, by);
  const double elapsed = event.time_s - scroll_.last_s;
  if (elapsed <= 0) return;  // Two events of one moment: the next one carries the speed.
  scroll_.speed = 0.4 * scroll_.speed + 0.6 * by / elapsed;
  scroll_.last_s = event.time_s;
}

// Always from where the window stands: its content may have been moved meanwhile. False at its end.
bool TouchLayer::scroll_by(ImGuiWindow& window, double by) {
  const double limit = scroll_limit(window, scroll_.sideways);
  const double wanted = scroll_to_be(window, scroll_.sideways) + scroll_.rest + by;
  const double offset = ImClamp(wanted, 0.0, limit);
  const double whole = std::round(offset);
  scroll_.rest = offset - whole;
  set_scroll(&window, scroll_.sideways, static_cast<float>(whole));
  return wanted > 0 && wanted < limit;
}

void TouchLayer::finger_up(const PointerEvent& event) {
  if (finger_.state == FingerState::pinching) {
    // The finger that is left over does nothing: no jump of the drawing.
    if (event.id != finger_.id && event.id != second_.id) return;
    if (event.id == finger_.id) finger_.id = second_.id;
    finger_.state = FingerState::dead;
    return;
  }
  if (finger_.state == FingerState::none || event.id != finger_.id) return;
  const bool cancelled = event.phase == PointerPhase::cancel;
  const FingerState state = std::exchange(finger_, {}).state;
  ImGuiIO& io = ImGui::GetIO();
  if (state == FingerState::pressing) {
    if (cancelled) {
      cancel_press();
    } else {
      io.AddMouseButtonEvent(0, false);
    }
  } else if (state == FingerState::pending || state == FingerState::hovering) {
    if (!cancelled && !stopped_scroll_) {
      io.AddMousePosEvent(event.position.x, event.position.y);
      io.AddMouseButtonEvent(0, true);
      io.AddMouseButtonEvent(0, false);
    }
  } else if (state == FingerState::scrolling) {
    const bool rested = event.time_s - scroll_.last_s > kStaleSeconds;
    scroll_.free = !cancelled && !rested && !reduced_motion_;
    scroll_.last_s = event.time_s;
    if (!scroll_.free) scroll_ = {};
  }
  io.AddMousePosEvent(-FLT_MAX, -FLT_MAX);
}

// The held button begins where the finger first touched, whatever it did until now.
void TouchLayer::press() {
  finger_.state = FingerState::pressing;
  ImGuiIO& io = ImGui::GetIO();
  io.AddMousePosEvent(finger_.start.x, finger_.start.y);
  io.AddMouseButtonEvent(0, true);
}

// Lets go without a click and without the value that a position far away would give a slider.
void TouchLayer::cancel_press() {
  ImGui::ClearActiveID();
  ImGuiIO& io = ImGui::GetIO();
  io.AddMouseButtonEvent(0, false);
  io.AddMousePosEvent(-FLT_MAX, -FLT_MAX);
}

void TouchLayer::pinch_to(const PointerEvent& event) {
  if (event.id != finger_.id && event.id != second_.id) return;
  Finger& moved = event.id == finger_.id ? finger_ : second_;
  const float before = distance(finger_.last, second_.last);
  moved.last = event.position;
  const float after = distance(finger_.last, second_.last);
  // Fingers on one point have no ratio.
  if (before < 1 || after < 1) return;
  const ImVec2 centre((finger_.last.x + second_.last.x) / 2, (finger_.last.y + second_.last.y) / 2);
  zooms_.push_back({clamped_into(pinched_, centre), after / before});
}

void TouchLayer::wheel(const WheelEvent& event) {
  scroll_ = {};
  const float along =
      std::abs(event.delta.y) >= std::abs(event.delta.x) ? event.delta.y : event.delta.x;
  if (surface_at(event.position) != nullptr) {
    const float per_px = event.zoom ? kPinchZoomPerPx : kWheelZoomPerPx;
    const float factor = std::exp(-ImClamp(along, -500.0F, 500.0F) * per_px);
    zooms_.push_back({event.position, factor});
    return;
  }
  if (event.zoom) return;
  for (const bool sideways : {false, true}) {
    const float by = sideways ? event.delta.x : event.delta.y;
    ImGuiWindow* window = by != 0 ? scroll_target(event.position, sideways, by) : nullptr;
    if (window == nullptr) continue;
    const float wanted = scroll_to_be(*window, sideways) + by;
    set_scroll(window, sideways, ImClamp(wanted, 0.0F, scroll_limit(*window, sideways)));
  }
}

void TouchLayer::update(double now_s) {
  if (finger_.state == FingerState::pending && now_s - finger_.start_s >= kHoldSeconds) {
    finger_.state = FingerState::hovering;
    ImGui::GetIO().AddMousePosEvent(finger_.start.x, finger_.start.y);
  }
  if (!scroll_.free) return;
  ImGuiWindow* window = ImGui::FindWindowByID(scroll_.window);
  const double elapsed = ImClamp(now_s - scroll_.last_s, 0.0, 0.1);
  scroll_.last_s = now_s;
  const bool at_end = window == nullptr || !scroll_by(*window, scroll_.speed * elapsed);
  scroll_.speed *= std::exp(-kFriction * elapsed);
  if (at_end || std::abs(scroll_.speed) < kStopSpeed) scroll_ = {};
}

double TouchLayer::seconds_to_update(double now_s) const {
  if (scroll_.free) return 0;
  if (finger_.state != FingerState::pending) return -1;
  return ImMax(finger_.start_s + kHoldSeconds - now_s, 0.0);
}

void TouchLayer::reset() {
  const bool held = finger_.state == FingerState::pressing || mouse_down_;
  if (held) cancel_press();
  finger_ = {};
  second_ = {};
  scroll_ = {};
  mouse_down_ = false;
  zooms_.clear();
}

const RectPx* TouchLayer::surface_at(ImVec2 at) const {
  for (const RectPx& surface : surfaces_) {
    if (contains(surface, at)) return &surface;
  }
  return nullptr;
}

}  // namespace widegate
