// Ids that rows of the built-in library once had. Documents and links that name them open for ever:
// whoever reads one puts today's id in its place with these.
#pragma once

#include <string_view>

#include "core/catalogue/catalogue.h"

namespace widegate {

/// Today's id of a codec; the same text for every other id. A view of a constant or of `id`.
[[nodiscard]] std::string_view current_codec_id(std::string_view id);

/// Today's ids in the rows of a document: of its codecs, which may stand in for those of the
/// library, and wherever recording options name one. An option that would name a codec twice names
/// it once.
void use_current_ids(Catalogue& rows);

}  // namespace widegate
