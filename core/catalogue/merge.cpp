#include "core/catalogue/merge.h"

#include <algorithm>
#include <type_traits>

#include "core/catalogue/each_list.h"

namespace widegate {
namespace {

template <class Row>
RowChange change_of(const std::vector<Row>& present, const Row& incoming) {
  const Row* row = find_row(present, incoming.id);
  if (row == nullptr) return RowChange::added;
  return *row == incoming ? RowChange::same : RowChange::differs;
}

/// Calls visit(key, list, incoming list) for the lists of two catalogues side by side.
template <class Visit>
void for_each_pair(Catalogue& catalogue, const Catalogue& incoming, Visit visit) {
  for_each_list(catalogue, [&](std::string_view key, auto& rows) {
    for_each_list(incoming, [&](std::string_view other_key, const auto& others) {
      using Rows = std::remove_cvref_t<decltype(rows)>;
      using Others = std::remove_cvref_t<decltype(others)>;
      if constexpr (std::is_same_v<Rows, Others>) {
        if (key == other_key) visit(key, rows, others);
      }
    });
  });
}

}  // namespace

std::vector<LibraryChange> library_changes(const Catalogue& present, const Catalogue& incoming) {
  std::vector<LibraryChange> changes;
  Catalogue mine = present;
  for_each_pair(mine, incoming,
                [&changes](std::string_view key, const auto& rows, const auto& others) {
                  for (const auto& row : others) {
                    changes.push_back({key, row.id, row.name, change_of(rows, row)});
                  }
                });
  return changes;
}

Catalogue merged_library(const Catalogue& present, const Catalogue& incoming,
                         OnDifference on_difference) {
  Catalogue merged = present;
  for_each_pair(merged, incoming,
                [on_difference](std::string_view, auto& rows, const auto& others) {
                  for (const auto& row : others) {
                    const auto at = std::find_if(rows.begin(), rows.end(),
                                                 [&row](const auto& r) { return r.id == row.id; });
                    if (at == rows.end()) {
                      rows.push_back(row);
                    } else if (on_difference == OnDifference::replace) {
                      *at = row;
                    }
                  }
                });
  return merged;
}

Catalogue library_without(const Catalogue& present, std::string_view list, std::string_view id) {
  Catalogue left = present;
  for_each_list(left, [&](std::string_view key, auto& rows) {
    if (key == list) std::erase_if(rows, [id](const auto& row) { return row.id == id; });
  });
  return left;
}

}  // namespace widegate
