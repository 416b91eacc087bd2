// Benchmarks of one drawn frame of the front end, without a renderer.
#pragma once

#include <cstdint>

namespace widegate::bench {

/// A frame in which nothing changes, on a phone.
void draw_still_frame(std::int64_t times);

/// A frame in which a finger moves a slider: the plan is evaluated, all words are made anew, the
/// screen is built twice.
void draw_dragged_frame(std::int64_t times);

/// A value set from the page, and the frame after it: what rests during a drag (ranking, delivery,
/// link, keeping) is made too.
void change_a_value(std::int64_t times);

}  // namespace widegate::bench
