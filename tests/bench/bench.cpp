#include "tests/bench/bench.h"

#include <algorithm>
#include <array>
#include <chrono>

namespace widegate::bench {
namespace {

constexpr double kBatchNs = 20e6;
constexpr std::size_t kBatches = 9;

double time_of(const Benchmark& benchmark, std::int64_t times) {
  const auto start = std::chrono::steady_clock::now();
  benchmark.run(times);
  const std::chrono::duration<double, std::nano> taken = std::chrono::steady_clock::now() - start;
  return taken.count();
}

/// Doubles the count until a batch is long enough; warms up on the way.
std::int64_t batch_size(const Benchmark& benchmark) {
  std::int64_t times = 1;
  while (time_of(benchmark, times) < kBatchNs) {
    times *= 2;
  }
  return times;
}

}  // namespace

Timing time_benchmark(const Benchmark& benchmark) {
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
