#include "web/app/app.h"

#include <utility>
#include <variant>

#include "core/catalogue/merge.h"
#include "core/plan/carried_rows.h"
#include "core/plan/example_plans.h"
#include "core/plan/frame_line_pointer.h"
#include "core/plan/plan_check.h"
#include "core/plan/plan_fields.h"
#include "core/report/evaluate.h"

namespace widegate {
namespace {

constexpr std::size_t kUndoSteps = 200;

}  // namespace

App::App(Catalogue library)
    : built_in_(std::move(library)),
      library_(built_in_),
      first_(first_plan(built_in_)),
      plan_(first_),
      report_(evaluate(plan_, library_)) {}

Plan App::whole_plan() const { return carrying_plan(plan_, own_); }

bool App::apply(const Command& command) {
  return std::visit([this](const auto& each) { return act(each); }, command);
}

bool App::act(const SetField& command) {
  return set(command.pointer, command.text, command.continuous);
}

bool App::act(const ResetField& command) {
  return set(command.pointer, field_text(first_, on_first_line(command.pointer)), false);
}

bool App::act(const EndGesture&) {
  // What came back to where it began is no step.
  if (!gesture_.empty() && !undo_.empty() && undo_.back() == plan_) {
    undo_.pop_back();
    ++revision_;
  }
  gesture_.clear();
  return false;
}

bool App::act(const ChooseFormat& command) {
  Plan next = plan_;
  next.format = command.format;
  if (!check_plan(next, library_).empty()) return false;
  return act(ReplacePlan{std::move(next)});
}

bool App::act(const ReplacePlan& command) {
  reject({});
  Plan next = lightened_plan(command.plan, own_);
  if (next == plan_) return false;
  remember({});
  become(std::move(next));
  return true;
}

bool App::act(const OpenPlan& command) {
  undo_.clear();
  redo_.clear();
  become(lightened_plan(command.plan, own_));
  return true;
}

bool App::act(const UseLibrary& command) {
  const Catalogue gone = rows_not_in(own_, command.own);
  own_ = command.own;
  library_ = merged_library(own_, built_in_, OnDifference::keep);
  for (auto* plans : {&undo_, &redo_}) {
    for (Plan& plan : *plans) plan = lightened_plan(carrying_plan(std::move(plan), gone), own_);
  }
  Plan plan = lightened_plan(carrying_plan(plan_, gone), own_);
  // A camera that lost the chosen mode gives its first one.
  if (!check_plan(plan, library_).empty()) {
    auto followed = with_field(plan, "/format/camera", plan.format.camera, library_);
    if (followed) plan = std::move(*followed);
  }
  become(std::move(plan));
  return true;
}

bool App::act(const Undo&) {
  if (undo_.empty()) return false;
  redo_.push_back(plan_);
  Plan before = std::move(undo_.back());
  undo_.pop_back();
  reject({});
  become(std::move(before));
  gesture_.clear();
  return true;
}

bool App::act(const Redo&) {
  if (redo_.empty()) return false;
  undo_.push_back(plan_);
  Plan after = std::move(redo_.back());
  redo_.pop_back();
  reject({});
  become(std::move(after));
  gesture_.clear();
  return true;
}

bool App::set(const std::string& pointer, const std::string& text, bool continuous) {
  Checked<Plan> changed = with_field(plan_, pointer, text, library_);
  if (!changed) {
    reject({pointer, text, changed.error().front()});
    return false;
  }
  reject({});
  if (*changed == plan_) return false;
  remember(continuous ? pointer : std::string());
  become(std::move(*changed));
  return true;
}

// A drag is one step back: only its first change is remembered.
void App::remember(const std::string& gesture) {
  const bool same = !gesture.empty() && gesture == gesture_;
  gesture_ = gesture;
  redo_.clear();
  if (same) return;
  if (undo_.size() == kUndoSteps) undo_.erase(undo_.begin());
  undo_.push_back(plan_);
}

void App::become(Plan plan) {
  plan_ = std::move(plan);
  report_ = evaluate(plan_, library_);
  ++revision_;
}

void App::reject(Rejection rejection) {
  const bool same = rejection.pointer == rejection_.pointer && rejection.text == rejection_.text &&
                    rejection.problem == rejection_.problem;
  if (same) return;
  rejection_ = std::move(rejection);
  ++revision_;
}

}  // namespace widegate
