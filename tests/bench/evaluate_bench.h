// One evaluation, whole and in parts: what a slider costs on every frame of a drag.
#pragma once

#include <cstdint>

namespace widegate::bench {

void evaluate_new_plan(std::int64_t times);
/// Eight frame lines, an anamorphic lens, a lossless codec (every figure a range).
void evaluate_rich_plan(std::int64_t times);
void check_new_plan(std::int64_t times);
void report_as_json(std::int64_t times);

}  // namespace widegate::bench
