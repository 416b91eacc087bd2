#include "web/look/theme.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace widegate {
namespace {

// Neutral greys with a breath of blue, so that skin and skies of a picture beside them stay clean.
constexpr Palette kDark = {
    .page = rgb(0x0E1013),
    .panel = rgb(0x16191D),
    .raised = rgb(0x23282E),
    .pressed = rgb(0x333A42),
    .line = rgb(0x262B31),
    .edge = rgb(0x737C86),
    .text = rgb(0xF1F2F0),
    .quiet = rgb(0xA9B0B8),
    .idle = rgb(0x737C86),
    .accent = rgb(0x86B8FF),
    .on_accent = rgb(0x06172F),
    .focus = rgb(0xFFFFFF),
    .ok = rgb(0x5CCB9A),
    .caution = rgb(0xF5C04A),
    .fail = rgb(0xFF8A78),
    .on_verdict = rgb(0x0E1013),
    .picture = rgb(0x08090B),
    .sensor = rgb(0x7A838C),
    .mode_fill = rgb(0x1D2227),
    .mode = rgb(0xC9CED3),
    .protection = rgb(0xF5C04A),
    .frame = rgb(0x86B8FF),
    .circle = rgb(0x5CCB9A),
};

constexpr Palette kLight = {
    .page = rgb(0xF6F6F3),
    .panel = rgb(0xFFFFFF),
    .raised = rgb(0xE9EAE7),
    .pressed = rgb(0xD5D8D6),
    .line = rgb(0xDDDFDC),
    .edge = rgb(0x777E84),
    .text = rgb(0x15181B),
    .quiet = rgb(0x535A61),
    .idle = rgb(0x82888E),
    .accent = rgb(0x1453B8),
    .on_accent = rgb(0xFFFFFF),
    .focus = rgb(0x15181B),
    .ok = rgb(0x0A6B47),
    .caution = rgb(0x7F5300),
    .fail = rgb(0xB02A17),
    .on_verdict = rgb(0xFFFFFF),
    .picture = rgb(0xEBECE8),
    .sensor = rgb(0x6C737A),
    .mode_fill = rgb(0xFFFFFF),
    .mode = rgb(0x33393F),
    .protection = rgb(0x7F5300),
    .frame = rgb(0x1453B8),
    .circle = rgb(0x0A6B47),
};

// For a phone with the sun on it: black on white, no greys, every outline heavy.
constexpr Palette kSunlight = {
    .page = rgb(0xFFFFFF),
    .panel = rgb(0xFFFFFF),
    .raised = rgb(0xFFFFFF),
    .pressed = rgb(0xFFE680),
    .line = rgb(0x000000),
    .edge = rgb(0x000000),
    .text = rgb(0x000000),
    .quiet = rgb(0x1E1E1E),
    .idle = rgb(0x767676),
    .accent = rgb(0x0A2E8C),
    .on_accent = rgb(0xFFFFFF),
    .focus = rgb(0xC4006A),
    .ok = rgb(0x00472C),
    .caution = rgb(0x5A3A00),
    .fail = rgb(0x8E0E00),
    .on_verdict = rgb(0xFFFFFF),
    .picture = rgb(0xFFFFFF),
    .sensor = rgb(0x3A3A3A),
    .mode_fill = rgb(0xFFFFFF),
    .mode = rgb(0x000000),
    .protection = rgb(0x5A3A00),
    .frame = rgb(0x0A2E8C),
    .circle = rgb(0x00472C),
};

double linear(std::uint8_t channel) {
  const double c = channel / 255.0;
  return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
}

double luminance(Colour c) {
  return 0.2126 * linear(c.red) + 0.7152 * linear(c.green) + 0.0722 * linear(c.blue);
}

constexpr std::array<TypeSize, 7> kTypeScale = {{
    {11.0F, false},  // small
    {13.0F, false},  // caption
    {15.0F, false},  // body
    {15.0F, true},   // strong
    {21.0F, true},   // title
    {29.0F, true},   // headline
    {40.0F, true},   // display
}};

}  // namespace

double contrast(Colour a, Colour b) {
  const double la = luminance(a);
  const double lb = luminance(b);
  return (std::max(la, lb) + 0.05) / (std::min(la, lb) + 0.05);
}

TextStyle larger(TextStyle style) {
  switch (style) {
    case TextStyle::small:
      return TextStyle::caption;
    case TextStyle::caption:
      return TextStyle::body;
    case TextStyle::body:
    case TextStyle::strong:
      return TextStyle::title;
    case TextStyle::title:
      return TextStyle::headline;
    case TextStyle::headline:
    case TextStyle::display:
      return TextStyle::display;
  }
  return style;
}

TypeSize Theme::type(TextStyle style) const {
  TypeSize size = kTypeScale[static_cast<std::size_t>(style)];
  size.px *= scale;
  return size;
}

const Palette& dark_palette() { return kDark; }
const Palette& light_palette() { return kLight; }
const Palette& sunlight_palette() { return kSunlight; }

// Forced colours know few roles: shapes and words carry what the colours of other themes add.
Palette forced_palette(const SystemColours& colours) {
  const Colour canvas = rgb(colours.canvas);
  const Colour text = rgb(colours.canvas_text);
  Palette p;
  p.page = p.panel = p.picture = p.mode_fill = p.on_verdict = canvas;
  p.raised = p.pressed = rgb(colours.button_face);
  p.line = p.edge = p.text = p.quiet = p.focus = text;
  p.ok = p.caution = p.fail = p.sensor = p.mode = p.protection = p.circle = text;
  p.idle = rgb(colours.grey_text);
  p.accent = p.frame = rgb(colours.highlight);
  p.on_accent = rgb(colours.highlight_text);
  return p;
}

Theme make_theme(ThemeChoice choice, const FrameInput& input) {
  Theme theme;
  ThemeChoice used = choice;
  if (choice == ThemeChoice::system) {
    used = input.prefers_contrast ? ThemeChoice::sunlight
                                  : (input.prefers_dark ? ThemeChoice::dark : ThemeChoice::light);
  }
  theme.dark = used == ThemeChoice::dark;
  theme.colour = theme.dark ? kDark : (used == ThemeChoice::light ? kLight : kSunlight);
  theme.line_width = used == ThemeChoice::sunlight ? 2.0F : 1.0F;
  if (input.forced_colours) {
    theme.colour = forced_palette(*input.forced_colours);
    theme.dark = luminance(theme.colour.page) < luminance(theme.colour.text);
    theme.line_width = 2;
  }
  theme.scale = std::clamp(input.root_font_px / 16, 0.75F, 2.5F);
  theme.reduced_motion = input.reduced_motion;
  theme.coarse = input.coarse_pointer;
  return theme;
}

}  // namespace widegate
