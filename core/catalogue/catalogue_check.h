// The check that the rows of a catalogue stay inside their limits and name only things that exist.
#pragma once

#include <string>

#include "core/base/problem.h"
#include "core/catalogue/catalogue.h"

namespace widegate {

/// Everything wrong with a catalogue: duplicate ids, unknown codecs, modes larger than their
/// sensor, sizes out of range. Pointers are into the catalogue's JSON form, below `base` ("" or
/// "/own"). `library` resolves codec ids that `rows` does not hold itself (one's own camera,
/// standard codec).
[[nodiscard]] Problems check_catalogue(const Catalogue& rows, const Catalogue& library,
                                       const std::string& base);

}  // namespace widegate
