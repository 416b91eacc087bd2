// Choose: every format of every camera considered, judged by one plan, scored and put in order.
// What a format comes to is format_figures.h's, the shares are criteria.h's; what binds when
// nothing passes is binding.h's, what would make a rejected one pass smallest_change.h's.
#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include "core/base/problem.h"
#include "core/catalogue/catalogue.h"
#include "core/choose/criteria.h"
#include "core/choose/format_figures.h"
#include "core/plan/plan.h"

namespace widegate {

/// One recording option with one codec of one sensor mode, judged.
struct RankedFormat {
  FormatChoice format;
  FormatFigures figures;
  PictureFigures picture;
  bool accepted = false;           ///< Misses no requirement.
  bool as_good = false;            ///< Within 0.01 of the first, and of its class of cautions.
  bool on_pareto_front = false;    ///< Without caution, and none of these is as good in everything
                                   ///< and better in one thing.
  Shares shares{};                 ///< 0 to 1; of accepted formats.
  double score = 0;                ///< Weighted mean of the shares; 0 if rejected.
  double bytes_per_s = 0;          ///< Middle of the bounds; 0 when not known.
  double handled_bytes_per_s = 0;  ///< See handled_data() of criteria.h; of accepted formats.
};

/// Which lens every format was given, and why.
enum class LensGiven : std::uint8_t {
  same_view,        ///< The nearest of the set to the plan's view.
  same_lens,        ///< As the plan asks.
  one_camera,       ///< The plan's lens: only one camera is considered.
  no_set,           ///< The plan's lens: it is not of a set, or its circle is one's own.
  camera_left_out,  ///< The plan's lens: the plan's camera is not considered.
  not_covered,      ///< The plan's lens: it does not cover the plan's own format.
};

/// Every format considered.
struct Ranking {
  Problems problems;        ///< Why nothing else here holds; empty for a valid plan.
  bool cover_known = true;  ///< An image circle is known; otherwise cover rejects nothing.
  LensGiven lens_given = LensGiven::same_view;
  Wants wants;
  std::size_t accepted = 0;
  std::size_t without_caution = 0;  ///< Accepted and without any; these stand first.
  /// The accepted, best first, then the rejected, those with the fewest reasons first. Equal ones
  /// are in the order of their ids, so shuffling the catalogue changes nothing.
  std::vector<RankedFormat> formats;
};

/// Ranks every format (sensor mode, recording option, codec) of the cameras in plan.choose.cameras,
/// of all whose medium is that of the plan's camera when it is empty, by this plan's commission,
/// frame lines, lens, speed and card. One's own camera stands in for a library camera of the same
/// id.
///
/// Rejected: what misses a requirement (requirement.h). Order of the others: those without a
/// caution first; then by score, the mean of the five shares by the plan's weights; then less data;
/// then names. Nothing of a format depends on which others there are: adding, removing or shuffling
/// formats leaves the order of the rest as it is.
///
/// Time and memory grow with the number of formats n; sorting takes n log n and the front
/// n log^3 n comparisons. Pure and total: an invalid plan gives nothing but its problems.
/// @source scoring: common practice, no source; docs/formulas/choose.md.
[[nodiscard]] Ranking rank(const Plan& plan, const Catalogue& catalogue);

/// The conditions that the formats of a ranking are judged by: with the lens that each is given.
class RankingConditions {
 public:
  /// @param plan  checked against the catalogue; both must outlive this.
  RankingConditions(const Plan& plan, const Catalogue& catalogue);

  [[nodiscard]] const Conditions& conditions() const { return conditions_; }
  [[nodiscard]] const std::vector<const Camera*>& cameras() const { return cameras_; }
  [[nodiscard]] LensGiven lens_given() const { return lens_given_; }

 private:
  Conditions conditions_;
  std::vector<const Camera*> cameras_;  ///< Those considered.
  LensGiven lens_given_;
};

/// One sensor mode with its accepted formats, or its rejected ones.
struct FormatGroup {
  std::vector<std::size_t> rows;  ///< Indices into the formats, in their order; never empty.
};

/// The formats by camera and mode, in the order of each group's first.
[[nodiscard]] std::vector<FormatGroup> grouped(std::span<const RankedFormat> formats);

/// The plan with this format and the lens it was ranked with.
[[nodiscard]] Plan with_format(Plan plan, const RankedFormat& ranked);

}  // namespace widegate
