// What every panel and widget gets: the state to show, the way to draw it, and where to put what
// is asked for. Adding an input to all panels means adding a member here.
#pragma once

#include "web/app/app.h"
#include "web/app/command.h"
#include "web/draw/widgets/paint.h"
#include "web/look/layout.h"
#include "web/state/screen_state.h"
#include "web/view/view.h"

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
