// Draws Dear ImGui's triangles into memory: slow, plain and the same on every machine. For looking
// at screens and comparing them without a browser.
#pragma once

#include "imgui.h"
#include "tests/web/support/harness.h"

namespace widegate::test {

[[nodiscard]] Image rasterise(const ImDrawData& data, float pixel_ratio);

/// Writes a binary PPM file.
void write_ppm(const Image& image, const std::string& path);

}  // namespace widegate::test
