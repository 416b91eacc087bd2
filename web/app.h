// The front end's first window; portable, no browser calls here.
#pragma once

namespace widegate {

/// Loads the built-in fonts into the current Dear ImGui context.
void load_fonts();

/// Draws one frame's widgets into the current Dear ImGui context, between NewFrame and Render.
void draw_app();

}  // namespace widegate
