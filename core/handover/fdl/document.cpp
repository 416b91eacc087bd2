#include "core/handover/fdl/document.h"

namespace widegate::fdl {

std::string decision_id(std::string_view canvas_id, std::string_view intent_id) {
  std::string id(canvas_id);
  id += '-';
  id += intent_id;
  return id;
}

const Canvas* find_canvas(const Document& document, std::string_view id) {
  for (const Context& context : rows(document.contexts)) {
    for (const Canvas& canvas : rows(context.canvases)) {
      if (canvas.id == id) return &canvas;
    }
  }
  return nullptr;
}

double squeeze_of(const Canvas& canvas) { return canvas.anamorphic_squeeze.value_or(1.0); }

Layers layers_of(const Canvas& canvas, const FramingDecision& decision) {
  Layers layers;
  layers.canvas = to_size(canvas.dimensions);
  if (canvas.effective_dimensions) {
    layers.effective.size = to_size(*canvas.effective_dimensions);
    if (canvas.effective_anchor_point) layers.effective.anchor = *canvas.effective_anchor_point;
  }
  if (decision.protection_dimensions) {
    layers.protection.size = *decision.protection_dimensions;
    if (decision.protection_anchor_point) {
      layers.protection.anchor = *decision.protection_anchor_point;
    }
  }
  layers.framing = {decision.anchor_point, decision.dimensions};
  return layers;
}

}  // namespace widegate::fdl
