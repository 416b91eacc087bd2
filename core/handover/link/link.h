// A whole plan, with what it carries of its own, as short text for the fragment of an address.
// The layout is in docs/link.md; the numbers that stand for fields are in link_tags.h.
#pragma once

#include <string>
#include <string_view>

#include "core/base/problem.h"
#include "core/catalogue/catalogue.h"
#include "core/plan/plan.h"

namespace widegate {

/// Longest link that is read, in characters.
inline constexpr std::size_t kMaxLinkLength = 16'384;

/// "1." and base64url text: only letters, digits, '.', '-' and '_'. Equal plans give equal text;
/// what equals the default of a new plan takes no room.
/// @param plan  checked.
[[nodiscard]] std::string plan_to_link(const Plan& plan);

/// The same link when every device opens it; for a plan that is too long for one, a problem that
/// says by how much: such a plan is handed over as a file.
[[nodiscard]] Checked<std::string> plan_to_opening_link(const Plan& plan);

/// Reads a link of this or an earlier version; also with "#" or a whole address before it.
/// @return the plan, or problems: not a link, damaged (its checksum fails or it is cut), made by a
///         newer version, too long, or a plan that check_plan refuses.
[[nodiscard]] Checked<Plan> plan_from_link(std::string_view link, const Catalogue& catalogue);

}  // namespace widegate
