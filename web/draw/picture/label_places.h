// Where the labels beside a drawing go, and the lines that lead to them: no two labels overlap and
// no two leaders cross. A pure function of numbers.
#pragma once

#include <cstddef>
#include <span>
#include <vector>

namespace widegate {

/// The part of an outline a leader may start from: x of its right edge, and a range of y.
struct LabelTarget {
  float x = 0;
  float top = 0;
  float bottom = 0;
};

/// A label's middle and where its leader meets the outline. The leader runs level from the outline
/// to the gutter and from there straight to the label.
struct LabelPlace {
  float y = 0;         ///< Middle of the label.
  float anchor_y = 0;  ///< On the outline.
};

/// Labels evenly spread from `top` to `bottom`, in the order of the targets; anchors in the same
/// order, each within its target's range as far as that order allows.
[[nodiscard]] std::vector<LabelPlace> place_labels(std::span<const LabelTarget> targets, float top,
                                                   float bottom);

/// Which of the things to label get a label where there is room for `most`: those of the lowest
/// ranks, the earlier of two alike first. Indices into `ranks`, ascending.
[[nodiscard]] std::vector<std::size_t> most_important(std::span<const int> ranks, std::size_t most);

}  // namespace widegate
