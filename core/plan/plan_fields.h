// The table of every scalar value of a plan. Reading and writing JSON, checking, links, the
// command line's --set and the front end's controls all come from this one table; a member of Plan
// without a row does not compile. Lists (cameras considered, frame lines) and one's own library are
// handled beside it, by name.
#pragma once

#include <span>
#include <string>
#include <string_view>

#include "core/base/problem.h"
#include "core/catalogue/catalogue.h"
#include "core/field/field.h"
#include "core/plan/plan.h"

namespace widegate {

using FieldInfo = Field<Plan>;

inline constexpr std::size_t kMaxFrameLines = 8;
/// Pointer of the list of frame lines; rows below it have "#" for the index.
inline constexpr std::string_view kFrameLinesPointer = "/deliverable/frame_lines";
/// Pointer of the list of camera ids that are ranked; no row of the table.
inline constexpr std::string_view kCamerasPointer = "/choose/cameras";

/// Every row, in the order of the document.
[[nodiscard]] std::span<const FieldInfo> plan_fields();

/// A row and the frame line it is meant for (0 for all other rows).
struct FieldPlace {
  const FieldInfo* info = nullptr;  ///< Never null.
  std::size_t line = 0;
};

/// The row that a pointer ("/lens/focal_mm", "/deliverable/frame_lines/1/aspect") names, or
/// nothing. Whether the plan has that many frame lines is not looked at.
[[nodiscard]] std::optional<FieldPlace> find_field(std::string_view pointer);

/// The row's pointer with "#" replaced by the frame line's index.
[[nodiscard]] std::string pointer_of(const FieldInfo& info, std::size_t line);

/// True when the row's pointer has a "#": it exists once for each frame line.
[[nodiscard]] bool per_frame_line(const FieldInfo& info);

/// The value as text, as value_text(); the list of cameras is separated by commas. Empty text for a
/// pointer that names nothing.
[[nodiscard]] std::string field_text(const Plan& plan, std::string_view pointer);

/// The plan with one field changed to what a person typed, checked as a whole; the pointer may also
/// be that of the camera list ("alder, birch"; empty: all).
/// So that one change can stand alone, what hangs on it follows: a camera, mode or recording option
/// that lacks the mode, recording option or codec chosen below it takes its first; an anchor other
/// than free forgets its x and y.
/// @return the new plan, or the problems; never a clamped value.
[[nodiscard]] Checked<Plan> with_field(const Plan& plan, std::string_view pointer,
                                       std::string_view text, const Catalogue& catalogue);

/// One field as a person typed it.
struct TypedField {
  std::string pointer;
  std::string text;
};

/// As with_field for several fields in turn, checked together at the end: values that only hold
/// beside one another may come in any order.
[[nodiscard]] Checked<Plan> with_fields(const Plan& plan, std::span<const TypedField> fields,
                                        const Catalogue& catalogue);

/// One value that a choice or an id may take.
struct FieldOption {
  std::string value;  ///< As value_text().
  std::string label;  ///< For people.
};

/// What can be chosen for a choice or an id, given the rest of the plan (the modes of the chosen
/// camera, the codecs of the chosen recording option); one's own rows first. Empty for other kinds.
[[nodiscard]] std::vector<FieldOption> field_options(const Plan& plan, const Catalogue& catalogue,
                                                     const FieldInfo& info);

}  // namespace widegate
