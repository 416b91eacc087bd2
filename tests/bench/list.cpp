// The explicit list of benchmarks. A new one: a function here (or in a file beside this one) and a
// row below.
#include "core/base/number_text.h"
#include "core/base/rational.h"
#include "tests/bench/bench.h"
#include "tests/bench/evaluate_bench.h"
#include "tests/bench/frame_bench.h"
#include "tests/bench/rank_bench.h"
#include "tests/bench/store_bench.h"

namespace widegate::bench {
namespace {

void print_numbers(std::int64_t times) {
  double value = 23.976023976;
  for (std::int64_t i = 0; i < times; ++i) {
    keep(print_number(value));
    value += 1e-6;
  }
}

void parse_rates(std::int64_t times) {
  for (std::int64_t i = 0; i < times; ++i) {
    keep(parse_rational("24000/1001"));
  }
}

}  // namespace

std::vector<Benchmark> all_benchmarks() {
  return {
      {.name = "print a number at 12 digits", .run = print_numbers},
      {.name = "read a frame rate", .run = parse_rates},
      {.name = "evaluate: a new plan",
       .run = evaluate_new_plan,
       .native_budget_ns = 5000,
       .wasm_budget_ns = 8000},
      {.name = "evaluate: eight frame lines, ranges", .run = evaluate_rich_plan},
      {.name = "check a new plan", .run = check_new_plan},
      {.name = "a report as JSON", .run = report_as_json},
      {.name = "store: a codec of one size", .run = store_one_size},
      {.name = "store: a codec with a range", .run = store_range},
      {.name = "rank the built-in library", .run = rank_library},
      {.name = "rank 10,000 formats", .run = rank_10000, .items = 10'000, .wasm_budget_ns = 50e6},
      {.name = "rank 100,000 formats",
       .run = rank_100000,
       .items = 100'000,
       .grows_from = "rank 10,000 formats"},
      {.name = "what would have to change, one format", .run = change_one},
      {.name = "a drawn frame on a phone",
       .run = draw_still_frame,
       .native_budget_ns = 2e6,
       .wasm_budget_ns = 4e6},
      {.name = "a drawn frame while a slider moves",
       .run = draw_dragged_frame,
       .native_budget_ns = 2e6,
       .wasm_budget_ns = 4e6},
      {.name = "a value is set, all is made anew, kept and drawn", .run = change_a_value},
  };
}

}  // namespace widegate::bench
