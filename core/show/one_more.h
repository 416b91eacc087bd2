// What a small change of a show costs: one day more, one camera more, more footage.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/catalogue/catalogue.h"
#include "core/show/report.h"
#include "core/show/show.h"

namespace widegate {

/// What is changed of a part.
enum class OneMore { day, camera, footage };

/// "One day more", "One camera more in each unit", "A fifth more footage (12∶1 instead of 10∶1)".
[[nodiscard]] std::string_view one_more_words(OneMore change);

/// The show with one part changed: a day longer, a camera more in each of its units, or its
/// shooting ratio (or recorded hours) times 12 / 10. A value that leaves its limits shows when the
/// result is checked.
/// @param part  index of the part.
[[nodiscard]] Show with_one_more(Show show, std::size_t part, OneMore change);

/// How much larger every total becomes; below 0 where it falls.
struct ShowDifference {
  std::size_t part = 0;
  OneMore change = OneMore::day;
  Span total_bytes, copies_total_bytes, largest_day_bytes;
  Span cards_to_have, drives, tapes;
  Span copy_hours_per_day;
  std::vector<MoneySum> money;  ///< One for each currency of either show.
};

/// Every change of every part that gives a valid show, part by part.
/// @param report  of `show`, valid.
[[nodiscard]] std::vector<ShowDifference> differences_of_one_more(const Show& show,
                                                                  const ShowReport& report,
                                                                  const Catalogue& catalogue);

/// "+2.4 TB, +1 drive, +1 430 EUR": what changes, in words; "nothing" when nothing does.
[[nodiscard]] std::string difference_text(const ShowDifference& difference);

}  // namespace widegate
