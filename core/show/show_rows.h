// The rows that a show names: those its parts' plans carry first, in the order of the parts, then
// the library's.
#pragma once

#include <string_view>

#include "core/catalogue/catalogue.h"
#include "core/show/show.h"

namespace widegate {

/// Looks up ids for a show; both must outlive it. nullptr for an id that nobody knows.
class ShowRows {
 public:
  ShowRows(const Show& show, const Catalogue& catalogue) : show_(show), catalogue_(catalogue) {}

  [[nodiscard]] const Card* card(std::string_view id) const;
  [[nodiscard]] const Drive* drive(std::string_view id) const;
  [[nodiscard]] const Tape* tape(std::string_view id) const;

 private:
  const Show& show_;
  const Catalogue& catalogue_;
};

}  // namespace widegate
