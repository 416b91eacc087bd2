// Benchmarks of the Choose question.
#pragma once

#include <cstdint>

namespace widegate::bench {

/// 10,000 and 100,000 formats: the budget, and whether time grows with the count.
void rank_10000(std::int64_t times);
void rank_100000(std::int64_t times);

/// The built-in library as a person meets it.
void rank_library(std::int64_t times);

/// What would have to change, for one rejected format of the library.
void change_one(std::int64_t times);

}  // namespace widegate::bench
