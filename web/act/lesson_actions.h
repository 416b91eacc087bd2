// Walking through a lesson: each step brings its plan, what the picture shows and what it is
// compared with; leaving gives back the plan from before. Lessons of one's own: opened, kept on the
// device, handed on.
#pragma once

#include <cstddef>
#include <string_view>

#include "web/app/app.h"
#include "web/app/command.h"
#include "web/door/platform.h"
#include "web/state/screen_state.h"

namespace widegate {

/// Key under which lessons of one's own are kept: a link on each line.
inline constexpr std::string_view kLessonsKey = "lessons";

/// Begins a lesson of the list at its first step, or leaves lessons when the id is empty or
/// unknown.
void start_lesson(std::string_view id, const App& app, PanelState& state, Commands& commands);

/// Goes to a step of the lesson under way, from 0; one that it has not is none.
void show_lesson_step(std::size_t step, PanelState& state, Commands& commands);

/// The picture shows the sensor again, and what was compared before is compared again. The plan
/// stays as it is: for when another takes its place.
void leave_lesson(PanelState& state);

/// Leaves the lesson and gives back the plan from before, and says so.
void end_lesson(PanelState& state, Commands& commands);

/// What can be chosen: the built-in lessons and those kept on the device.
void load_lessons(const App& app, PanelState& state, const Platform& platform);

/// Opens a lesson from its link at its step, or says why not.
/// @return true when it is under way.
bool open_lesson_link(std::string_view link, const App& app, PanelState& state, Platform& platform,
                      Commands& commands);

/// True when the text is meant as a lesson document.
[[nodiscard]] inline bool looks_like_lesson(std::string_view text) {
  return text.find("\"widegate_lesson\"") != std::string_view::npos;
}

/// Opens a lesson document and keeps it on the device, or says why not.
void open_lesson_file(std::string_view name, std::string_view text, const App& app,
                      PanelState& state, Platform& platform, Commands& commands);

/// Hands the lesson under way on: as a file, as a link that opens at the step on the screen, as a
/// QR code of it, and printed.
void save_lesson(const PanelState& state, Platform& platform);
void copy_lesson_link(const App& app, PanelState& state, Platform& platform);
void show_lesson_qr(const App& app, PanelState& state, Platform& platform);
void print_lesson(const App& app, PanelState& state, Platform& platform);

}  // namespace widegate
