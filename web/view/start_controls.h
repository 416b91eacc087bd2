// The first ten seconds: what this is, examples to play with, and on later visits the plans kept.
#pragma once

#include <string_view>
#include <vector>

#include "web/app/app.h"
#include "web/door/mirror.h"
#include "web/state/screen_state.h"

namespace widegate {

inline constexpr std::string_view kStartSection = "start";
inline constexpr std::string_view kStartPrefix = "start:";
inline constexpr std::string_view kStartExample = "start:example:";
inline constexpr std::string_view kStartPlan = "start:plan:";
inline constexpr std::string_view kStartCamera = "start:own-camera";

/// One sentence for somebody who has never seen it.
inline constexpr std::string_view kWhatThisIs =
    "Will this recording format do the job? See what the lens covers and shows, how many pixels "
    "are left, how long the cards last. Press any figure to see why.";

/// Whether there is anything to begin with: a first visit, or kept plans; not during a lesson.
[[nodiscard]] bool shows_start(const PanelState& state);

/// An example each and one's own camera on a first visit; the plans kept last on later ones.
[[nodiscard]] std::vector<Control> start_controls(const PanelState& state);

}  // namespace widegate
