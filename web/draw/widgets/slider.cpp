// A number: label and value on one line, the track with its steps below, usual values as chips.
#include <algorithm>
#include <cmath>
#include <string>

#include "core/base/number_text.h"
#include "core/report/figure_text.h"
#include "imgui.h"
#include "imgui_internal.h"
#include "web/draw/widgets/control_row.h"
#include "web/draw/widgets/parts.h"

namespace widegate {
namespace {

/// Where the grab can go, inside the pressable box.
struct Track {
  RectPx box;
  float left = 0;
  float length = 0;

  [[nodiscard]] float x_of(double place) const { return left + length * static_cast<float>(place); }
};

Track make_track(const Theme& theme, const RectPx& box) {
  const float radius = 11 * theme.scale;
  return {box, box.x + radius, std::max(1.0F, box.width - 2 * radius)};
}

void draw_ticks(const Paint& paint, const Control& control, const Track& track, float y) {
  for (const ChoiceItem& item : control.choices) {
    const auto value = parse_rational(item.value);
    if (!value) continue;
    const double number = value->to_double();
    if (number < control.min || number > control.max) continue;
    const float x = track.x_of(slider_place(control, number));
    const float s = paint.theme().scale;
    paint.line({x, y + 7 * s}, {x, y + 12 * s}, paint.theme().colour.edge, 1.5F);
  }
}

/// What the ends of the slider are, and where no more is possible.
void draw_ends(const Paint& paint, const Control& control, const Track& track, float y) {
  const Palette& colour = paint.theme().colour;
  const float line = paint.line_height(TextStyle::small);
  const float top = std::min(y + 9 * paint.theme().scale, bottom(track.box) - line);
  const RectPx row = {track.box.x, top, track.box.width, line};
  const bool at_end = control.ceiling > 0 && control.ceiling >= control.max - control.step / 2;
  const std::string high = short_number(control.max, 2) + (at_end ? " at most" : "");
  paint.text(row, Align::left, TextStyle::small, colour.quiet, short_number(control.min, 2));
  paint.text(row, Align::right, TextStyle::small, colour.quiet, high);
  if (control.ceiling <= 0 || at_end) return;
  const float x = track.x_of(slider_place(control, control.ceiling));
  const float s = paint.theme().scale;
  paint.line({x, y - 12 * s}, {x, y + 12 * s}, colour.fail, 2);
  const std::string most = short_number(control.ceiling, 2) + " at most";
  const float width = paint.width(TextStyle::small, most);
  const float left =
      std::clamp(x - width / 2, track.box.x, std::max(track.box.x, right(track.box) - width));
  paint.text({left, y - 12 * s - line, width + 1, line}, Align::left, TextStyle::small, colour.fail,
             most);
}

void paint_track(const DrawContext& context, const Control& control, const Track& track,
                 bool held) {
  const Paint paint = context.paint();
  const Palette& colour = context.theme.colour;
  const float s = context.theme.scale;
  const float y = centre(track.box).y;
  const float x = track.x_of(slider_place(control, control.value));
  const float half = 3 * s;
  draw_ticks(paint, control, track, y);
  draw_ends(paint, control, track, y);
  const RectPx whole = {track.left - half, y - half, track.length + 2 * half, 2 * half};
  paint.fill(whole, context.theme.line_width > 1 ? colour.raised : colour.pressed, half);
  if (context.theme.line_width > 1) paint.outline(whole, colour.edge, 1.5F, half);
  paint.fill({whole.x, whole.y, std::max(0.0F, x - whole.x), 2 * half}, colour.accent, half);
  const float radius = (held ? 13.0F : 11.0F) * s;
  paint.list().AddCircleFilled({x, y}, radius, ink(colour.accent), 32);
  paint.list().AddCircleFilled({x, y}, radius - 4 * s, ink(colour.on_accent), 32);
}

/// A finger moves the value by how far it moves; a mouse puts the grab where it points.
void begin_drag(DrawContext& context, const Control& control, const Track& track) {
  const ImVec2 mouse = ImGui::GetIO().MousePos;
  const double place = slider_place(control, control.value);
  const bool on_grab = std::abs(mouse.x - track.x_of(place)) < 16 * context.theme.scale;
  SliderDrag drag{control.id, mouse.x, place};
  if (!context.touched && !on_grab) drag.start_place = (mouse.x - track.left) / track.length;
  context.state.drag = drag;
}

void follow_drag(DrawContext& context, const Control& control, const Track& track) {
  const auto& drag = context.state.drag;
  if (!drag || drag->id != control.id) return;
  const float moved = ImGui::GetIO().MousePos.x - drag->start_x;
  if (moved == 0 && drag->start_place == slider_place(control, control.value)) return;
  const double value = slider_value(control, drag->start_place + moved / track.length);
  if (value == control.value) return;
  set_control(context, control, value_as_text(control, value), true);
}

void drag_track(DrawContext& context, Control& control, const RectPx& box) {
  const Track track = make_track(context.theme, box);
  const ImVec2 before = ImGui::GetCursorScreenPos();
  ImGui::SetCursorScreenPos({box.x, box.y});
  ImGui::InvisibleButton("track", {std::max(1.0F, box.width), std::max(1.0F, box.height)});
  const bool held = ImGui::IsItemActive();
  if (ImGui::IsItemActivated()) begin_drag(context, control, track);
  if (held) follow_drag(context, control, track);
  if (ImGui::IsItemDeactivated()) {
    context.state.drag.reset();
    context.commands.emplace_back(EndGesture{});
  }
  ImGui::SetCursorScreenPos(before);
  ImGui::Dummy({0, 0});
  ImGui::SetCursorScreenPos(before);
  note_rect(context, control, box);
  paint_track(context, control, track, held);
}

bool draw_chip(DrawContext& context, const Control& control, const ChoiceItem& item,
               const RectPx& box) {
  const Paint paint = context.paint();
  const Palette& colour = context.theme.colour;
  const auto value = parse_rational(item.value);
  const bool chosen =
      value && std::abs(value->to_double() - control.value) < 1e-9 * std::max(1.0, control.value);
  const Press press = pressable(item.value, box);
  const float radius = 8 * context.theme.scale;
  const RectPx drawn = {box.x, box.y + 4, box.width, std::max(0.0F, box.height - 8)};
  paint.fill(drawn, chosen ? colour.accent : surface(context.theme, press), radius);
  if (context.theme.line_width > 1) paint.outline(drawn, colour.edge, 1.5F, radius);
  paint.text(drawn, Align::centre, chosen ? TextStyle::strong : TextStyle::body,
             chosen ? colour.on_accent : colour.text, item.label);
  return press.clicked;
}

/// How many chips of this width stand in a line, so that all lines are about equally full.
std::size_t chips_in_line(std::size_t count, float width, float gap, float room) {
  const auto most = static_cast<std::size_t>(std::max(1.0F, (room + gap) / (width + gap)));
  const std::size_t lines = (count + most - 1) / most;
  return std::max<std::size_t>(1, (count + lines - 1) / std::max<std::size_t>(1, lines));
}

void draw_chips(DrawContext& context, const Control& control) {
  const Paint paint = context.paint();
  const float gap = context.theme.space(1.5F);
  const float room = ImGui::GetContentRegionAvail().x;
  float widest = kTouchCssPx * context.theme.scale;
  std::size_t count = 0;
  for (const ChoiceItem& item : control.choices) {
    if (item.label.empty()) continue;
    ++count;
    widest = std::max(widest, paint.width(TextStyle::strong, item.label) + context.theme.space(3));
  }
  if (count == 0) return;
  const std::size_t each_line = chips_in_line(count, widest, gap, room);
  const float columns = static_cast<float>(each_line);
  const float width = std::min((room + gap) / columns - gap, widest * 1.7F);
  RectPx row;
  std::size_t at = 0;
  for (const ChoiceItem& item : control.choices) {
    if (item.label.empty()) continue;
    if (at % each_line == 0) row = take_row(context.theme.touch());
    const float x = row.x + static_cast<float>(at % each_line) * (width + gap);
    if (draw_chip(context, control, item, {x, row.y, width, row.height})) {
      set_control(context, control, item.value, false);
    }
    ++at;
  }
}

void draw_label_line(DrawContext& context, Control& control, const RectPx& row) {
  const Paint paint = context.paint();
  const float touch = row.height;
  const float value_width =
      std::clamp(paint.width(TextStyle::strong, control.value_text) +
                     paint.width(TextStyle::caption, control.unit) + context.theme.space(7),
                 92 * context.theme.scale, row.width * 0.55F);
  const RectPx value = {right(row) - value_width, row.y + 2, value_width, touch - 4};
  draw_value_field(context, control, value, Align::right);
  float label_right = value.x - context.theme.space(2);
  if (control.changed && control.enabled) {
    const RectPx reset = {value.x - touch, row.y, touch, touch};
    if (icon_button(context, "reset", reset, Icon::reset, true, "Back to the usual value")) {
      context.commands.emplace_back(ResetField{control.id});
    }
    label_right = reset.x;
  }
  paint.text({row.x, row.y, std::max(0.0F, label_right - row.x), touch}, Align::left,
             TextStyle::body, context.theme.colour.text, control.label);
}

}  // namespace

void draw_slider(DrawContext& context, Control& control) {
  const float touch = context.theme.touch();
  const RectPx top = take_row(touch);
  draw_label_line(context, control, top);
  const RectPx row = take_row(touch);
  context.state.anchor.row(control.id, top.y, bottom(row) - top.y);
  const RectPx less = {row.x, row.y, touch, touch};
  const RectPx more = {right(row) - touch, row.y, touch, touch};
  if (icon_button(context, "less", less, Icon::minus, true, "One step down")) {
    set_control(context, control, stepped_text(control, -1), false);
  }
  if (icon_button(context, "more", more, Icon::plus, true, "One step up")) {
    set_control(context, control, stepped_text(control, 1), false);
  }
  const RectPx track = {right(less), row.y, std::max(0.0F, more.x - right(less)), touch};
  drag_track(context, control, track);
  show_focus(context, control, {top.x, top.y, top.width, bottom(row) - top.y});
  draw_chips(context, control);
  take_space(context, 2);
}

}  // namespace widegate
