// The result canvas drawn to scale, and its layers in words beside the line each is drawn with.
#pragma once

#include "core/handover/fdl/plan_delivery.h"
#include "web/draw/widgets/draw_context.h"

namespace widegate {

/// Draws the canvas at the window's cursor: padding hatched, the layers as outlines.
void draw_delivery_canvas(DrawContext& context, const fdl::Delivery& delivery);

/// The sizes and places of its layers, one row each, then the other figures.
void draw_delivery_figures(DrawContext& context, const fdl::Delivery& delivery);

}  // namespace widegate
