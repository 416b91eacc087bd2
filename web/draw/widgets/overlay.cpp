#include "web/draw/widgets/overlay.h"

#include <algorithm>
#include <string>
#include <vector>

#include "imgui.h"
#include "imgui_internal.h"
#include "web/draw/widgets/control_row.h"
#include "web/draw/widgets/parts.h"
#include "web/draw/widgets/working.h"
#include "web/look/pulled_down.h"
#include "web/view/choice_search.h"
#include "web/view/kept_plan_controls.h"
#include "web/view/screen_controls.h"

namespace widegate {
namespace {

constexpr float kPad = 4;           // Beside the text, steps of the spacing grid.
constexpr float kPullToClose = 90;  // A sheet pulled down this far goes away when let go.
constexpr float kPullFrom = 8;      // Less is a finger that stands still.
constexpr float kMostOfScreen = 0.78F;

/// Width of an entry's words.
float entry_room(const DrawContext& context, float width) {
  return std::max(1.0F, width - context.theme.space(9) - 18 * context.theme.scale);
}

/// Height of an entry of a list. Names are never cut: they often differ at their end.
float entry_height(const DrawContext& context, const ChoiceItem& item, float width) {
  const Paint paint = context.paint();
  const float room = entry_room(context, width);
  const float words = paint.wrapped_height(TextStyle::strong, item.label, room) +
                      paint.wrapped_height(TextStyle::caption, item.detail, room);
  return std::max(context.theme.touch() + 4, words + context.theme.space(4));
}

/// Of its text.
float sheet_width(const DrawContext& context) {
  const bool portrait = context.layout.shape == Shape::portrait;
  const float margin = portrait ? 0 : context.theme.space(6);
  const float width = portrait ? context.layout.screen.width : context.layout.column.width - margin;
  return std::max(1.0F, width - context.theme.space(2 * kPad));
}

RectPx sheet_box(const DrawContext& context, float wanted) {
  const RectPx& screen = context.layout.screen;
  const float visible = context.layout.visible_height;
  // With a keyboard up all that it leaves.
  const float most = visible < screen.height ? visible : screen.height * kMostOfScreen;
  const float height = std::min(wanted, most);
  if (context.layout.shape == Shape::portrait) {
    return {0, visible - height, screen.width, height};
  }
  const RectPx& column = context.layout.column;
  const float margin = context.theme.space(3);
  const float width = sheet_width(context) + context.theme.space(2 * kPad);
  return {column.x + margin, std::max(0.0F, (visible - height) / 2), width, height};
}

void close(DrawContext& context) {
  PanelState& state = context.state;
  if (state.typing && state.typing->id == kSearch) state.typing.reset();
  state.open_choice.clear();
  state.open_working.clear();
  state.search.clear();
  state.sheet_pull = 0;
}

/// A finger that pulls the sheet down moves it, and closes it when it was pulled far enough. What
/// lay under the finger is not pressed then.
void follow_pull(DrawContext& context, const RectPx& box) {
  PanelState& state = context.state;
  const ImGuiIO& io = ImGui::GetIO();
  const bool on_it = context.touched && contains(box, io.MouseClickedPos[0]);
  const float pulled = io.MousePos.y - io.MouseClickedPos[0].y;
  if (io.MouseDown[0] && on_it && (pulled > kPullFrom || state.sheet_pull > 0)) {
    ImGui::ClearActiveID();
    state.sheet_pull = std::max(1.0F, pulled);
  } else if (!io.MouseDown[0] && state.sheet_pull > 0) {
    const bool far = state.sheet_pull > std::min(kPullToClose, box.height / 3);
    state.sheet_pull = 0;
    if (far) close(context);
  }
}

/// Title, cross and, for a finger, the grip; they stay where they are while the rest scrolls.
/// Returns their height.
float draw_title(DrawContext& context, std::string_view title, const RectPx& box) {
  const Paint paint = context.paint();
  const float touch = kTouchCssPx * context.theme.scale;
  const float pad = context.theme.space(kPad);
  const RectPx row = {box.x + pad, box.y + context.theme.space(3),
                      std::max(0.0F, box.width - 2 * pad), touch};
  if (context.theme.coarse) {
    const float grip = 36 * context.theme.scale;
    paint.fill({centre(box).x - grip / 2, box.y + context.theme.space(1.5F), grip, 4},
               context.theme.colour.edge, 2);
  }
  paint.text({row.x, row.y, std::max(0.0F, row.width - touch), touch}, Align::left,
             TextStyle::title, context.theme.colour.text, title);
  if (icon_button(context, "close", {right(row) - touch, row.y, touch, touch}, Icon::close)) {
    close(context);
  }
  return bottom(row) + context.theme.space(1) - box.y;
}

void draw_entry(DrawContext& context, const Control& control, const ChoiceItem& item) {
  const Paint paint = context.paint();
  const Palette& colour = context.theme.colour;
  const bool chosen = item.value == control.edit_text;
  const float width = ImGui::GetContentRegionAvail().x;
  const RectPx row = take_row(entry_height(context, item, width));
  ImGui::PushID(item.value.data(), item.value.data() + item.value.size());
  const Press press = pressable("entry", row);
  note_place(context, "entry", item.value, row);
  ImGui::PopID();
  const float radius = 10 * context.theme.scale;
  if (chosen || press.held || press.hovered) {
    paint.fill(row, chosen ? colour.accent : surface(context.theme, press), radius);
  }
  const float pad = context.theme.space(3);
  const float icon = 18 * context.theme.scale;
  const float room = entry_room(context, width);
  const float label = paint.wrapped_height(TextStyle::strong, item.label, room);
  const float detail = paint.wrapped_height(TextStyle::caption, item.detail, room);
  const float top = centre(row).y - (label + detail) / 2;
  paint.wrapped({row.x + pad, top, room, label}, TextStyle::strong,
                chosen ? colour.on_accent : colour.text, item.label);
  paint.wrapped({row.x + pad, top + label, room, detail}, TextStyle::caption,
                chosen ? colour.on_accent : colour.quiet, item.detail);
  if (chosen) {
    paint.icon(Icon::tick, {right(row) - pad - icon / 2, centre(row).y}, icon, colour.on_accent);
    if (context.state.sheet_opened) ImGui::SetScrollHereY(0.5F);
  }
  if (!press.clicked) return;
  set_control(context, control, item.value, false);
  close(context);
}

float group_name_height(const DrawContext& context) {
  return context.paint().line_height(TextStyle::caption) + context.theme.space(3);
}

void draw_group_name(const DrawContext& context, std::string_view words) {
  const Paint paint = context.paint();
  const RectPx row = take_row(group_name_height(context));
  paint.text({row.x + context.theme.space(3), row.y + context.theme.space(2), row.width,
              paint.line_height(TextStyle::caption)},
             Align::left, TextStyle::caption, context.theme.colour.quiet, words);
}

/// Something that can be done with the plan on the screen.
struct Way {
  std::string words;
  std::string_view action;  ///< Of an action of the view; empty: the title is typed anew.
};

/// What stands above the list of the other plans.
std::vector<Way> ways_of(DrawContext& context, const Control& control) {
  std::vector<Way> ways;
  if (control.id != kShelfList) return ways;
  ways.push_back({"Rename this plan", {}});
  for (const std::string_view id : {kShelfAdd, kShelfCopy, kStartAfresh}) {
    const Control* action = context.view.find(id);
    if (action != nullptr && action->enabled) ways.push_back({action->label, id});
  }
  return ways;
}

void rename_plan(DrawContext& context) {
  const Control* title = context.view.find("/title");
  if (title == nullptr) return;
  context.state.jump = title->section;
  context.state.typing = Typing{title->id, title->edit_text, title->edit_text, {}};
}

void draw_way(DrawContext& context, const Way& way) {
  const Paint paint = context.paint();
  const RectPx row = take_row(context.theme.touch() + 4);
  const Press press = pressable(way.words, row);
  if (press.held || press.hovered) {
    paint.fill(row, surface(context.theme, press), 10 * context.theme.scale);
  }
  const float pad = context.theme.space(3);
  paint.text({row.x + pad, row.y, std::max(0.0F, row.width - 2 * pad), row.height}, Align::left,
             TextStyle::strong, context.theme.colour.accent, way.words);
  if (!press.clicked) return;
  close(context);
  if (way.action.empty()) {
    rename_plan(context);
  } else {
    context.state.asked_action = way.action;
  }
}

void draw_search(DrawContext& context) {
  Control* search = context.view.find(kSearch);
  if (search == nullptr) return;
  const RectPx row = take_row(context.theme.touch());
  ImGui::PushID("search");
  draw_value_field(context, *search, row, Align::left);
  ImGui::PopID();
  note_rect(context, *search, row);
  take_space(context, 1);
}

void draw_entries(DrawContext& context, const Control& control, const ChoiceList& list) {
  if (!list.lately.empty()) draw_group_name(context, "Used lately");
  ImGui::PushID("lately");
  for (const ChoiceItem* item : list.lately) draw_entry(context, control, *item);
  ImGui::PopID();
  if (!list.lately.empty()) draw_group_name(context, "All");
  for (const ChoiceItem* item : list.rest) draw_entry(context, control, *item);
  if (list.rest.empty()) draw_group_name(context, "Nothing in this list has these words.");
}

/// The dimmed screen that a sheet lies on. Follow with begin_sheet() and End().
void begin_overlay(DrawContext& context) {
  const RectPx& screen = context.layout.screen;
  ImGui::SetNextWindowPos({0, 0});
  ImGui::SetNextWindowSize({std::max(1.0F, screen.width), std::max(1.0F, screen.height)});
  ImGui::SetNextWindowFocus();
  ImGui::Begin("sheet", nullptr,
               ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoMove |
                   ImGuiWindowFlags_NoSavedSettings | ImGuiWindowFlags_NoBackground |
                   ImGuiWindowFlags_NoScrollWithMouse);
  context.paint().fill(screen, rgb(0x000000), 0, 0.55F);
  if (pressable("outside", screen).clicked) close(context);
}

/// The sheet inside the overlay, high enough for its title and `content` CSS pixels; what follows
/// scrolls below the title. Follow with EndChild().
void begin_sheet(DrawContext& context, std::string_view title, float content) {
  const Paint paint = context.paint();
  const float around = kTouchCssPx * context.theme.scale + context.theme.space(9);
  RectPx box = sheet_box(context, around + content + context.layout.bottom_inset);
  follow_pull(context, box);
  box.y += context.state.sheet_pull;
  const float radius = 18 * context.theme.scale;
  const bool at_edge = context.layout.shape == Shape::portrait;
  const RectPx drawn = {box.x, box.y, box.width, box.height + (at_edge ? radius : 0)};
  paint.fill(drawn, context.theme.colour.panel, radius);
  paint.outline(drawn, context.theme.colour.edge, context.theme.line_width, radius);
  const float head = draw_title(context, title, box);
  ImGui::SetCursorScreenPos({box.x, box.y + head});
  ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {context.theme.space(kPad), 0});
  ImGui::BeginChild("sheet body", {std::max(1.0F, box.width), std::max(1.0F, box.height - head)},
                    ImGuiChildFlags_AlwaysUseWindowPadding, ImGuiWindowFlags_NoBackground);
  ImGui::PopStyleVar();
  ImGui::GetCurrentWindow()->StateStorage.SetBool(ImHashStr(kPulledDown), true);
}

/// Height of everything in a list's sheet below its title. A list that is searched keeps its height
/// whatever is found.
float list_height(const DrawContext& context, const Control& control, const ChoiceList& list,
                  std::size_t ways) {
  if (is_long(control)) return context.layout.screen.height;
  float height = static_cast<float>(ways) * (context.theme.touch() + 4);
  for (const ChoiceItem* item : list.rest) {
    height += entry_height(context, *item, sheet_width(context));
  }
  return height;
}

void draw_choice_sheet(DrawContext& context, const Control& control) {
  begin_overlay(context);
  const ChoiceList list = choice_list(control, context.state);
  const std::vector<Way> ways = ways_of(context, control);
  begin_sheet(context, control.label, list_height(context, control, list, ways.size()));
  if (is_long(control)) draw_search(context);
  for (const Way& way : ways) draw_way(context, way);
  draw_entries(context, control, list);
  static_cast<void>(take_row(std::max(1.0F, context.layout.bottom_inset)));
  ImGui::EndChild();
  ImGui::End();
}

void draw_working_sheet(DrawContext& context, const WorkingText& working) {
  begin_overlay(context);
  begin_sheet(context, working.title, working_height(context, working, sheet_width(context)));
  draw_working(context, working);
  static_cast<void>(take_row(std::max(1.0F, context.layout.bottom_inset)));
  ImGui::EndChild();
  ImGui::End();
}

}  // namespace

bool draw_sheet(DrawContext& context) {
  PanelState& state = context.state;
  const std::string open = state.open_choice + state.open_working;
  state.sheet_opened = open != state.sheet_before;
  state.sheet_before = open;
  if (const Control* control = context.view.find(state.open_choice)) {
    draw_choice_sheet(context, *control);
    return true;
  }
  if (context.view.mirror.working.title.empty()) return false;
  draw_working_sheet(context, context.view.mirror.working);
  return true;
}

}  // namespace widegate
