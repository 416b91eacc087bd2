// In place of Dear ImGui's own tables and columns, which this front end never begins: the library's
// core refers to their ends, and the linker would bring all of it into the download. What stands
// here can only be reached where there is a table or a column, or at start-up and clean-up, where
// there is nothing to do.
#include "imgui.h"
#include "imgui_internal.h"

namespace ImGui {

void EndTable() {}
void EndColumns() {}
void PushColumnsBackground() {}
void PopColumnsBackground() {}
void TableEndRow(ImGuiTable* /*table*/) {}
void TableEndCell(ImGuiTable* /*table*/) {}
void TablePushColumnChannel(int /*column*/) {}
void TablePopColumnChannel() {}
void TablePushBackgroundChannel() {}
void TablePopBackgroundChannel() {}
void TableGcCompactTransientBuffers(ImGuiTable* /*table*/) {}
void TableGcCompactTransientBuffers(ImGuiTableTempData* /*table*/) {}
void TableGcCompactSettings() {}
void TableSettingsAddSettingsHandler() {}

}  // namespace ImGui
