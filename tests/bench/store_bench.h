// Benchmarks of the Store question.
#pragma once

#include <cstdint>

namespace widegate::bench {

/// How much of one evaluation goes into Store: a codec of one size, and one of two ends.
void store_one_size(std::int64_t times);
void store_range(std::int64_t times);

}  // namespace widegate::bench
