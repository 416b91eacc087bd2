// How every section of the column is drawn: question, verdict, controls, figures, notes, more.
#pragma once

#include "web/draw/widgets/draw_context.h"
#include "web/view/section.h"

namespace widegate {

/// Draws one section at the window's cursor.
void draw_panel(DrawContext& context, const Panel& panel);

/// Draws all of them in the column's box, scrolled; notes which one is at the top.
void draw_column(DrawContext& context);

/// Opens "More" of the section a control is behind, so that it can be shown.
void open_for(PanelState& state, const Control& control);

}  // namespace widegate
