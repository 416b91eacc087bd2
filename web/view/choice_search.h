// Long lists of choices: what was used lately comes first, and words that are typed leave only what
// has them. No drawing.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "web/door/mirror.h"
#include "web/state/screen_state.h"

namespace widegate {

/// The control of the words that are searched; there only while a long list is open.
inline constexpr std::string_view kSearch = "view:search";
inline constexpr std::string_view kLatelyKey = "lately";

/// The entries of a list in the order they are shown.
struct ChoiceList {
  std::vector<const ChoiceItem*> lately;  ///< Newest first; of a long list that is not searched.
  std::vector<const ChoiceItem*> rest;
};

/// A list that is searched rather than looked through.
[[nodiscard]] bool is_long(const Control& control);

/// Points into the control.
[[nodiscard]] ChoiceList choice_list(const Control& control, const PanelState& state);

/// The control of the searched words, for the section of the open list.
[[nodiscard]] Control search_control(const Control& open, const PanelState& state);

/// Remembers what was chosen from a list of equipment.
void note_lately(PanelState& state, std::string_view id, std::string_view value);

/// What is kept on the device, and read from there; a text that is none gives an empty list.
[[nodiscard]] std::string lately_text(const PanelState& state);
void read_lately(PanelState& state, std::string_view text);

}  // namespace widegate
