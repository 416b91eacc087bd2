// Benchmarks of one drawn frame of the front end, without a renderer.
#pragma once

#include <cstdint>

namespace widegate::bench {

/// A frame in which nothing changes, on a phone.
void draw_still_frame(std::int64_t times);

/// A frame in which a slider moves: the plan is evaluated and ranked, all words are made anew, the
/// screen is drawn twice.
void draw_dragged_frame(std::int64_t times);

}  // namespace widegate::bench
