// The colours of every theme against WCAG 2.2: 4.5:1 for text (1.4.3), 3:1 for what identifies a
// control or a mark (1.4.11). 7:1 (1.4.6) for the sunlight theme.
#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <string>

#include "web/look/layout.h"
#include "web/look/theme.h"

using namespace widegate;

namespace {

struct Pair {
  const char* name;
  Colour front;
  Colour back;
};

std::vector<Pair> text_pairs(const Palette& p) {
  return {
      {"text on page", p.text, p.page},          {"text on panel", p.text, p.panel},
      {"text on raised", p.text, p.raised},      {"text on pressed", p.text, p.pressed},
      {"text on picture", p.text, p.picture},    {"quiet on page", p.quiet, p.page},
      {"quiet on panel", p.quiet, p.panel},      {"quiet on raised", p.quiet, p.raised},
      {"quiet on picture", p.quiet, p.picture},  {"accent on panel", p.accent, p.panel},
      {"accent text on page", p.accent, p.page}, {"on accent", p.on_accent, p.accent},
      {"fail on page", p.fail, p.page},          {"fail on panel", p.fail, p.panel},
  };
}

std::vector<Pair> shape_pairs(const Palette& p) {
  return {
      {"edge on page", p.edge, p.page},
      {"edge on panel", p.edge, p.panel},
      {"accent on page", p.accent, p.page},
      {"focus on page", p.focus, p.page},
      {"focus on panel", p.focus, p.panel},
      {"ok on page", p.ok, p.page},
      {"ok on panel", p.ok, p.panel},
      {"caution on page", p.caution, p.page},
      {"caution on panel", p.caution, p.panel},
      {"sign in ok", p.on_verdict, p.ok},
      {"sign in caution", p.on_verdict, p.caution},
      {"sign in fail", p.on_verdict, p.fail},
      {"sensor on picture", p.sensor, p.picture},
      {"mode on picture", p.mode, p.picture},
      {"mode on mode fill", p.mode, p.mode_fill},
      {"protection on mode fill", p.protection, p.mode_fill},
      {"frame on mode fill", p.frame, p.mode_fill},
      {"circle on picture", p.circle, p.picture},
      {"circle on mode fill", p.circle, p.mode_fill},
      {"hatch on mode fill", p.fail, p.mode_fill},
  };
}

void check(const std::vector<Pair>& pairs, double least) {
  for (const Pair& pair : pairs) {
    CAPTURE(pair.name);
    CHECK(contrast(pair.front, pair.back) >= least);
  }
}

}  // namespace

// Values computed from the formula of WCAG 2.2 by another program, in exact steps.
TEST_CASE("contrast is the ratio WCAG defines") {
  CHECK(contrast(rgb(0x000000), rgb(0xFFFFFF)) == doctest::Approx(21.0));
  CHECK(contrast(rgb(0x777777), rgb(0xFFFFFF)) == doctest::Approx(4.478089453577214));
  CHECK(contrast(rgb(0x767676), rgb(0xFFFFFF)) == doctest::Approx(4.542224959605253));
  CHECK(contrast(rgb(0xFFFFFF), rgb(0x757575)) == doctest::Approx(4.607518093747377));
  CHECK(contrast(rgb(0x123456), rgb(0x123456)) == doctest::Approx(1.0));
}

TEST_CASE("text and marks of every theme are readable") {
  for (const Palette* palette : {&dark_palette(), &light_palette()}) {
    check(text_pairs(*palette), 4.5);
    check(shape_pairs(*palette), 3);
  }
}

TEST_CASE("the sunlight theme keeps 7:1 for text and 4.5:1 for marks") {
  check(text_pairs(sunlight_palette()), 7);
  check(shape_pairs(sunlight_palette()), 4.5);
}

TEST_CASE("forced colours use nothing but the system's own") {
  SystemColours colours;
  colours.canvas = 0x101010;
  colours.canvas_text = 0xFAFAFA;
  colours.button_face = 0x202020;
  colours.highlight = 0x00FFFF;
  colours.highlight_text = 0x000000;
  colours.grey_text = 0x808080;
  const Palette p = forced_palette(colours);
  CHECK(p.page == rgb(0x101010));
  CHECK(p.text == rgb(0xFAFAFA));
  CHECK(p.edge == rgb(0xFAFAFA));
  CHECK(p.accent == rgb(0x00FFFF));
  CHECK(p.on_accent == rgb(0x000000));
  CHECK(p.idle == rgb(0x808080));
  check(shape_pairs(p), 3);
}

TEST_CASE("the system's preferences choose the theme unless a person did") {
  FrameInput input;
  input.prefers_dark = false;
  CHECK_FALSE(make_theme(ThemeChoice::system, input).dark);
  CHECK(make_theme(ThemeChoice::dark, input).dark);
  input.prefers_dark = true;
  CHECK(make_theme(ThemeChoice::system, input).dark);
  CHECK_FALSE(make_theme(ThemeChoice::sunlight, input).dark);
  input.prefers_contrast = true;
  CHECK(make_theme(ThemeChoice::system, input).line_width > 1);
}

TEST_CASE("touch sizes follow the pointer and the text size") {
  FrameInput input;
  input.coarse_pointer = true;
  CHECK(make_theme(ThemeChoice::dark, input).touch() == kTouchCssPx);
  input.root_font_px = 24;
  const Theme theme = make_theme(ThemeChoice::dark, input);
  CHECK(theme.touch() == doctest::Approx(66));
  CHECK(theme.type(TextStyle::body).px == doctest::Approx(22.5));
}

TEST_CASE("on a wall every style is read in a larger one, as far as there is one") {
  const Theme theme = make_theme(ThemeChoice::dark, FrameInput{});
  for (const TextStyle style : {TextStyle::small, TextStyle::caption, TextStyle::body,
                                TextStyle::strong, TextStyle::title, TextStyle::headline}) {
    CHECK(theme.type(larger(style)).px > theme.type(style).px);
  }
  CHECK(larger(TextStyle::display) == TextStyle::display);
}

TEST_CASE("on a wall the rail keeps its marks and leaves its words to the column") {
  FrameInput input;
  input.width = 1920;
  input.height = 1080;
  Theme theme = make_theme(ThemeChoice::dark, input);
  const Layout usual = make_layout(input, theme);
  theme.wall = true;
  const Layout wall = make_layout(input, theme);
  CHECK(usual.rail_verdicts);
  CHECK_FALSE(wall.rail_verdicts);
  CHECK(wall.column.width > usual.column.width);
  CHECK(wall.picture.width > usual.picture.width);
}
