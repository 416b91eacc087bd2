// The state of the front end that is worth keeping: the plan, its report, and the way back. Acts on
// commands; draws nothing and knows no platform.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "core/base/problem.h"
#include "core/catalogue/catalogue.h"
#include "core/plan/plan.h"
#include "core/report/report.h"
#include "web/app/command.h"

namespace widegate {

/// A typed text that the plan did not take.
struct Rejection {
  std::string pointer;  ///< The control it was typed into; empty when there is none.
  std::string text;
  Problem problem;
};

/// One plan and one catalogue; every change of the plan is evaluated at once.
class App {
 public:
  /// @param library  the built-in one.
  explicit App(Catalogue library);

  [[nodiscard]] const Plan& plan() const { return plan_; }
  [[nodiscard]] const Report& report() const { return report_; }
  /// Everything that can be chosen: one's own rows first, then the built-in ones.
  [[nodiscard]] const Catalogue& library() const { return library_; }
  [[nodiscard]] const Catalogue& built_in() const { return built_in_; }
  [[nodiscard]] const Catalogue& own() const { return own_; }
  /// The plan with the rows of one's own that it uses: complete on any device.
  [[nodiscard]] Plan whole_plan() const;
  /// Grows with every change of the plan or of the rejection.
  [[nodiscard]] std::uint64_t revision() const { return revision_; }
  [[nodiscard]] const Rejection& rejection() const { return rejection_; }

  [[nodiscard]] bool can_undo() const { return !undo_.empty(); }
  [[nodiscard]] bool can_redo() const { return !redo_.empty(); }
  /// True while a drag or typing is under way.
  [[nodiscard]] bool in_gesture() const { return !gesture_.empty(); }

  /// What a new plan begins as, and what a value is put back to.
  [[nodiscard]] const Plan& first() const { return first_; }
  /// The plan that undo or redo would bring; nullptr when there is none.
  [[nodiscard]] const Plan* before() const { return undo_.empty() ? nullptr : &undo_.back(); }
  [[nodiscard]] const Plan* after() const { return redo_.empty() ? nullptr : &redo_.back(); }

  /// Acts on one command. True when the plan is another one now.
  bool apply(const Command& command);

 private:
  bool act(const SetField& command);
  bool act(const ResetField& command);
  bool act(const EndGesture& command);
  bool act(const ChooseFormat& command);
  bool act(const ReplacePlan& command);
  bool act(const OpenPlan& command);
  bool act(const UseLibrary& command);
  bool act(const Undo& command);
  bool act(const Redo& command);
  bool set(const std::string& pointer, const std::string& text, bool continuous);
  void remember(const std::string& gesture);
  void become(Plan plan);
  void reject(Rejection rejection);

  Catalogue built_in_;
  Catalogue own_;
  Catalogue library_;
  Plan first_;
  Plan plan_;
  Report report_;
  Rejection rejection_;
  std::uint64_t revision_ = 1;
  std::vector<Plan> undo_, redo_;
  std::string gesture_;  ///< Pointer of the drag under way; empty for none.
};

}  // namespace widegate
