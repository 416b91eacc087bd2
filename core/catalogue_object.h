// The rows of a catalogue as a JSON object: shared by catalogue documents and the "own" part of a
// plan. For the core's own sources: it brings in the JSON library.
#pragma once

#include "core/catalogue.h"
#include "core/json_path.h"
#include "core/json_text.h"

namespace widegate {

/// Reads every list of the object. Types, single values, unknown and missing keys are checked here;
/// what rows must be to one another is check_catalogue()'s.
/// @param version_key  a key of the object that is none of the lists and is passed over; may be
/// empty.
[[nodiscard]] Catalogue catalogue_from_object(const Json& object, std::string_view version_key,
                                              const JsonPath& path, Problems& problems);

/// Adds every list that is not empty, in a fixed order.
void add_catalogue(Json& object, const Catalogue& catalogue);

/// Calls visit(key, list) for every list of a catalogue, in the order of the document. A new list
/// does not compile until it stands here.
template <class AnyCatalogue, class Visit>
void for_each_list(AnyCatalogue& catalogue, Visit visit) {
  auto& [cameras, lens_sets, codecs, cards, links, drives, tapes, checksums, containers] =
      catalogue;
  visit("cameras", cameras);
  visit("lens_sets", lens_sets);
  visit("codecs", codecs);
  visit("cards", cards);
  visit("links", links);
  visit("drives", drives);
  visit("tapes", tapes);
  visit("checksums", checksums);
  visit("containers", containers);
}

}  // namespace widegate
