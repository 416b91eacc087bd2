// Nothing moves under the finger: where the column of questions stands. Every row notes where it
// was laid out; after a layout the scroll is set so that the row that was touched last stays where
// it was on the screen, whatever grew, shrank, came or went around it, and across a turn of the
// screen. Portable; it may touch the scroll of the column's window, never the plan or the drawing.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "web/door/mirror.h"

struct ImGuiWindow;

namespace widegate {

/// What lays a whole screen out anew: a turn, another text size.
struct ScreenShape {
  float width = 0, height = 0, text_scale = 0;
  friend bool operator==(const ScreenShape&, const ScreenShape&) = default;
};

/// The scroll of one window whose content may change at any time.
///
/// A layout is begin(), enter(), row() for each row and leave(). What is touched is the row under a
/// press, or the control that keyboard or typing is in; when neither is known (the person scrolled)
/// the topmost row in sight. A row that vanished is stood in for by its nearest neighbour, of its
/// own section while that lasts.
class ScrollAnchor {
 public:
  /// Before the window begins. `box` is where it will be. Where `shape` is another one the whole
  /// screen was laid out anew, and places are carried over in proportion.
  void begin(const RectPx& box, const ScreenShape& shape);
  /// Inside the window, before its first row.
  void enter();
  /// A row at its place on the screen. `key` is the same in every layout.
  void row(std::string_view key, float top, float height);
  /// The rows from now on belong to this section, whose id is static.
  void section(std::string_view id) { section_ = id; }
  /// After the last row, still inside the window. `held` is the control that is typed into or has
  /// the page's focus; empty for none.
  void leave(std::string_view held);

  /// A control was worked from outside the drawing: it stays where it is, if it is in sight.
  void touched(std::string_view key);

  /// True when the last layout moved the scroll: what is on the screen is not yet where it belongs.
  [[nodiscard]] bool moved() const { return moved_; }

 private:
  struct Row {
    std::uint32_t key = 0;
    std::string_view section;
    float top = 0;
    float height = 0;
  };

  [[nodiscard]] const Row* find(std::uint32_t key) const;
  [[nodiscard]] ImGuiWindow* window() const;
  void stand_on(float y);
  void stand_on_top();
  bool stand_on(std::string_view key);
  void order_around(const Row& middle);
  void carry_over();
  void hold();
  void scroll_by(float delta);
  void give_back_room(ImGuiWindow& window);

  std::vector<Row> rows_;      ///< Of the layout under way, then of the last one.
  std::vector<Row> standing_;  ///< What stays, the dearest first.
  std::string held_;           ///< As leave() was told last.
  std::string_view section_;
  RectPx box_{};
  std::uint32_t window_ = 0;
  ScreenShape shape_;
  float start_ = 0;         ///< Where the first row began on the screen.
  float content_ = 0;       ///< Height of all rows.
  float head_ = 0;          ///< Empty room above them, so that the first ones can stay lower.
  float tail_ = 0;          ///< And below.
  bool by_person_ = false;  ///< The scroll of this layout was asked for by somebody else.
  bool ours_ = false;       ///< The scroll that is asked for is our own.
  bool moved_ = false;
};

}  // namespace widegate
