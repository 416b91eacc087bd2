// Fingers, pens, mice and wheels in front of Dear ImGui: what is a tap, a scroll, a drag, a pinch.
// Portable and free of any window system: the browser host and the tests feed it the same events.
// It may touch ImGui's input queue and the scroll of its windows, never the plan or the drawing.
#pragma once

#include <imgui.h>

#include <vector>

#include "web/door/mirror.h"

struct ImGuiWindow;

namespace widegate {

/// What a pointer is. Pens that touch behave as fingers, pens that hover as mice.
enum class PointerKind { mouse, touch, pen };

enum class PointerPhase { down, move, up, cancel };

/// One pointer event, in CSS pixels from the top left of the canvas.
struct PointerEvent {
  PointerKind kind = PointerKind::mouse;
  PointerPhase phase = PointerPhase::move;
  int id = 0;      ///< The same from down to up; fingers differ.
  int button = 0;  ///< 0 primary, 1 secondary, 2 middle; only of down and up.
  ImVec2 position{};
  double time_s = 0;  ///< When it happened, on any steady clock shared with update().
};

/// A turn of the wheel or a stroke on a track pad, already in pixels. Positive moves the content
/// left and up, as in the DOM.
struct WheelEvent {
  ImVec2 position{};
  ImVec2 delta{};
  bool zoom = false;  ///< Control was held: what a track pad's pinch arrives as.
};

/// What fingers or a wheel did to a surface.
struct ZoomGesture {
  ImVec2 at{};       ///< Keep this point of the picture where it is.
  float factor = 1;  ///< Above 1 enlarges; finite and above 0.
};

/// Turns pointer events into what ImGui understands, and scrolls its windows itself.
///
/// A finger waits until its intent is clear: lifted in place it is a tap; moved along a window that
/// can scroll that way, or as much along as across, it scrolls, with inertia; moved otherwise it
/// becomes a pressed mouse button at the place where it first touched, so a slider under a vertical
/// drag is never changed. Held still it hovers, which shows a tooltip; lifted after that it is
/// still a tap. On a surface it presses at once, and a second finger there makes a pinch. All other
/// fingers are ignored.
class TouchLayer {
 public:
  void pointer(const PointerEvent& event);
  void wheel(const WheelEvent& event);

  /// Runs inertia and holding; call once before each ImGui frame. Times never go backwards.
  void update(double now_s);

  /// Seconds until update() has something to do: 0 at once, below 0 when nothing is pending.
  [[nodiscard]] double seconds_to_update(double now_s) const;

  /// True while a finger or a mouse button is down.
  [[nodiscard]] bool pressed() const;

  /// No inertia when the person asked the system for less motion.
  void reduce_motion(bool reduced) { reduced_motion_ = reduced; }

  /// Rectangles that take a finger's drag, pinches and the wheel themselves (Mirror::surfaces).
  void set_surfaces(const std::vector<RectPx>& surfaces) { surfaces_ = surfaces; }

  /// Zooms since the last call, in order.
  [[nodiscard]] std::vector<ZoomGesture> take_zooms();

  /// Forgets fingers and motion: the page was hidden or the context lost.
  void reset();

 private:
  enum class FingerState {
    none,
    pending,    ///< Not yet known what it is.
    hovering,   ///< Held still: the mouse position stands at it, no button.
    scrolling,  ///< Moves `scroll_`.
    pressing,   ///< A held mouse button.
    pinching,   ///< With `second_`.
    dead,       ///< Ignored until lifted.
  };
  struct Finger {
    FingerState state = FingerState::none;
    int id = 0;
    ImVec2 start{};
    ImVec2 last{};
    double start_s = 0;
  };
  struct Scroll {
    ImGuiID window = 0;     ///< 0: none.
    bool sideways = false;  ///< Along x; otherwise along y.
    double rest = 0;        ///< Of the way, less than a pixel, not yet gone.
    double speed = 0;       ///< Pixels a second, running mean.
    double last_s = 0;      ///< Of the last move or inertia step.
    bool free = false;      ///< Runs on by inertia, no finger on it.
  };

  void mouse(const PointerEvent& event);
  void finger_down(const PointerEvent& event);
  void finger_move(const PointerEvent& event);
  void finger_up(const PointerEvent& event);
  void second_down(const PointerEvent& event);
  void decide(const PointerEvent& event);
  void press();
  void cancel_press();
  void scroll_to(const PointerEvent& event);
  bool scroll_by(ImGuiWindow& window, double by);
  void pinch_to(const PointerEvent& event);
  [[nodiscard]] const RectPx* surface_at(ImVec2 at) const;

  Finger finger_;  ///< The one that leads.
  Finger second_;  ///< The other one of a pinch.
  Scroll scroll_;
  RectPx pinched_{};
  bool mouse_down_ = false;
  bool reduced_motion_ = false;
  bool stopped_scroll_ = false;  ///< This touch stopped the inertia; lifting it is no tap.
  std::vector<RectPx> surfaces_;
  std::vector<ZoomGesture> zooms_;
};

}  // namespace widegate
