#include "core/show/show_rows.h"

namespace widegate {
namespace {

template <class Row>
const Row* row_of(const Show& show, const Catalogue& catalogue, std::vector<Row> Catalogue::*list,
                  std::string_view id) {
  for (const ShowPart& part : show.parts) {
    if (const Row* row = find_row(part.plan.own.*list, id)) return row;
  }
  return find_row(catalogue.*list, id);
}

}  // namespace

const Card* ShowRows::card(std::string_view id) const {
  return row_of(show_, catalogue_, &Catalogue::cards, id);
}
const Drive* ShowRows::drive(std::string_view id) const {
  return row_of(show_, catalogue_, &Catalogue::drives, id);
}
const Tape* ShowRows::tape(std::string_view id) const {
  return row_of(show_, catalogue_, &Catalogue::tapes, id);
}

}  // namespace widegate
