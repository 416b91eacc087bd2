#include "web/draw/widgets/screen_bars.h"

#include <algorithm>
#include <array>
#include <string>
#include <vector>

#include "web/draw/widgets/control_row.h"
#include "web/draw/widgets/parts.h"
#include "web/view/kept_plan_controls.h"
#include "web/view/screen_controls.h"

namespace widegate {
namespace {

/// "Alder · Open gate".
std::string format_words(const View& view) {
  std::string text;
  for (const std::string_view id : {"/format/camera", "/format/mode"}) {
    const Control* control = view.mirror.find(id);
    if (control == nullptr || control->value_text.empty()) continue;
    if (!text.empty()) text += " · ";
    text += control->value_text;
  }
  return text;
}

void bar_action(DrawContext& context, std::string_view id, const RectPx& box, Icon icon) {
  Control* control = context.view.find(id);
  if (control == nullptr) return;
  note_rect(context, *control, box);
  if (icon_button(context, id, box, icon, control->enabled, control->label)) {
    context.state.asked_action = control->id;
  }
  show_focus(context, *control, inset(box, 3));
}

/// Opens the list of all sections.
void go_to_button(DrawContext& context, const RectPx& box) {
  Control* control = context.view.find(kGoTo);
  if (control == nullptr) return;
  note_rect(context, *control, box);
  if (icon_button(context, kGoTo, box, Icon::list, true, "All sections")) {
    context.state.open_choice = control->id;
  }
  show_focus(context, *control, inset(box, 3));
}

/// Sunlight on and off, from whatever was set before.
void sunlight_button(DrawContext& context, const RectPx& box) {
  if (!icon_button(context, "sunlight", box, Icon::sun, true, "Sunlight colours")) return;
  PanelState& state = context.state;
  const bool on = state.theme == ThemeChoice::sunlight;
  if (!on) state.theme_before = state.theme;
  state.theme = on ? state.theme_before : ThemeChoice::sunlight;
}

/// The largest style whose text fits.
TextStyle fitting_style(const Paint& paint, std::string_view text, const RectPx& box) {
  for (const TextStyle style : {TextStyle::display, TextStyle::headline, TextStyle::title}) {
    const bool tall = paint.line_height(style) > box.height;
    if (!tall && paint.width(style, text) <= box.width) return style;
  }
  return TextStyle::strong;
}

void draw_number(DrawContext& context, const ResultRow& row, const RectPx& box) {
  const Paint paint = context.paint();
  const Palette& colour = context.theme.colour;
  const Press press = pressable(row.key, box);
  if (press.held) paint.fill(inset(box, 2), colour.pressed, 10);
  if (press.clicked && !row.working.empty()) context.state.open_working = row.working;
  const RectPx inner = inset(box, context.theme.space(1));
  const FigureWords words = figure_words(row);
  const float gap = words.unit.empty() ? 0 : context.theme.space(1.25F);
  const float unit = paint.width(TextStyle::caption, words.unit) + gap;
  const float label = std::min(paint.line_height(TextStyle::caption), inner.height * 0.36F);
  const TextStyle style =
      fitting_style(paint, words.number, {0, 0, inner.width - unit, inner.height - label});
  const float value =
      std::min(paint.width(style, words.number) + 1, std::max(0.0F, inner.width - unit));
  const float tall = std::min(inner.height - label, paint.line_height(style));
  const float top = inner.y + (inner.height - tall - label) / 2;
  const float left = inner.x + (inner.width - value - unit) / 2;
  paint.text({left, top, value, tall}, Align::left, style, colour.text, words.number);
  const float lift = (context.theme.type(style).px - context.theme.type(TextStyle::caption).px) / 2;
  paint.text({left + value + gap, top + lift * 0.8F, unit + 2, tall}, Align::left,
             TextStyle::caption, colour.quiet, words.unit);
  paint.text({inner.x, top + tall, inner.width, label}, Align::centre, TextStyle::caption,
             colour.quiet, row.label);
}

/// A short dash for each number of a plan that cannot be worked out.
std::array<ResultRow, 3> no_numbers() {
  std::array<ResultRow, 3> rows;
  constexpr std::array<std::string_view, 3> kLabels = {"Field of view", "Frame line", "On a card"};
  for (std::size_t i = 0; i < rows.size(); ++i) {
    rows[i].key = kLabels[i];
    rows[i].label = kLabels[i];
    rows[i].value_text = "–";
  }
  return rows;
}

/// Room that a section's mark and name need along the rail.
float rail_need(const DrawContext& context, const Section& section) {
  const Paint paint = context.paint();
  const float s = context.theme.scale;
  if (!context.layout.rail_upright) {
    return paint.width(TextStyle::caption, section.title) + context.theme.space(2);
  }
  return 21 * s + paint.line_height(TextStyle::caption) + context.theme.space(2);
}

void draw_rail_item(DrawContext& context, const Section& section, const RectPx& box) {
  const Paint paint = context.paint();
  const Palette& colour = context.theme.colour;
  const bool current = context.state.current == section.id;
  const Press press = pressable(section.id, box);
  note_place(context, "rail", section.id, box);
  if (press.held || press.hovered) paint.fill(inset(box, 2), colour.raised, 10);
  if (press.clicked) context.state.jump = section.id;
  const float mark = 21 * context.theme.scale;
  const float line = paint.line_height(TextStyle::caption);
  const float gap = 2 * context.theme.scale;
  const float top = centre(box).y - (mark + gap + line) / 2;
  paint.mark(section.severity, {centre(box).x, top + mark / 2}, mark);
  paint.text({box.x, top + mark + gap, box.width, line}, Align::centre, TextStyle::caption,
             current ? colour.text : colour.quiet, section.title);
  if (!current) return;
  if (context.layout.rail_upright) {
    paint.fill({box.x, box.y + 6, 4, std::max(0.0F, box.height - 12)}, colour.accent, 2);
  } else {
    paint.fill({box.x + 6, box.y, std::max(0.0F, box.width - 12), 4}, colour.accent, 2);
  }
}

float verdict_item(DrawContext& context, const Section& section, float y) {
  const Paint paint = context.paint();
  const Palette& colour = context.theme.colour;
  const RectPx& rail = context.layout.rail;
  const float pad = context.theme.space(4);
  const float mark = 22 * context.theme.scale;
  const float left = pad + mark + context.theme.space(3);
  const float width = std::max(1.0F, rail.width - left - pad);
  const float title = paint.line_height(TextStyle::strong);
  const float words = paint.wrapped_height(TextStyle::caption, section.verdict, width);
  const RectPx box = {rail.x, y, rail.width, title + words + context.theme.space(5)};
  const Press press = pressable(section.id, box);
  note_place(context, "rail", section.id, box);
  const bool current = context.state.current == section.id;
  if (press.held || press.hovered) paint.fill(box, colour.raised);
  if (current) paint.fill({box.x, box.y + 4, 4, std::max(0.0F, box.height - 8)}, colour.accent, 2);
  if (press.clicked) context.state.jump = section.id;
  const float top = box.y + context.theme.space(2.5F);
  paint.mark(section.severity, {box.x + pad + mark / 2, top + mark / 2}, mark);
  paint.text({box.x + left, top, width, title}, Align::left, TextStyle::strong, colour.text,
             section.title);
  paint.wrapped({box.x + left, top + title, width, words}, TextStyle::caption, colour.quiet,
                section.verdict);
  return bottom(box);
}

/// A section that asks no question: its name alone.
float name_item(DrawContext& context, const Section& section, float y) {
  const Paint paint = context.paint();
  const Palette& colour = context.theme.colour;
  const RectPx& rail = context.layout.rail;
  const float left = context.theme.space(7) + 22 * context.theme.scale;
  const RectPx box = {rail.x, y, rail.width, 32 * context.theme.scale};
  const Press press = pressable(section.id, box);
  const bool current = context.state.current == section.id;
  if (press.held || press.hovered) paint.fill(box, colour.raised);
  if (current) paint.fill({box.x, box.y + 4, 4, std::max(0.0F, box.height - 8)}, colour.accent, 2);
  if (press.clicked) context.state.jump = section.id;
  paint.text({box.x + left, box.y, std::max(0.0F, box.width - left), box.height}, Align::left,
             TextStyle::body, current ? colour.text : colour.quiet, section.title);
  return bottom(box);
}

/// Keeps the section that is read in sight where the rail itself scrolls.
void follow_current(bool upright, const RectPx& rail, const RectPx& item) {
  const float low = upright ? rail.y : rail.x;
  const float high = upright ? bottom(rail) : right(rail);
  const float from = upright ? item.y : item.x;
  const float to = upright ? bottom(item) : right(item);
  const float by = from < low ? from - low : to > high ? to - high : 0.0F;
  if (by == 0) return;
  if (upright) {
    ImGui::SetScrollY(std::max(0.0F, ImGui::GetScrollY() + by));
  } else {
    ImGui::SetScrollX(std::max(0.0F, ImGui::GetScrollX() + by));
  }
}

/// The sections side by side, as wide as they are together or wider: then a finger scrolls them.
void draw_items(DrawContext& context, const RectPx& box) {
  if (box.width < 1 || box.height < 1) return;
  const bool upright = context.layout.rail_upright;
  std::vector<const Section*> shown;
  float need = 0;
  for (const Section& section : context.view.mirror.sections) {
    if (!section.has_verdict) continue;
    shown.push_back(&section);
    need = std::max(need, rail_need(context, section));
  }
  const float count = std::max(1.0F, static_cast<float>(shown.size()));
  const float step = std::max((upright ? box.height : box.width) / count, need);
  const float all = step * count;
  ImGui::SetNextWindowContentSize(upright ? ImVec2(0, all) : ImVec2(all, 0));
  ImGui::SetCursorScreenPos({box.x, box.y});
  ImGui::BeginChild("rail items", {box.width, box.height}, 0,
                    ImGuiWindowFlags_NoBackground | ImGuiWindowFlags_NoScrollbar);
  const bool moved = context.state.current != context.state.rail_current;
  context.state.rail_current = context.state.current;
  float at = upright ? box.y - ImGui::GetScrollY() : box.x - ImGui::GetScrollX();
  for (const Section* section : shown) {
    const RectPx item =
        upright ? RectPx{box.x, at, box.width, step} : RectPx{at, box.y, step, box.height};
    draw_rail_item(context, *section, item);
    if (moved && section->id == context.state.current) follow_current(upright, box, item);
    at += step;
  }
  ImGui::EndChild();
}

/// The plan's name and, below it, its format; pressed, the plans and what can be done with this
/// one.
void draw_plan_name(DrawContext& context, const RectPx& box) {
  const Paint paint = context.paint();
  const Palette& colour = context.theme.colour;
  const Press press = pressable("plan name", box);
  if (press.held || press.hovered) {
    paint.fill(inset(box, 2), surface(context.theme, press), 10 * context.theme.scale);
  }
  if (press.clicked) context.state.open_choice = kShelfList;
  const float pad = context.theme.space(4);
  const float icon = 14 * context.theme.scale;
  const float width = std::max(0.0F, box.width - pad - icon - context.theme.space(2));
  const float strong = paint.line_height(TextStyle::strong);
  const float caption = paint.line_height(TextStyle::caption);
  const std::string& title = context.app.plan().title;
  const bool both = box.height >= strong + caption - 2;
  const float top = both ? centre(box).y - (strong + caption) / 2 : centre(box).y - strong / 2;
  paint.text({box.x + pad, top, width, strong}, Align::left, TextStyle::strong, colour.text, title);
  const float used = std::min(width, paint.width(TextStyle::strong, title));
  paint.icon(Icon::chevron,
             {box.x + pad + used + context.theme.space(1) + icon / 2, top + strong / 2}, icon,
             colour.quiet);
  if (!both) return;
  paint.text({box.x + pad, top + strong, width, caption}, Align::left, TextStyle::caption,
             colour.quiet, format_words(context.view));
}

}  // namespace

void draw_bar(DrawContext& context) {
  const RectPx& bar = context.layout.bar;
  if (bar.height < 20) return;
  const float button = std::min(bar.height, kTouchCssPx * context.theme.scale);
  // With large text the buttons stay as narrow as a finger allows: the name needs the room.
  const float wide = std::min(button, std::max(kTouchCssPx, bar.width * 0.13F));
  const float y = centre(bar).y - button / 2;
  float x = right(bar) - wide;
  sunlight_button(context, {x, y, wide, button});
  x -= wide;
  bar_action(context, kRedo, {x, y, wide, button}, Icon::redo);
  x -= wide;
  bar_action(context, kUndo, {x, y, wide, button}, Icon::undo);
  x -= wide;
  go_to_button(context, {x, y, wide, button});
  if (context.layout.rail_verdicts) return;
  draw_plan_name(context, {bar.x, bar.y, std::max(0.0F, x - bar.x), bar.height});
}

void draw_headline(DrawContext& context) {
  const RectPx& box = context.layout.headline;
  const Paint paint = context.paint();
  paint.fill(box, context.theme.colour.panel);
  if (box.height < 16) return;
  const auto placeholders = no_numbers();
  const auto& rows = context.view.mirror.headline;
  const float each = box.width / static_cast<float>(placeholders.size());
  for (std::size_t i = 0; i < placeholders.size(); ++i) {
    const float x = box.x + each * static_cast<float>(i);
    const ResultRow& row = i < rows.size() ? rows[i] : placeholders[i];
    draw_number(context, row, {x, box.y, each, box.height});
    if (i > 0) {
      paint.line({x, box.y + box.height * 0.2F}, {x, bottom(box) - box.height * 0.2F},
                 context.theme.colour.line, 1);
    }
  }
  paint.line({box.x, bottom(box)}, {right(box), bottom(box)}, context.theme.colour.line,
             context.theme.line_width);
}

void draw_rail(DrawContext& context) {
  const Paint paint = context.paint();
  const RectPx& rail = context.layout.rail;
  if (rail.width < 1 || rail.height < 1) return;
  paint.fill(rail, context.theme.colour.panel);
  if (context.layout.rail_verdicts) {
    const RectPx& safe = context.layout.rail_safe;
    ImGui::SetCursorScreenPos({safe.x, safe.y});
    ImGui::BeginChild("rail", {std::max(1.0F, safe.width), std::max(1.0F, safe.height)}, 0,
                      ImGuiWindowFlags_NoBackground);
    float y = ImGui::GetCursorScreenPos().y;
    const float name = 48 * context.theme.scale;
    draw_plan_name(context, {safe.x, y, safe.width, name});
    y += name + context.theme.space(2);
    for (const Section& section : context.view.mirror.sections) {
      y = section.has_verdict ? verdict_item(context, section, y) : name_item(context, section, y);
    }
    ImGui::SetCursorScreenPos({rail.x, y});
    ImGui::Dummy({1, 1});
    ImGui::EndChild();
    return;
  }
  draw_items(context, context.layout.rail_safe);
  if (!context.layout.rail_upright) {
    paint.line({rail.x, rail.y}, {right(rail), rail.y}, context.theme.colour.line,
               context.theme.line_width);
  }
}

}  // namespace widegate
