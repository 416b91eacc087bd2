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
  /// Rows that are no plans', each as its JSON text: kept as they are, and tried again at every
  /// reading. One of them never costs the others.
  std::vector<std::string> unread;
  friend bool operator==(const PlanShelf&, const PlanShelf&) = default;
};

/// More plans are not taken.
inline constexpr std::size_t kMaxKeptPlans = 500;

/// Longest title or link of a plan in the list, in bytes.
inline constexpr std::size_t kMaxKeptText = 20'000;

/// The list as a JSON document, and back: what one writes the other reads, equal. Problems: not
/// JSON, another version, no list in it. A row that cannot be read goes to `unread`; a repeated id
/// becomes a new one; links are only looked at when opened.
[[nodiscard]] std::string shelf_to_json(const PlanShelf& shelf);
[[nodiscard]] Checked<PlanShelf> shelf_from_json(std::string_view text);

/// The plan with this id, or nullptr.
[[nodiscard]] const KeptPlan* find_plan(const PlanShelf& shelf, std::int64_t id);

/// Adds a plan; its id, 0 when the list is full or a text is longer than kMaxKeptText.
std::int64_t add_plan(PlanShelf& shelf, std::string_view title, std::string_view link);

/// What became of a change.
enum class Kept {
  done,      ///< The plan is in the list as given.
  same,      ///< It was already.
  changed,   ///< Another program changed it since `edition`: nothing was done.
  gone,      ///< It is not in the list any more: nothing was done.
  too_long,  ///< A text is longer than kMaxKeptText: nothing was done.
};

/// Puts a changed plan in the place of the one that was read at this edition; on success `edition`
/// is the new one.
Kept keep_plan(PlanShelf& shelf, std::int64_t id, std::int64_t& edition, std::string_view title,
               std::string_view link);

/// The title with the first number behind it, from " (2)" on, that no plan of the list has; a
/// number that stands there already is counted on.
[[nodiscard]] std::string free_title(const PlanShelf& shelf, std::string_view title);

/// Takes a plan out. False when it is not there.
bool remove_plan(PlanShelf& shelf, std::int64_t id);

/// Puts a removed plan back with its id, unless that is there.
void restore_plan(PlanShelf& shelf, const KeptPlan& plan);

}  // namespace widegate
