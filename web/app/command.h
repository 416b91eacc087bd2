// What the panels may ask for. They never change the plan themselves: they push commands, and App
// is the one place that acts on them.
#pragma once

#include <string>
#include <variant>
#include <vector>

#include "core/plan/plan.h"

namespace widegate {

/// Gives one value of the plan new text, as typed. With `continuous` it is part of a drag or of
/// typing: all of it up to EndGesture is undone in one step.
struct SetField {
  std::string pointer;
  std::string text;
  bool continuous = false;
};

/// Puts one value back to what a new plan has.
struct ResetField {
  std::string pointer;
};

/// The finger is up, the typing is over.
struct EndGesture {};

/// Takes a whole format out of the ranking.
struct ChooseFormat {
  FormatChoice format;
};

/// Replaces the whole plan (a link, a file, a lesson, "start afresh").
struct ReplacePlan {
  Plan plan;
};

/// The plan that was kept on the device: there is no way back from it to the usual one.
struct OpenPlan {
  Plan plan;
};

/// Rows of one's own beside the built-in library; plans keep what they use of rows that go.
struct UseLibrary {
  Catalogue own;
};

struct Undo {};
struct Redo {};

using Command = std::variant<SetField, ResetField, EndGesture, ChooseFormat, ReplacePlan, OpenPlan,
                             UseLibrary, Undo, Redo>;
using Commands = std::vector<Command>;

}  // namespace widegate
