// What the screen remembers between frames that is not part of the plan: what is open, focused,
// scrolled to, zoomed. Plain data.
#pragma once

#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/lesson/built_in_lessons.h"
#include "web/door/platform.h"
#include "web/door/scene_quad.h"
#include "web/look/scroll_anchor.h"
#include "web/look/theme.h"
#include "web/state/comparison_state.h"
#include "web/state/delivery_state.h"
#include "web/state/lesson_state.h"
#include "web/state/library_state.h"
#include "web/state/show_state.h"

namespace widegate {

/// Which formats are listed.
enum class RankingPart { passing, trade_offs, rejected };

/// Which of these are shown.
enum class RankingKind { all, raw, picture, desqueezed, without_caution };

/// How many rows a sensor mode has in the list.
enum class RankingListing { best_of_mode, every_recording };

/// Formats listed until more are asked for.
inline constexpr std::size_t kFormatsAtFirst = 6;

/// A control being typed into.
struct Typing {
  std::string id;
  std::string before;  ///< Text of the value when typing began.
  std::string draft;   ///< What has been typed so far.
  RectPx rect;         ///< Of the field, in the last frame.
};

/// A slider being dragged.
struct SliderDrag {
  std::string id;
  float start_x = 0;       ///< Pointer, CSS pixels.
  double start_place = 0;  ///< Of the grab, 0 to 1.
};

/// A choice that was made from a list of equipment.
struct UsedLately {
  std::string id;     ///< Of the list.
  std::string value;  ///< Of the entry.
};

/// What the picture shows.
enum class PictureKind { sensor, scene, comparison };

/// The drawing's own view.
struct PictureState {
  float zoom = 1;   ///< 1 shows everything.
  float pan_x = 0;  ///< Of the content, CSS pixels.
  float pan_y = 0;
  float desqueeze = 0;      ///< 0 as on the sensor, 1 as it will be seen.
  bool desqueezed = false;  ///< Where `desqueeze` is heading.
  std::string selected;     ///< Key of the outline that is read out; empty for none.
  PictureKind shows = PictureKind::sensor;
  SceneKind scene = SceneKind::chart;
  bool magnified = false;                ///< The magnifier is open.
  float spot_x = 0.02F, spot_y = 0.03F;  ///< What it looks at; the mode runs from -1 to 1.
};

/// How high a section was when it was last drawn, CSS pixels.
struct PanelHeight {
  std::string_view id;  ///< Of a row of panels(), which is static.
  float height = 0;
};

struct PanelState {
  ThemeChoice theme = ThemeChoice::system;
  ThemeChoice theme_before = ThemeChoice::system;  ///< To go back to from sunlight.
  std::string open_choice;         ///< Control whose picker is open; empty for none.
  std::string open_working;        ///< Key of the figure whose working is shown; empty for none.
  std::string sheet_before;        ///< What lay over the screen in the last frame.
  bool sheet_opened = false;       ///< It was opened in this frame.
  float sheet_pull = 0;            ///< How far a finger has pulled it down, CSS pixels.
  std::string search;              ///< Words that its entries must have.
  std::vector<UsedLately> lately;  ///< Newest first.
  std::uint64_t lately_version = 0;
  std::string asked_plan;    ///< Kept plan that was chosen in this frame.
  std::string asked_action;  ///< Action that was pressed; stays until what does it is here.
  std::optional<Typing> typing;
  std::optional<SliderDrag> drag;
  std::string focus;                   ///< Control with the page's keyboard focus.
  bool reveal_focus = false;           ///< Scroll to it in the next frame.
  std::string jump;                    ///< Section to scroll to in the next frame.
  std::string rail_current;            ///< The section the rail was last scrolled to.
  std::string current;                 ///< Section at the top of the column.
  ScrollAnchor anchor;                 ///< Where the column stands.
  std::vector<PanelHeight> heights;    ///< Of the sections, as they were last drawn.
  std::vector<std::string> open_more;  ///< Sections whose further controls are shown.
  RankingPart ranking_part = RankingPart::passing;
  RankingKind ranking_kind = RankingKind::all;
  RankingListing ranking_listing = RankingListing::best_of_mode;
  std::size_t formats_shown = kFormatsAtFirst;  ///< Of that part.
  std::string same_view_camera;                 ///< Whose modes get a focal length; empty for none.
  std::size_t frame_line = 0;                   ///< Index of the one whose fields are shown.
  bool first_visit = true;  ///< Nothing was found on this device or in the link.
  RestOfProgram rest = RestOfProgram::here;
  bool large_type = false;                          ///< For a wall: everything half as large again.
  std::vector<LessonHead> lesson_heads;             ///< To choose from, once the rest is here.
  std::string lesson;                               ///< Id of the lesson under way; empty for none.
  std::shared_ptr<const LessonShown> lesson_shown;  ///< Null when none is under way.
  std::vector<Lesson> own_lessons;                  ///< Opened here and kept; after the others.
  std::string own_lesson_texts;                     ///< As they are kept.
  std::string asked_lesson;  ///< Link of a lesson that waits for the rest of the program.
  std::size_t lesson_step = 0;
  ComparisonState before_lesson;    ///< What was compared; comes back when the lesson is left.
  std::string message;              ///< What was done, or why not; until the next change.
  bool message_stays = false;       ///< It tells of the change that is under way.
  std::string undo_offer;           ///< The message that has a button to undo beside it.
  std::string entry;                ///< The value of the plan that was set last.
  std::optional<bool> reply_above;  ///< Where its answers stand; decided when it is drawn.
  PictureState picture;
  ComparisonState comparison;
  DeliveryState delivery;
  ShowState show;
  LibraryState library;
  ShelfState shelf;
  MemoryState memory;

  [[nodiscard]] bool shows_more(std::string_view section) const {
    for (const std::string& id : open_more) {
      if (id == section) return true;
    }
    return false;
  }
};

/// Says what was done, with the way back beside it.
inline void offer_undo(PanelState& state, std::string message) {
  state.message = std::move(message);
  state.undo_offer = state.message;
}

}  // namespace widegate
