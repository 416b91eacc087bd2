// One of several: a few short options side by side, or a row that opens a list; and yes or no.
#include <algorithm>

#include "web/draw/widgets/control_row.h"
#include "web/draw/widgets/parts.h"

namespace widegate {
namespace {

constexpr std::size_t kMostSegments = 4;

/// Whether all options fit beside each other.
bool fits_in_segments(const DrawContext& context, const Control& control, float width) {
  if (control.choices.empty() || control.choices.size() > kMostSegments) return false;
  const Paint paint = context.paint();
  const float each = width / static_cast<float>(control.choices.size());
  return std::all_of(control.choices.begin(), control.choices.end(), [&](const ChoiceItem& item) {
    return item.detail.empty() &&
           paint.width(TextStyle::strong, item.label) + context.theme.space(4) < each;
  });
}

void draw_segments(DrawContext& context, Control& control) {
  const Paint paint = context.paint();
  const Palette& colour = context.theme.colour;
  const RectPx label = take_row(paint.line_height(TextStyle::body) + context.theme.space(1));
  paint.text(label, Align::left, TextStyle::body, colour.text, control.label);
  const RectPx row = take_row(context.theme.touch());
  const float radius = 10 * context.theme.scale;
  paint.fill(row, colour.raised, radius);
  if (context.theme.line_width > 1) paint.outline(row, colour.edge, 2, radius);
  const float each = row.width / static_cast<float>(control.choices.size());
  float x = row.x;
  for (const ChoiceItem& item : control.choices) {
    const RectPx box = {x, row.y, each, row.height};
    const bool chosen = item.value == control.edit_text;
    const Press press = pressable(item.value, box);
    if (chosen || press.held) {
      paint.fill(inset(box, 3), chosen ? colour.accent : colour.pressed, radius - 3);
    }
    paint.text(box, Align::centre, chosen ? TextStyle::strong : TextStyle::body,
               chosen ? colour.on_accent : colour.text, item.label);
    if (press.clicked && !chosen) set_control(context, control, item.value, false);
    x += each;
  }
  note_rect(context, control, row);
  show_focus(context, control, {label.x, label.y, label.width, bottom(row) - label.y});
  take_space(context, 3);
}

/// The second line of the chosen entry.
std::string_view chosen_detail(const Control& control) {
  for (const ChoiceItem& item : control.choices) {
    if (item.value == control.edit_text) return item.detail;
  }
  return {};
}

void draw_opener(DrawContext& context, Control& control) {
  const Paint paint = context.paint();
  const Palette& colour = context.theme.colour;
  const std::string_view detail = chosen_detail(control);
  const float line = paint.line_height(TextStyle::caption);
  const float height = std::max(context.theme.touch(), context.theme.space(4) + line +
                                                           paint.line_height(TextStyle::strong) +
                                                           (detail.empty() ? 0 : line));
  const RectPx row = take_row(height);
  const Press press = pressable("open", row);
  const float radius = 10 * context.theme.scale;
  paint.fill(row, surface(context.theme, press), radius);
  if (context.theme.line_width > 1) paint.outline(row, colour.edge, 2, radius);
  const float pad = context.theme.space(3);
  const float icon = 18 * context.theme.scale;
  RectPx text = {row.x + pad, row.y + context.theme.space(2),
                 std::max(0.0F, row.width - 3 * pad - icon), line};
  paint.text(text, Align::left, TextStyle::caption, colour.quiet, drawn_label(control));
  text.y += line;
  text.height = paint.line_height(TextStyle::strong);
  paint.text(text, Align::left, TextStyle::strong, colour.text, control.value_text);
  text.y += text.height;
  text.height = line;
  if (!detail.empty()) paint.text(text, Align::left, TextStyle::caption, colour.quiet, detail);
  paint.icon(Icon::chevron, {right(row) - pad - icon / 2, centre(row).y}, icon, colour.quiet);
  if (press.clicked && control.enabled) context.state.open_choice = control.id;
  note_rect(context, control, row);
  show_focus(context, control, row);
  take_space(context, 2);
}

void draw_switch(const DrawContext& context, const RectPx& box, bool on) {
  const Paint paint = context.paint();
  const Palette& colour = context.theme.colour;
  const float radius = box.height / 2;
  paint.fill(box, on ? colour.accent : colour.raised, radius);
  if (!on) paint.outline(box, colour.edge, 2, radius);
  const float x = on ? right(box) - radius : box.x + radius;
  const Colour knob = on ? colour.on_accent : colour.edge;
  paint.list().AddCircleFilled({x, centre(box).y}, radius - 5 * context.theme.scale, ink(knob), 24);
  if (on) paint.icon(Icon::tick, {x, centre(box).y}, radius * 0.9F, colour.accent);
}

}  // namespace

void draw_choice(DrawContext& context, Control& control) {
  if (fits_in_segments(context, control, ImGui::GetContentRegionAvail().x)) {
    draw_segments(context, control);
  } else {
    draw_opener(context, control);
  }
}

void draw_flag(DrawContext& context, Control& control) {
  if (!control.enabled) return;
  const Paint paint = context.paint();
  const float touch = context.theme.touch();
  const RectPx row = take_row(touch);
  const Press press = pressable("flag", row);
  const float width = 50 * context.theme.scale;
  const float height = 28 * context.theme.scale;
  draw_switch(context, {right(row) - width, row.y + (touch - height) / 2, width, height},
              control.value != 0);
  paint.text({row.x, row.y, std::max(0.0F, row.width - width - context.theme.space(2)), touch},
             Align::left, TextStyle::body, context.theme.colour.text, control.label);
  if (press.clicked) {
    set_control(context, control, control.value != 0 ? "false" : "true", false);
  }
  note_rect(context, control, row);
  show_focus(context, control, row);
  take_space(context, 2);
}

void draw_text(DrawContext& context, Control& control) {
  const Paint paint = context.paint();
  const RectPx label = take_row(paint.line_height(TextStyle::body) + context.theme.space(1));
  paint.text(label, Align::left, TextStyle::body, context.theme.colour.text, control.label);
  const RectPx row = take_row(context.theme.touch());
  draw_value_field(context, control, row, Align::left);
  note_rect(context, control, row);
  show_focus(context, control, {label.x, label.y, label.width, bottom(row) - label.y});
  take_space(context, 3);
}

void draw_button(DrawContext& context, Control& control, const RectPx& row) {
  const Paint paint = context.paint();
  const Palette& colour = context.theme.colour;
  Press press;
  if (control.enabled) press = pressable("action", row);
  const float radius = 10 * context.theme.scale;
  if (control.enabled) {
    paint.fill(row, surface(context.theme, press), radius);
    if (context.theme.line_width > 1) paint.outline(row, colour.edge, 2, radius);
  } else {
    // No body: what cannot be pressed is known by its shape, whatever the colours.
    paint.outline(row, colour.line == colour.edge ? colour.idle : colour.line, 1, radius);
  }
  paint.text(row, Align::centre, control.enabled ? TextStyle::strong : TextStyle::body,
             control.enabled ? colour.text : colour.idle, drawn_label(control));
  if (press.clicked) context.state.asked_action = control.id;
  note_rect(context, control, row);
  show_focus(context, control, row);
}

void draw_action(DrawContext& context, Control& control) {
  draw_button(context, control, take_row(context.theme.touch()));
  take_space(context, 2);
}

}  // namespace widegate
