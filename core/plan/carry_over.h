// What plans said in fields that are no more, and what it means today. Documents and links of every
// release open through here.
#pragma once

#include <cstdint>
#include <span>
#include <string_view>

#include "core/field/field.h"
#include "core/plan/plan.h"

namespace widegate {

/// Fields of the first release that a plan no longer has, with the values they had when nothing was
/// said. Photosites were counted inside the frame line then.
struct RetiredChoices {
  std::int64_t photosites = 8'294'400;
  std::int64_t photosites_across = 0;
  bool must_meet_mandate = true;
  friend bool operator==(const RetiredChoices&, const RetiredChoices&) = default;
};

/// Their rows, with the pointers they had.
[[nodiscard]] std::span<const Field<RetiredChoices>> retired_fields();

/// The row with this pointer, or nullptr.
[[nodiscard]] const Field<RetiredChoices>* retired_field(std::string_view pointer);

/// Which of them a document said: by the place of the row in retired_fields().
class RetiredSeen {
 public:
  void add(const Field<RetiredChoices>& row);
  [[nodiscard]] bool has(std::string_view pointer) const;

 private:
  std::uint32_t bits_ = 0;
};

/// Puts into the plan what the retired fields asked for: no photosites, or a requirement that need
/// not be met, is the commission "none" (a number above nought across still asks for that width);
/// photosites are the commission's first requirement; photosites across are a recorded width.
/// What was not said changes nothing.
void carry_over(Plan& plan, const RetiredChoices& retired, const RetiredSeen& seen);

/// Weights of the first release had no set: all alike were what nobody had touched and are the
/// balanced set now, others are one's own.
/// @param set_said  the plan said which set.
void carry_over_weights(Plan& plan, bool set_said);

}  // namespace widegate
