// What every panel and widget gets: the state to show, the way to draw it, and where to put what
// is asked for. Adding an input to all panels means adding a member here.
#pragma once

#include "web/app.h"
#include "web/command.h"
#include "web/layout.h"
#include "web/state.h"
#include "web/view.h"
#include "web/widgets/paint.h"

namespace widegate {

struct DrawContext {
  const App& app;
  View& view;  ///< Strings are only read; rectangles are noted in it while drawing.
  const Layout& layout;
  const Theme& theme;
  const Fonts& fonts;
  PanelState& state;
  Commands& commands;
  bool touched = false;              ///< The press under way comes from a finger.
  SceneDrawer draw_scene = nullptr;  ///< Null: nobody can draw scenes.

  /// A painter on the current window.
  [[nodiscard]] Paint paint() const { return {theme, fonts, *ImGui::GetWindowDrawList()}; }
};

}  // namespace widegate
