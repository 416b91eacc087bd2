// The Pareto front: which rows of a table no other row beats. Knows four numbers and nothing of
// cameras; what the numbers are is ranking.h's.
#pragma once

#include <array>
#include <span>
#include <vector>

namespace widegate {

/// Four figures of which more is better (negate one of which less is better). Infinity is a value;
/// NaN is not accepted.
using Merits = std::array<double, 4>;

/// True when a is nowhere worse than b and somewhere better.
[[nodiscard]] bool dominates(const Merits& a, const Merits& b);

/// For each row, whether no other row dominates it. Equal rows do not dominate one another: they
/// are on the front together or not at all. The answer belongs to the row, not to its place.
///
/// Divide and conquer in O(n log^2 n) time and O(n) memory, whatever the size of the front.
/// @source H. T. Kung, F. Luccio, F. P. Preparata, "On finding the maxima of a set of vectors",
///         Journal of the ACM 22 (1975), 469-476.
[[nodiscard]] std::vector<bool> pareto_front(std::span<const Merits> rows);

}  // namespace widegate
