// Repeatable random numbers for property tests. The standard's distributions differ between
// libraries, so only the generator is used, which does not.
#pragma once

#include <cstdint>
#include <random>

namespace widegate::fdl {

class Dice {
 public:
  explicit Dice(std::uint64_t seed) : generator_(seed) {}

  /// Whole number from `low` to `high`, both included.
  std::int64_t whole(std::int64_t low, std::int64_t high) {
    const auto span = static_cast<std::uint64_t>(high - low) + 1;
    return low + static_cast<std::int64_t>(generator_() % span);
  }
  /// True once in `n`.
  bool one_in(std::int64_t n) { return whole(1, n) == 1; }
  /// From `low` to `high` in 4096 steps; the ends come up.
  double between(double low, double high) {
    return low + (high - low) * (static_cast<double>(whole(0, 4096)) / 4096);
  }
  /// One of the entries of an array.
  template <class Array>
  auto pick(const Array& entries) {
    return entries[static_cast<std::size_t>(
        whole(0, static_cast<std::int64_t>(std::size(entries)) - 1))];
  }

 private:
  std::mt19937_64 generator_;
};

}  // namespace widegate::fdl
