#include "tests/bench/evaluate_bench.h"

#include "core/catalogue/catalogue_json.h"
#include "core/handover/json/report_json.h"
#include "core/plan/plan_check.h"
#include "core/report/evaluate.h"
#include "tests/bench/bench.h"

namespace widegate::bench {
namespace {

const Catalogue& library() {
  static const Catalogue catalogue = built_in_catalogue().value_or(Catalogue{});
  return catalogue;
}

Plan rich_plan() {
  Plan plan;
  plan.format.codec = "bayer-12-lossless";
  plan.lens.set = "wye";
  plan.lens.focal_mm = 50;
  FrameLine line;
  line.protection = Rational(1, 20);
  plan.deliverable.frame_lines.assign(8, line);
  for (std::size_t i = 0; i < plan.deliverable.frame_lines.size(); ++i) {
    FrameLine& frame = plan.deliverable.frame_lines[i];
    frame.aspect = Rational(16 + static_cast<std::int64_t>(i), 9);
    if (i > 0) frame.anchor.kind = AnchorKind::common_top;
  }
  return plan;
}

void evaluate_plan(const Plan& plan, std::int64_t times) {
  for (std::int64_t i = 0; i < times; ++i) keep(evaluate(plan, library()));
}

}  // namespace

void evaluate_new_plan(std::int64_t times) { evaluate_plan(Plan{}, times); }
void evaluate_rich_plan(std::int64_t times) { evaluate_plan(rich_plan(), times); }

void check_new_plan(std::int64_t times) {
  const Plan plan;
  for (std::int64_t i = 0; i < times; ++i) keep(check_plan(plan, library()));
}

void report_as_json(std::int64_t times) {
  const Report report = evaluate(Plan{}, library());
  for (std::int64_t i = 0; i < times; ++i) keep(report_to_json(report));
}

}  // namespace widegate::bench
