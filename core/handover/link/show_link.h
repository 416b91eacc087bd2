// A whole show as short text for the fragment of an address. Its plans are written by what
// distinguishes them from one another; the layout is in docs/link.md.
#pragma once

#include <string>
#include <string_view>

#include "core/base/problem.h"
#include "core/catalogue/catalogue.h"
#include "core/show/show.h"

namespace widegate {

/// "s1." and base64url text. Equal shows give equal text.
/// @param show  checked.
[[nodiscard]] std::string show_to_link(const Show& show);

/// As show_to_link(), or a problem where it would be longer than any link that is read.
[[nodiscard]] Checked<std::string> show_to_opening_link(const Show& show);

/// Reads a link of this version; also with "#" or a whole address before it.
/// @return the show, or problems: not a link, damaged, made by a newer version, too long, or a show
///         that check_show refuses.
[[nodiscard]] Checked<Show> show_from_link(std::string_view link, const Catalogue& catalogue);

}  // namespace widegate
