// A Show as a JSON document (docs/schema/show.schema.json) and back.
#pragma once

#include <string>
#include <string_view>

#include "core/base/problem.h"
#include "core/catalogue/catalogue.h"
#include "core/show/show.h"

namespace widegate {

/// Reads a show and checks it as a whole. Keys left out keep their default; unknown keys, wrong
/// types and values outside their limits are problems, those of a part's plan with the part's
/// pointer before theirs.
[[nodiscard]] Checked<Show> show_from_json(std::string_view text, const Catalogue& catalogue);

/// The show as a document with every key, in a fixed order; equal shows give equal text.
[[nodiscard]] std::string show_to_json(const Show& show);

}  // namespace widegate
