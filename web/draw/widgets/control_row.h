// One control of the plan as a row of the column, whatever its kind: label, value, and the way to
// change it. All of them come from a Control of the view and push commands; none knows the plan.
#pragma once

#include <string_view>

#include "web/draw/widgets/draw_context.h"

namespace widegate {

/// Draws the control with this id; nothing when the view has none.
void draw_control(DrawContext& context, std::string_view id);

/// Draws it unless it is an action or a list that can not be used now: that would be dead space.
void draw_usable(DrawContext& context, std::string_view id);

/// Sets a control: a value of the plan by a command, a setting of the screen at once.
void set_control(DrawContext& context, const Control& control, std::string_view text,
                 bool continuous);

// One for each kind of control.
void draw_slider(DrawContext& context, Control& control);
void draw_choice(DrawContext& context, Control& control);
void draw_flag(DrawContext& context, Control& control);
void draw_text(DrawContext& context, Control& control);
void draw_action(DrawContext& context, Control& control);
/// The button of an action, in a box of the caller's.
void draw_button(DrawContext& context, Control& control, const RectPx& box);

/// A value that is typed into when pressed, right-aligned in the box; drawn as an open field while
/// it is typed into.
void draw_value_field(DrawContext& context, Control& control, const RectPx& box, Align align);

/// The message under a control whose typed text was not accepted.
void draw_problem(DrawContext& context, const Control& control);

}  // namespace widegate
