// Prints the reports of seeded random plans as JSON, one after the other: report_dump COUNT [SEED].
// Built natively and as WebAssembly; compare.mjs checks that both print the same bytes.
#include <cstdio>
#include <cstdlib>
#include <string>

#include "core/catalogue/catalogue_json.h"
#include "core/handover/json/report_json.h"
#include "core/report/evaluate.h"
#include "tests/core/support/random_plans.h"

int main(int argc, char** argv) {
  const int count = argc > 1 ? std::atoi(argv[1]) : 0;
  const unsigned long long seed = argc > 2 ? std::strtoull(argv[2], nullptr, 10) : 0;
  const auto library = widegate::built_in_catalogue();
  if (count <= 0 || !library) {
    std::fputs("usage: report_dump COUNT [SEED]\n", stderr);
    return 2;
  }
  widegate::testing::Dice dice(seed);
  for (int i = 0; i < count; ++i) {
    const widegate::Plan plan = widegate::testing::random_plan(dice, *library);
    std::puts(widegate::report_to_json(widegate::evaluate(plan, *library)).c_str());
  }
  return 0;
}
