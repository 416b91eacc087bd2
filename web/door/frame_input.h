// What the host tells about each frame, and what it is asked to lay a text field over.
#pragma once

#include <cstdint>
#include <optional>
#include <string>

#include "web/door/mirror.h"

namespace widegate {

/// Distances from the edges of the screen that hold no touchable content, CSS pixels.
struct Insets {
  float left = 0, top = 0, right = 0, bottom = 0;
};

/// Colours of a forced-colours mode, 0xRRGGBB.
struct SystemColours {
  std::uint32_t canvas = 0x000000;
  std::uint32_t canvas_text = 0xFFFFFF;
  std::uint32_t button_face = 0x000000;
  std::uint32_t button_text = 0xFFFFFF;
  std::uint32_t highlight = 0x3FF2FF;
  std::uint32_t highlight_text = 0x000000;
  std::uint32_t grey_text = 0x3FF23F;
};

/// Everything the host tells about one frame.
struct FrameInput {
  float width = 0;  ///< Canvas in CSS pixels; 0 x 0 is allowed.
  float height = 0;
  float pixel_ratio = 1;  ///< Device pixels per CSS pixel, above 0.
  Insets safe_area;
  float root_font_px = 16;  ///< The browser's text size; 16 is its usual setting.
  bool prefers_dark = true;
  bool prefers_contrast = false;
  bool reduced_motion = false;
  bool coarse_pointer = false;                 ///< The main pointer is a finger.
  float keyboard = 0;                          ///< What a keyboard covers of the lower end, CSS px.
  std::optional<SystemColours> forced_colours; /**< Present in a forced-colours mode. */
  float delta_s = 1.0F / 60;                   ///< Since the last frame; above 0.
};

/// A control whose value is being typed: the host lays a real input field over it.
struct TextRequest {
  std::string id;
  std::string label;
  std::string text;      ///< What the field holds at the start, all of it selected.
  bool numeric = false;  ///< A number: stepped by the arrow keys, a number pad will do.
  bool signs = false;    ///< But it may hold ':' or '/', which a number pad lacks.
  std::string next;      ///< Control that is typed into after this one, in a form; else empty.
  float font_px = 16;
  RectPx rect;
};

}  // namespace widegate
