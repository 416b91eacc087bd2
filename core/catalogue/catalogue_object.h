// The rows of a catalogue as a JSON object: shared by catalogue documents and the "own" part of a
// plan. For the core's own sources: it brings in the JSON library.
#pragma once

#include "core/catalogue/catalogue.h"
#include "core/catalogue/each_list.h"
#include "core/encode/json_path.h"
#include "core/encode/json_text.h"

namespace widegate {

/// Reads every list of the object. Types, single values, unknown and missing keys are checked here;
/// what rows must be to one another is check_catalogue()'s.
/// @param version_key  a key of the object that is none of the lists and is passed over; may be
/// empty.
[[nodiscard]] Catalogue catalogue_from_object(const Json& object, std::string_view version_key,
                                              const JsonPath& path, Problems& problems);

/// size * count / divisor, exactly where the size is a short decimal: photosites that are 5.4 um
/// wide make 26.9568 mm of 4992. 0 when the divisor is.
[[nodiscard]] double scaled_size(double size, std::int64_t count, std::int64_t divisor);

/// Adds every list that is not empty, in a fixed order.
void add_catalogue(Json& object, const Catalogue& catalogue);

}  // namespace widegate
