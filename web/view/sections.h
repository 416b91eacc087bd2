// The explicit, ordered list of panels: what is shot, the seven questions, and what to do with the
// plan.
#pragma once

#include <span>

#include "web/door/platform.h"
#include "web/view/section.h"

namespace widegate {

[[nodiscard]] std::span<const Panel> panels();

/// The panel with this id, or nullptr.
[[nodiscard]] const Panel* find_panel(std::string_view id);

/// Whether the section can be shown whole in this state of the program.
[[nodiscard]] bool is_here(const Panel& panel, RestOfProgram rest);
/// What stands in the place of one that cannot, and of what was asked for.
[[nodiscard]] std::string_view rest_words(RestOfProgram rest);

// One for each file of this folder.
[[nodiscard]] Panel start_panel();
[[nodiscard]] Panel format_panel();
[[nodiscard]] Panel frame_panel();
[[nodiscard]] Panel cover_panel();
[[nodiscard]] Panel see_panel();
[[nodiscard]] Panel resolve_panel();
[[nodiscard]] Panel run_panel();
[[nodiscard]] Panel store_panel();
[[nodiscard]] Panel choose_panel();
[[nodiscard]] Panel delivery_panel();
[[nodiscard]] Panel picture_panel();
[[nodiscard]] Panel compare_panel();
[[nodiscard]] Panel library_panel();
[[nodiscard]] Panel handover_panel();
[[nodiscard]] Panel show_panel();
[[nodiscard]] Panel lesson_panel();
[[nodiscard]] Panel plan_panel();

}  // namespace widegate
