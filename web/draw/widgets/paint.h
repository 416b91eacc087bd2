// Drawing with the theme: text in a style, filled and outlined boxes, marks and icons made of
// lines. Positions are CSS pixels of the screen. Nothing here reads the mouse or the plan.
#pragma once

#include <string_view>

#include "core/report/report.h"
#include "imgui.h"
#include "web/door/mirror.h"
#include "web/look/fonts.h"
#include "web/look/theme.h"

namespace widegate {

enum class Align { left, centre, right };

enum class Icon {
  undo,
  redo,
  sun,
  minus,
  plus,
  chevron,
  close,
  tick,
  reset,
  squeeze,
  whole,
  scene,
  beside,
  onward,
  magnifier,
  list
};

/// A colour for ImGui, with an opacity from 0 to 1.
[[nodiscard]] ImU32 ink(Colour colour, float opacity = 1);

/// Box helpers; amounts are CSS pixels.
[[nodiscard]] RectPx inset(const RectPx& box, float by);
[[nodiscard]] inline float right(const RectPx& box) { return box.x + box.width; }
[[nodiscard]] inline float bottom(const RectPx& box) { return box.y + box.height; }
[[nodiscard]] inline ImVec2 centre(const RectPx& box) {
  return {box.x + box.width / 2, box.y + box.height / 2};
}
[[nodiscard]] bool contains(const RectPx& box, ImVec2 point);

/// Draws onto one draw list.
class Paint {
 public:
  Paint(const Theme& theme, const Fonts& fonts, ImDrawList& list)
      : theme_(theme), fonts_(fonts), list_(list) {}

  [[nodiscard]] float width(TextStyle style, std::string_view text) const;
  [[nodiscard]] float line_height(TextStyle style) const;
  /// Height of the text broken into lines of `width`.
  [[nodiscard]] float wrapped_height(TextStyle style, std::string_view text, float width) const;

  /// One line, vertically centred in the box; cut with an ellipsis when it is too long.
  void text(const RectPx& box, Align align, TextStyle style, Colour colour,
            std::string_view text) const;
  /// Lines of the box's width from its top; returns the height used.
  float wrapped(const RectPx& box, TextStyle style, Colour colour, std::string_view text) const;

  void fill(const RectPx& box, Colour colour, float radius = 0, float opacity = 1) const;
  void outline(const RectPx& box, Colour colour, float width, float radius = 0) const;
  void line(ImVec2 from, ImVec2 to, Colour colour, float width) const;
  /// A keyboard focus ring around a box.
  void focus_ring(const RectPx& box) const;
  /// Verdict mark: a disc with a tick, a triangle with a bar, a square with a cross.
  void mark(Severity severity, ImVec2 centre, float size) const;
  void icon(Icon icon, ImVec2 centre, float size, Colour colour) const;

  [[nodiscard]] ImDrawList& list() const { return list_; }
  [[nodiscard]] const Theme& theme() const { return theme_; }

 private:
  [[nodiscard]] ImFont* font(TextStyle style) const;
  [[nodiscard]] std::size_t line_end(TextStyle style, std::string_view text, std::size_t from,
                                     float room) const;
  /// Breaks, and draws when there is a colour; returns the height.
  float lines(const RectPx& box, TextStyle style, const Colour* colour,
              std::string_view text) const;
  void cross(ImVec2 centre, float size, Colour colour, float width) const;
  void arrow_back(ImVec2 centre, float radius, float way, Colour colour, float stroke) const;
  void tick(ImVec2 centre, float size, Colour colour, float width) const;

  const Theme& theme_;
  const Fonts& fonts_;
  ImDrawList& list_;
};

/// The colour of a severity.
[[nodiscard]] Colour severity_colour(const Palette& palette, Severity severity);

}  // namespace widegate
