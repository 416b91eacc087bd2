#include "core/catalogue/catalogue.h"

#include <algorithm>
#include <iterator>
#include <utility>

namespace widegate {
namespace {

template <class Row>
std::vector<Row> merged_rows(std::vector<Row> base, std::vector<Row> added) {
  std::vector<Row> news;
  for (Row& row : added) {
    const auto namesake =
        std::find_if(base.begin(), base.end(), [&](const Row& old) { return old.id == row.id; });
    if (namesake != base.end()) {
      *namesake = std::move(row);
    } else {
      news.push_back(std::move(row));
    }
  }
  std::move(news.begin(), news.end(), std::back_inserter(base));
  return base;
}

}  // namespace

// The lists of `added` are moved from, which the check does not see through the binding.
// NOLINTNEXTLINE(performance-unnecessary-value-param)
Catalogue merged_catalogue(Catalogue base, Catalogue added) {
  auto& [cameras, lens_sets, codecs, cards, links, drives, tapes, checksums, containers] = added;
  return {.cameras = merged_rows(std::move(base.cameras), std::move(cameras)),
          .lens_sets = merged_rows(std::move(base.lens_sets), std::move(lens_sets)),
          .codecs = merged_rows(std::move(base.codecs), std::move(codecs)),
          .cards = merged_rows(std::move(base.cards), std::move(cards)),
          .links = merged_rows(std::move(base.links), std::move(links)),
          .drives = merged_rows(std::move(base.drives), std::move(drives)),
          .tapes = merged_rows(std::move(base.tapes), std::move(tapes)),
          .checksums = merged_rows(std::move(base.checksums), std::move(checksums)),
          .containers = merged_rows(std::move(base.containers), std::move(containers))};
}

}  // namespace widegate
