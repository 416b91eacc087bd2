#include "tests/bench/bench.h"

#include <algorithm>
#include <array>
#include <ctime>

#ifdef __EMSCRIPTEN__
#include <emscripten.h>

// Emscripten's clock() is the time of day in whole milliseconds; Node knows the processor's own.
EM_JS(double, processor_time_ns, (), { return process.cpuUsage().user * 1000; });
#else
namespace {
double processor_time_ns() { return static_cast<double>(std::clock()) * (1e9 / CLOCKS_PER_SEC); }
}  // namespace
#endif

namespace widegate::bench {
namespace {

/// Long beside the steps in which some machines count processor time (10 ms).
constexpr double kBatchNs = 200e6;
constexpr std::size_t kBatches = 9;
/// Run first and not counted: a WASM engine compiles what runs often a second time, on a thread
/// whose time would count too, and a count of runs found before that would be far too small.
constexpr double kWarmUpNs = 1e9;

/// Processor time, so that a busy machine does not count as slow code.
double time_of(const Benchmark& benchmark, std::int64_t times) {
  const double start = processor_time_ns();
  benchmark.run(times);
  return processor_time_ns() - start;
}

/// Runs the work for a while. The first run also sets up what the benchmark works on.
void warm_up(const Benchmark& benchmark) {
  double spent = 0;
  for (std::int64_t times = 1; spent < kWarmUpNs; times *= 2) spent += time_of(benchmark, times);
}

/// Doubles the count until a batch is long enough.
std::int64_t batch_size(const Benchmark& benchmark) {
  std::int64_t times = 1;
  while (time_of(benchmark, times) < kBatchNs) times *= 2;
  return times;
}

}  // namespace

Timing time_benchmark(const Benchmark& benchmark) {
  warm_up(benchmark);
  const std::int64_t times = batch_size(benchmark);
  std::array<double, kBatches> each{};
  for (double& batch : each) {
    batch = time_of(benchmark, times) / static_cast<double>(times);
  }
  std::sort(each.begin(), each.end());
  return {.name = benchmark.name,
          .median_ns = each[kBatches / 2],
          .fastest_ns = each.front(),
          .runs = times * static_cast<std::int64_t>(kBatches)};
}

}  // namespace widegate::bench
