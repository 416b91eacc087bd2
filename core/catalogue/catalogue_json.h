// A Catalogue as a JSON document (docs/schema/catalogue.schema.json) and back, and the library that
// is built into the program.
#pragma once

#include <string>
#include <string_view>

#include "core/base/problem.h"
#include "core/catalogue/catalogue.h"

namespace widegate {

/// Reads a catalogue document; problems as for plan_from_json. Codec ids may also be in `library`.
[[nodiscard]] Checked<Catalogue> catalogue_from_json(std::string_view text,
                                                     const Catalogue& library);

/// The catalogue as a document, in a fixed order.
[[nodiscard]] std::string catalogue_to_json(const Catalogue& catalogue);

/// The built-in library: the demo cameras, lenses and cards, film apertures by their standards,
/// codecs with a public standard. Parsed from catalogue/*.json, embedded at build time.
[[nodiscard]] Checked<Catalogue> built_in_catalogue();

}  // namespace widegate
