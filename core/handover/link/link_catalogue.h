// One's own library as bytes of a link.
#pragma once

#include "core/catalogue/catalogue.h"
#include "core/handover/link/link_bytes.h"

namespace widegate {

/// One zero byte for an empty library; otherwise every list with its length.
void write_catalogue(LinkWriter& writer, const Catalogue& catalogue);

/// Fails the reader when something is damaged; limits across rows are for check_plan().
[[nodiscard]] Catalogue read_catalogue(LinkReader& reader);

}  // namespace widegate
