// The one place for how the front end looks: type scale, spacing grid, touch sizes and colour
// roles of every theme. Numbers and colours only; nothing is drawn here and nothing else in web/
// names a colour or a font size of its own.
#pragma once

#include <cstdint>
#include <optional>

#include "web/door/frame_input.h"

namespace widegate {

/// An opaque sRGB colour.
struct Colour {
  std::uint8_t red = 0, green = 0, blue = 0;
  friend constexpr bool operator==(Colour, Colour) = default;
};

/// 0xRRGGBB as a colour.
[[nodiscard]] constexpr Colour rgb(std::uint32_t hex) {
  return {static_cast<std::uint8_t>(hex >> 16 & 0xFF), static_cast<std::uint8_t>(hex >> 8 & 0xFF),
          static_cast<std::uint8_t>(hex & 0xFF)};
}

/// Contrast ratio of two colours, 1 to 21.
/// @source WCAG 2.2, definitions of relative luminance and contrast ratio.
[[nodiscard]] double contrast(Colour a, Colour b);

/// What each colour is for.
struct Palette {
  Colour page;       ///< Behind everything.
  Colour panel;      ///< Bars and sheets above the page.
  Colour raised;     ///< Buttons, tracks, chips.
  Colour pressed;    ///< The same under a finger.
  Colour line;       ///< Hairlines between rows; decoration only.
  Colour edge;       ///< Outlines that identify a control: 3:1 or more against page and panel.
  Colour text;       ///< Reading text.
  Colour quiet;      ///< Labels and units; still 4.5:1 or more.
  Colour idle;       ///< Words and icons of what cannot be pressed now; never the only sign of it.
  Colour accent;     ///< The one accent: filled tracks, selection, links.
  Colour on_accent;  ///< Text and marks on the accent.
  Colour focus;      ///< Keyboard focus ring.
  Colour ok;         ///< Verdict marks.
  Colour caution;
  Colour fail;
  Colour on_verdict;  ///< The sign inside a verdict mark.
  Colour picture;     ///< Background of the drawing.
  Colour sensor;      ///< Outline of the whole sensor.
  Colour mode_fill;   ///< The area that is read.
  Colour mode;        ///< Its outline.
  Colour protection;  ///< Outline of the protected area.
  Colour frame;       ///< Frame line.
  Colour circle;      ///< Image circle.
};

/// What a person chose to see by.
enum class ThemeChoice { system, dark, light, sunlight };

/// Sizes in CSS pixels at the browser's usual text size; `scale` applies to all of them.
enum class TextStyle {
  small,     ///< A word under an icon, nothing else.
  caption,   ///< Labels of figures, units, the drawing's labels.
  body,      ///< Reading text, labels of controls.
  strong,    ///< The same size, semibold: values, chosen options.
  title,     ///< Name of a question.
  headline,  ///< The three numbers.
  display,   ///< The three numbers where there is room.
};

/// The style for the same text on a wall, where the room is read from the last row.
[[nodiscard]] TextStyle larger(TextStyle style);

/// Font size and weight of a style.
struct TypeSize {
  float px = 16;
  bool semibold = false;
};

/// Everything about the look for one frame.
struct Theme {
  Palette colour;
  float scale = 1;       ///< The person's text size over the usual one.
  float line_width = 1;  ///< Outlines; thicker in sunlight and forced colours.
  bool dark = true;
  bool reduced_motion = false;
  bool coarse = false;  ///< Made for a finger.
  bool wall = false;    ///< Read from the last row of a class.

  /// The style for what is read aloud: a larger one on a wall.
  [[nodiscard]] TextStyle for_reading(TextStyle usual) const {
    return wall ? larger(usual) : usual;
  }
  /// Size of a style, scaled.
  [[nodiscard]] TypeSize type(TextStyle style) const;
  /// `steps` of the 4 px spacing grid, scaled.
  [[nodiscard]] float space(float steps) const { return 4 * steps * scale; }
  /// Height and least width of anything that is pressed: 44 for a finger, 36 for a mouse, scaled.
  [[nodiscard]] float touch() const { return coarse ? 44 * (scale > 1 ? scale : 1) : 36 * scale; }
};

inline constexpr float kTouchCssPx = 44;  ///< Least size of a target for a finger.

/// The theme for this frame.
[[nodiscard]] Theme make_theme(ThemeChoice choice, const FrameInput& input);

/// The palettes, for the contrast test.
[[nodiscard]] const Palette& dark_palette();
[[nodiscard]] const Palette& light_palette();
[[nodiscard]] const Palette& sunlight_palette();
[[nodiscard]] Palette forced_palette(const SystemColours& colours);

}  // namespace widegate
