// The whole front end behind one door: the host feeds it frames, pointer events (through ImGuiIO)
// and edits from the page, and renders ImGui's draw data. No platform code; the same class runs in
// the browser, in native tests and in the desktop program.
//
// A host's frame:   backend new frame  ->  ui.frame(input)  ->  render ImGui::GetDrawData().
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>

#include "core/catalogue/catalogue.h"
#include "web/door/frame_input.h"
#include "web/door/mirror.h"
#include "web/door/platform.h"
#include "web/door/scene_quad.h"

namespace widegate {

/// The front end. Make one; it owns the ImGui context.
class Ui {
 public:
  /// @param platform  outlives the Ui.
  /// @param library   the catalogue plans are evaluated against.
  Ui(Platform& platform, Catalogue library);
  ~Ui();
  Ui(const Ui&) = delete;
  Ui& operator=(const Ui&) = delete;

  /// Makes the ImGui context current, loads the built-in fonts and the stored plan or the fragment.
  /// Call once, before the renderer's own set-up.
  void init();

  /// Who draws the scene through the lens; without one a plain box stands in its place.
  void draw_scenes_with(SceneDrawer drawer);

  /// Builds one ImGui frame and ends it with ImGui::Render(). Edits made in it are already
  /// evaluated and drawn when it returns.
  void frame(const FrameInput& input);

  /// Whether another frame is wanted, and when: 0 at once, above 0 after so many seconds, below 0
  /// when nothing moves. Any input, resize or page edit asks for frames too: call touch() then.
  [[nodiscard]] double seconds_to_next_frame() const;
  /// Something happened outside (input, resize, preference, context restored): frames until
  /// settled.
  void touch();
  /// Frames drawn since init().
  [[nodiscard]] std::uint64_t frame_count() const;

  /// Grows whenever anything in mirror() but the rectangles changes.
  [[nodiscard]] std::uint64_t state_version() const;
  /// Grows whenever a rectangle or the visibility of a control in mirror() changes.
  [[nodiscard]] std::uint64_t rect_version() const;
  [[nodiscard]] const Mirror& mirror() const;

  /// Sets a control from the page as if typed. False when the text is not accepted: the plan keeps
  /// its value and the control's `problem` says what is.
  bool set(std::string_view id, std::string_view text);
  /// Runs an action, or toggles a flag.
  void activate(std::string_view id);
  /// Steps a slider: +1, -1, or tenfold with +10, -10.
  void step(std::string_view id, int steps);
  /// Gives a control its default value.
  void reset(std::string_view id);
  /// Shows how a figure came about, by its key in mirror().results; "" puts it away.
  void show_working(std::string_view key);
  /// Puts away what lies on top: the typing (it is kept), a list of choices or a working, else the
  /// message, else the lesson.
  void dismiss();
  /// How many things lie on top of each other and can be put away, the message not counted.
  [[nodiscard]] int layers() const;
  /// Whether a list of choices or a working lies over the screen.
  [[nodiscard]] bool covered() const;
  /// The page's keyboard focus moved to a control ("" for none): draws its ring, scrolls to it.
  void focus(std::string_view id);

  /// The control being typed into, if any; `rect` moves with layout and scrolling.
  [[nodiscard]] std::optional<TextRequest> text_request() const;
  /// Typing into a control begins from the page's side.
  void begin_text(std::string_view id);
  /// The typing ended: `keep` false puts the value back that was there before. A text that is not
  /// accepted leaves that value too, and the control's `problem` says so.
  void end_text(bool keep);

  /// Zooms the drawing under a point (CSS pixels) by a factor, as a pinch or wheel does.
  void zoom_at(float x, float y, float factor);

  /// The address's fragment changed from outside.
  void fragment_changed(std::string_view fragment);
  /// Another tab changed what is kept on the device under a key.
  void stored_changed(std::string_view key);
  /// The rest of the program came, or did not: Platform::rest().
  void rest_changed();
  /// A file asked for by Platform::open_file.
  void file_opened(std::string_view purpose, std::string_view name, std::string_view text);
  /// A file that the host would not read, and why, in words that follow "was not opened: ".
  void file_refused(std::string_view name, std::string_view why);
  /// Colour behind everything, 0xRRGGBB, for the page around the canvas.
  [[nodiscard]] std::uint32_t background() const;
  /// Whether the colours in use are light on dark.
  [[nodiscard]] bool dark() const;

 private:
  struct Parts;
  std::unique_ptr<Parts> parts_;
};

}  // namespace widegate
