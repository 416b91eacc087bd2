#include "core/choose/pareto.h"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <numeric>

namespace widegate {
namespace {

using Row = std::uint32_t;
using Rows = std::vector<Row>;

/// Sorts out the dominated rows. Rows are handled in an order in which an earlier one is never
/// dominated by a later one; equal rows are represented by one of them.
class Front {
 public:
  explicit Front(std::span<const Merits> rows) : merits_(rows), dominated_(rows.size(), 0) {}

  std::vector<bool> found() {
    const Rows order = best_first();
    find(order);
    std::vector<bool> front(merits_.size());
    for (std::size_t row = 0; row < merits_.size(); ++row) {
      front[row] = dominated_[representative_[row]] == 0;
    }
    return front;
  }

 private:
  /// One row of each kind, by the first figure, then the second, and so on, falling.
  Rows best_first() {
    Rows order(merits_.size());
    std::iota(order.begin(), order.end(), Row{0});
    std::sort(order.begin(), order.end(), [this](Row a, Row b) { return merits_[a] > merits_[b]; });
    representative_.resize(order.size());
    Row first = 0;
    for (const Row row : order) {
      if (row == order.front() || merits_[row] != merits_[first]) first = row;
      representative_[row] = first;
    }
    std::erase_if(order, [this](Row row) { return representative_[row] != row; });
    return order;
  }

  /// Marks the dominated among rows that are in best_first order.
  void find(std::span<const Row> rows) {
    if (rows.size() < 2) return;
    const std::size_t middle = rows.size() / 2;
    find(rows.first(middle));
    find(rows.subspan(middle));
    remove_below(undominated(rows.first(middle)), undominated(rows.subspan(middle)));
  }

  Rows undominated(std::span<const Row> rows) const {
    Rows kept;
    kept.reserve(rows.size());
    for (const Row row : rows) {
      if (dominated_[row] == 0) kept.push_back(row);
    }
    std::sort(kept.begin(), kept.end(),
              [this](Row a, Row b) { return merits_[a][2] > merits_[b][2]; });
    return kept;
  }

  /// Marks every row of `below` that a row of `above` reaches in figures 1, 2 and 3. Figure 0 is
  /// known to be in favour of `above`. Both are sorted by figure 2, falling.
  void remove_below(const Rows& above, const Rows& below) {
    if (above.empty() || below.empty()) return;
    const Split split = split_of(above, below);
    if (split.one_value) return sweep(above, below);
    const auto [above_high, above_low] = parted(above, split);
    const auto [below_high, below_low] = parted(below, split);
    remove_below(above_high, below_high);
    remove_below(above_low, below_low);
    sweep(above_high, below_low);
  }

  /// Rows are high from `value` on, or only beyond it.
  struct Split {
    double value = 0;
    bool value_is_high = true;
    bool one_value = false;
  };
  Split split_of(const Rows& above, const Rows& below) const {
    std::vector<double> values;
    values.reserve(above.size() + below.size());
    for (const Row row : above) values.push_back(merits_[row][1]);
    for (const Row row : below) values.push_back(merits_[row][1]);
    const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
    std::nth_element(values.begin(), middle, values.end());
    const double value = *middle;
    const auto [least, most] = std::minmax_element(values.begin(), values.end());
    return {.value = value, .value_is_high = *least < value, .one_value = *least == *most};
  }

  struct Parts {
    Rows high;
    Rows low;
  };
  Parts parted(const Rows& rows, const Split& split) const {
    Parts parts;
    for (const Row row : rows) {
      const double value = merits_[row][1];
      const bool high = split.value_is_high ? value >= split.value : value > split.value;
      (high ? parts.high : parts.low).push_back(row);
    }
    return parts;
  }

  /// As remove_below when figure 1 is known to be in favour of `above` too.
  void sweep(const Rows& above, const Rows& below) {
    double best = -std::numeric_limits<double>::infinity();
    auto next = above.begin();
    for (const Row row : below) {
      while (next != above.end() && merits_[*next][2] >= merits_[row][2]) {
        best = std::max(best, merits_[*next++][3]);
      }
      if (next != above.begin() && best >= merits_[row][3]) dominated_[row] = 1;
    }
  }

  std::span<const Merits> merits_;
  std::vector<std::uint8_t> dominated_;
  Rows representative_;
};

}  // namespace

bool dominates(const Merits& a, const Merits& b) {
  bool better = false;
  for (std::size_t i = 0; i < a.size(); ++i) {
    if (a[i] < b[i]) return false;
    better = better || a[i] > b[i];
  }
  return better;
}

std::vector<bool> pareto_front(std::span<const Merits> rows) { return Front(rows).found(); }

}  // namespace widegate
