// Runs every benchmark whose name contains the first argument (all without one) and prints one JSON
// object a line; tools/bench turns the lines of the native and the WebAssembly run into a table.
#include <cstdio>
#include <string>

#include "tests/bench/bench.h"

int main(int argc, char** argv) {
  const std::string wanted = argc > 1 ? argv[1] : "";
  for (const auto& benchmark : widegate::bench::all_benchmarks()) {
    if (benchmark.name.find(wanted) == std::string::npos) {
      continue;
    }
    const auto timing = widegate::bench::time_benchmark(benchmark);
    std::printf(
        "{\"name\": \"%s\", \"median_ns\": %.1f, \"fastest_ns\": %.1f, \"runs\": %lld, \"items\": "
        "%lld, "
        "\"native_budget_ns\": %.1f, \"wasm_budget_ns\": %.1f, "
        "\"grows_from\": \"%s\"}\n",
        timing.name.c_str(), timing.median_ns, timing.fastest_ns,
        static_cast<long long>(timing.runs), static_cast<long long>(benchmark.items),
        benchmark.native_budget_ns, benchmark.wasm_budget_ns, benchmark.grows_from.c_str());
    std::fflush(stdout);
  }
  return 0;
}
