// The plans that are kept on a device, by name: a list, and what can be done with it. Each plan is
// kept as its link, complete with the equipment of one's own that it uses. Several programs may
// hold the same list: every change is made on the list as it stands at that moment, and the edition
// of a plan tells whether another one has changed it since.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/problem.h"
#include "core/plan/plan.h"

namespace widegate {

/// One plan of the list.
struct KeptPlan {
  std::int64_t id = 0;       ///< 1 or more; never given to another plan again.
  std::int64_t edition = 1;  ///< Grows by one with every change.
  std::string title;         ///< The plan's own.
  std::string link;          ///< plan_to_link().
  friend bool operator==(const KeptPlan&, const KeptPlan&) = default;
};

struct PlanShelf {
  std::int64_t next_id = 1;
  std::vector<KeptPlan> plans;  ///< In the order they were made.
  friend bool operator==(const PlanShelf&, const PlanShelf&) = default;
};

/// More plans are not taken.
inline constexpr std::size_t kMaxKeptPlans = 500;

/// The list as a JSON document, and back. Problems: not JSON, another version, rows that are no
/// plans' (ids below 1, repeated or not below `next_id`; links are only looked at when opened).
[[nodiscard]] std::string shelf_to_json(const PlanShelf& shelf);
[[nodiscard]] Checked<PlanShelf> shelf_from_json(std::string_view text);

/// The plan with this id, or nullptr.
[[nodiscard]] const KeptPlan* find_plan(const PlanShelf& shelf, std::int64_t id);

/// Adds a plan; its id, 0 when the list is full.
std::int64_t add_plan(PlanShelf& shelf, std::string_view title, std::string_view link);

/// What became of a change.
enum class Kept {
  done,     ///< The plan is in the list as given.
  same,     ///< It was already.
  changed,  ///< Another program changed it since `edition`: nothing was done.
  gone,     ///< It is not in the list any more: nothing was done.
};

/// Puts a changed plan in the place of the one that was read at this edition; on success `edition`
/// is the new one.
Kept keep_plan(PlanShelf& shelf, std::int64_t id, std::int64_t& edition, std::string_view title,
               std::string_view link);

/// Takes a plan out. False when it is not there.
bool remove_plan(PlanShelf& shelf, std::int64_t id);

/// Puts a removed plan back with its id, unless that is there.
void restore_plan(PlanShelf& shelf, const KeptPlan& plan);

}  // namespace widegate
