// The lists of a catalogue, one after the other, for everything that treats them alike: JSON,
// links, merging.
#pragma once

#include "core/catalogue/catalogue.h"

namespace widegate {

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
