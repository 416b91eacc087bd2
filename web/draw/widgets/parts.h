// The small parts that controls are made of: rows of the column, and buttons without the toolkit's
// own look. Used by the control rows, the rail, the bar and the picker.
#pragma once

#include <string>
#include <string_view>

#include "web/draw/widgets/draw_context.h"

namespace widegate {

/// Reserves the next `height` CSS pixels over the full width of the current window.
[[nodiscard]] RectPx take_row(float height);
/// An empty space of the grid between rows.
void take_space(const DrawContext& context, float steps);

/// What a pressable box told in this frame.
struct Press {
  bool clicked = false;
  bool held = false;
  bool hovered = false;  ///< By a mouse; never by a finger.
};

/// An invisible pressable box; the window's layout is not moved by it.
[[nodiscard]] Press pressable(std::string_view id, const RectPx& box);

/// A figure as it is drawn: degrees belong to the number, other units stand beside it.
struct FigureWords {
  std::string number;
  std::string_view unit;  ///< Points into the row.
};
[[nodiscard]] FigureWords figure_words(const ResultRow& row);

/// How a pressed or pointed-at surface is filled.
[[nodiscard]] Colour surface(const Theme& theme, const Press& press);

/// A square button with an icon. Greyed and dead when not enabled.
[[nodiscard]] bool icon_button(const DrawContext& context, std::string_view id, const RectPx& box,
                               Icon icon, bool enabled = true, std::string_view hint = {});

/// Notes where a control was drawn: in the view, for the page and for typing.
void note_rect(DrawContext& context, Control& control, const RectPx& box);

/// Notes where something was drawn that is no control (Place); only what is in sight.
void note_place(DrawContext& context, std::string_view kind, std::string_view name,
                const RectPx& box);

/// Draws the focus ring and scrolls when the page's focus is on this control.
void show_focus(DrawContext& context, const Control& control, const RectPx& row);

}  // namespace widegate
