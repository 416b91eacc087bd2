#include "web/draw/widgets/control_row.h"

#include <algorithm>

#include "web/act/lesson_actions.h"
#include "web/act/library_actions.h"
#include "web/act/show_actions.h"
#include "web/draw/widgets/parts.h"
#include "web/view/choice_search.h"
#include "web/view/comparison.h"
#include "web/view/frame_lines.h"
#include "web/view/kept_plan_controls.h"
#include "web/view/library_controls.h"
#include "web/view/picture_controls.h"
#include "web/view/plan_controls.h"
#include "web/view/ranking_controls.h"
#include "web/view/screen_controls.h"
#include "web/view/see_rows.h"

namespace widegate {

void set_control(DrawContext& context, const Control& control, std::string_view text,
                 bool continuous) {
  if (control.kind == ControlKind::choice) note_lately(context.state, control.id, text);
  if (control.id == kSearch) {
    context.state.search = text;
  } else if (control.id == kFormat) {
    if (auto format = format_from_id(text)) {
      context.commands.emplace_back(ChooseFormat{std::move(*format)});
    }
  } else if (control.id.starts_with(kLibraryPrefix)) {
    set_library_control(control.id, text, context.app, context.state);
  } else if (control.id.starts_with(kShowPrefix)) {
    set_show_control(control.id, text, context.app, context.state);
  } else if (control.id == kShelfList) {
    context.state.asked_plan = text;
  } else if (control.id == kTheme) {
    context.state.theme = theme_from_key(text);
  } else if (control.id == kGoTo) {
    context.state.jump = text;
  } else if (control.id == kSameView) {
    context.state.same_view_camera = text;
  } else if (control.id == kLargeType) {
    context.state.large_type = text == "true";
  } else if (control.id == kLesson) {
    start_lesson(text, context.app, context.state, context.commands);
  } else if (!set_ranking_control(control.id, text, context.app, context.state, context.commands) &&
             !set_frame_line(control.id, text, context.state) &&
             !set_picture_control(control.id, text, context.state) &&
             !set_comparison_control(control.id, text, context.app, context.state.comparison)) {
    if (context.state.entry != control.id || !continuous) context.state.reply_above.reset();
    context.state.entry = control.id;
    context.commands.push_back(SetField{control.id, field_input(control.id, text), continuous});
  }
}

void draw_problem(DrawContext& context, const Control& control) {
  if (control.problem.empty()) return;
  const Paint paint = context.paint();
  const float mark = 18 * context.theme.scale;
  const float left = mark + context.theme.space(2);
  const float width = ImGui::GetContentRegionAvail().x - left;
  const float height = paint.wrapped_height(TextStyle::caption, control.problem, width);
  const RectPx row = take_row(std::max(height, mark) + context.theme.space(1));
  paint.mark(Severity::fail, {row.x + mark / 2, row.y + mark / 2}, mark);
  paint.wrapped({row.x + left, row.y, width, height}, TextStyle::caption, context.theme.colour.fail,
                control.problem);
}

void draw_value_field(DrawContext& context, Control& control, const RectPx& box, Align align) {
  const Paint paint = context.paint();
  const Palette& colour = context.theme.colour;
  const bool typing = context.state.typing && context.state.typing->id == control.id;
  const Press press = pressable("value", box);
  const float radius = 8 * context.theme.scale;
  paint.fill(box, typing ? colour.page : surface(context.theme, press), radius);
  if (typing || context.theme.line_width > 1) {
    paint.outline(box, typing ? colour.accent : colour.edge, typing ? 2 : context.theme.line_width,
                  radius);
  }
  if (press.clicked && control.enabled) {
    context.state.typing = Typing{control.id, control.edit_text, control.edit_text, box};
  }
  if (typing) context.state.typing->rect = box;
  const float pad = context.theme.space(2.5F);
  RectPx inner = inset(box, 0);
  inner.x += pad;
  inner.width = std::max(0.0F, inner.width - 2 * pad);
  if (typing) {
    paint.text(inner, align, TextStyle::strong, colour.text, context.state.typing->draft);
    return;
  }
  if (!control.unit.empty() && align == Align::right) {
    const float unit = paint.width(TextStyle::caption, control.unit);
    paint.text({right(inner) - unit, inner.y + 1, unit + 1, inner.height}, Align::left,
               TextStyle::caption, colour.quiet, control.unit);
    inner.width = std::max(0.0F, inner.width - unit - context.theme.space(1));
  }
  const bool empty = control.kind == ControlKind::text && control.edit_text.empty();
  paint.text(inner, align, empty ? TextStyle::caption : TextStyle::strong,
             empty ? colour.quiet : colour.text, control.value_text);
}

void draw_usable(DrawContext& context, std::string_view id) {
  const Control* control = context.view.find(id);
  if (control != nullptr && control->enabled) draw_control(context, id);
}

void draw_control(DrawContext& context, std::string_view id) {
  Control* control = context.view.find(id);
  if (control == nullptr) return;
  ImGui::PushID(id.data(), id.data() + id.size());
  switch (control->kind) {
    case ControlKind::slider:
      draw_slider(context, *control);
      break;
    case ControlKind::choice:
      draw_choice(context, *control);
      break;
    case ControlKind::flag:
      draw_flag(context, *control);
      break;
    case ControlKind::text:
      draw_text(context, *control);
      break;
    case ControlKind::action:
      draw_action(context, *control);
      break;
  }
  draw_problem(context, *control);
  ImGui::PopID();
}

}  // namespace widegate
