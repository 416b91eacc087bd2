// One's own library: what bringing in another one would change, and bringing it in. Nothing is
// overwritten that was not agreed to.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/catalogue/catalogue.h"

namespace widegate {

/// What happens to a row when a library is brought in.
enum class RowChange {
  added,    ///< Its id is new.
  same,     ///< It is there already, value for value.
  differs,  ///< Its id is there with other values.
};

/// One row of an incoming library.
struct LibraryChange {
  std::string_view list;  ///< Key of the list in the JSON form: "cameras".
  std::string id;
  std::string name;
  RowChange change = RowChange::added;
};

/// Every row of `incoming` against `present`, list by list in the order of the document.
[[nodiscard]] std::vector<LibraryChange> library_changes(const Catalogue& present,
                                                         const Catalogue& incoming);

/// Whether rows that differ keep their present values or take the incoming ones.
enum class OnDifference { keep, replace };

/// `present` with the rows of `incoming`: new ones at the end of their lists, differing ones as
/// said. The order of the present rows stays.
[[nodiscard]] Catalogue merged_library(const Catalogue& present, const Catalogue& incoming,
                                       OnDifference on_difference);

/// The library without one row; unchanged when there is none such.
[[nodiscard]] Catalogue library_without(const Catalogue& present, std::string_view list,
                                        std::string_view id);

}  // namespace widegate
