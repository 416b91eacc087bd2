#include "core/plan/plan_changes.h"

#include "core/catalogue/catalogue_json.h"
#include "doctest/doctest.h"

namespace widegate {
namespace {

TEST_CASE("a change in words: one value as it was and is, several by name") {
  const Catalogue library = built_in_catalogue().value();
  const Plan before;
  CHECK(change_words(before, before, library) == "Nothing");
  Plan after = before;
  after.lens.focal_mm = 18;
  CHECK(change_words(before, after, library) == "Focal length: 18 mm, was 35 mm");
  after.store.card = "rowan-1";
  CHECK(change_words(before, after, library) == "Focal length, Card");
  after.lens.focal_mm = 35;
  CHECK(change_words(before, after, library) ==
        "Card: Rowan magazine, 1 TB, was Express card type B, 512 GB");
  after.deliverable.frame_lines.emplace_back();
  CHECK(change_words(before, after, library) == "Card, Frame lines");
}

}  // namespace
}  // namespace widegate
