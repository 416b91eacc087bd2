// Choose: every format of every camera considered, judged by one plan, scored and put in order.
// What a format comes to is format_figures.h's; what would make a rejected one pass is
// smallest_change.h's.
#pragma once

#include <array>
#include <cstddef>
#include <vector>

#include "core/base/problem.h"
#include "core/catalogue/catalogue.h"
#include "core/choose/format_figures.h"
#include "core/plan/plan.h"

namespace widegate {

/// What the person's weights weigh, in this order.
enum class Criterion : std::uint8_t { area, pixels, speed, data };
inline constexpr std::size_t kCriterionCount = 4;

/// One recording option with one codec of one sensor mode, judged.
struct RankedFormat {
  FormatChoice format;
  FormatFigures figures;
  bool accepted = false;         ///< Meets every requirement that applies.
  bool on_pareto_front = false;  ///< No accepted format is as good in everything and better in one.
  std::array<double, kCriterionCount> shares{};  ///< Of the best accepted format, 0 to 1.
  double score = 0;  ///< Weighted mean of the shares, to nine decimals; 0 if rejected.
};

/// Every format considered.
struct Ranking {
  Problems problems;        ///< Why nothing else here holds; empty for a valid plan.
  bool cover_known = true;  ///< An image circle is known; otherwise cover rejects nothing.
  std::size_t accepted = 0;
  /// The accepted, best first, then the rejected, those with the fewest reasons first. Equal ones
  /// are in the order of their ids, so shuffling the catalogue changes nothing.
  std::vector<RankedFormat> formats;
};

/// Ranks every format (sensor mode, recording option, codec) of the cameras in plan.choose.cameras,
/// of all when it is empty, with this plan's deliverable, lens, speed and card. One's own camera
/// stands in for a library camera of the same id.
///
/// Shares: frame area, pixels of the frame line (photosites, or recorded pixels where fewer are
/// written) and slowest data rate (largest bound) over the
/// best accepted format's; for speed what the ceiling has to spare, 1 - sensor rate / ceiling
/// (1 when unlimited), over the best. A share of the best changes only when the best does, so a
/// format that another one dominates cannot alter the order of those above it. The score is the
/// mean of the shares by the plan's weights; only their proportions count; 0 for all when every
/// weight is 0.
///
/// On the Pareto front: of the accepted, no other has at least its area, pixels and ceiling at
/// no higher data rate and is better in one of them.
///
/// Time and memory grow with the number of formats n; sorting takes n log n and the front
/// n log^2 n comparisons. Pure and total: an invalid plan gives nothing but its problems.
/// @source scoring: common practice, no source; docs/formulas/choose.md.
[[nodiscard]] Ranking rank(const Plan& plan, const Catalogue& catalogue);

}  // namespace widegate
