// What the screen remembers about equipment of one's own and about the list of kept plans, between
// frames. Plain data; what is kept on the device is the storage's.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/equipment/form.h"
#include "core/plan/kept_plans.h"

namespace widegate {

/// The form, and what is about to be brought in.
struct LibraryState {
  std::optional<OwnForm> form;
  Catalogue opened;                   ///< The row the form was opened from, as it was then.
  bool tried = false;                 ///< "Keep it" was pressed: what is missing is shown too.
  std::optional<Catalogue> incoming;  ///< Rows that wait for a decision.
  std::string incoming_from;          ///< Where they are from, in words.
  Catalogue removed;                  ///< The row taken out last.
  OwnKind last_kind = OwnKind::camera;
  std::string last_id;         ///< The row kept last; empty for none.
  std::string damaged;         ///< A stored text that could not be read; kept aside before writing.
  std::uint64_t revision = 0;  ///< Grows with every change.
};

/// What the device does with what it is given.
struct MemoryState {
  bool refused = false;    ///< It kept nothing the last time.
  bool set_aside = false;  ///< Something that could not be read lies there.
  friend bool operator==(const MemoryState&, const MemoryState&) = default;
};

/// The list as it was read last, and which plan of it is on the screen.
struct ShelfState {
  PlanShelf shelf;
  std::int64_t current = 0;  ///< Id of the plan on the screen; 0 when it is not in the list.
  std::int64_t edition = 0;
  std::optional<KeptPlan> removed;
  std::string damaged;
  std::uint64_t revision = 0;
};

}  // namespace widegate
