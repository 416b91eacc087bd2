// A small benchmark harness: each benchmark is a function that does its work a given number of
// times; the harness finds a count that takes long enough to time, repeats it, and keeps the
// median. Clocks live here, never in core/.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

namespace widegate::bench {

/// One thing to time.
struct Benchmark {
  std::string name;
  /// Runs the work `times` times; prepare the input outside of this function.
  void (*run)(std::int64_t times);
  /// How many items one run handles (10,000 formats ranked); figures are also given per item. At
  /// least 1.
  std::int64_t items = 1;
  /// What one run should stay under, nanoseconds; natively and in WebAssembly. 0: no budget.
  double native_budget_ns = 0;
  double wasm_budget_ns = 0;
  /// Another benchmark of the same work on fewer items, whose time per item this one must stay
  /// near. Empty: none.
  std::string grows_from = {};
};

/// Medians over several batches.
struct Timing {
  std::string name;
  double median_ns = 0;   ///< Of one run.
  double fastest_ns = 0;  ///< Of one run.
  std::int64_t runs = 0;  ///< In all batches together.
};

/// Times one benchmark: a warm-up of a second, then 9 batches of at least 200 ms each.
[[nodiscard]] Timing time_benchmark(const Benchmark& benchmark);

/// Tells the compiler that a value is used, so that the work behind it stays.
template <typename Value>
void keep(const Value& value) {
  asm volatile("" : : "r"(&value) : "memory");
}

/// Every benchmark, from all files of this folder (list.cpp).
[[nodiscard]] std::vector<Benchmark> all_benchmarks();

}  // namespace widegate::bench
