// Walking through a lesson: each step brings its plan, what the picture shows and what it is
// compared with.
#pragma once

#include <cstddef>
#include <string_view>

#include "web/app/app.h"
#include "web/app/command.h"
#include "web/state/screen_state.h"

namespace widegate {

/// Begins a lesson at its first step, or leaves lessons when the id is empty or unknown.
void start_lesson(std::string_view id, const App& app, PanelState& state, Commands& commands);

/// Goes to a step of the lesson under way, from 0; one that it has not is none.
void show_lesson_step(std::size_t step, PanelState& state, Commands& commands);

/// The picture shows the sensor again, and what was compared before is compared again.
void leave_lesson(PanelState& state);

}  // namespace widegate
