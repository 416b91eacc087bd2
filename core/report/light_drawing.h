// A drawing of how the exposures of a few frames meet lights that pulse.
#pragma once

#include <vector>

#include "core/run/report.h"

namespace widegate {

/// Pulses and exposures of a few frames, to be drawn. Light is a share of the most there is,
/// times are shares of the whole drawing.
struct LightDrawing {
  double seconds = 0;        ///< The whole drawing.
  std::vector<float> light;  ///< At equal steps from its start to its end; level when steady.
  struct Exposure {
    float from = 0, to = 0;  ///< When the frame is exposed.
    float collected = 0;     ///< Mean light of it.
  };
  std::vector<Exposure> frames;
};
[[nodiscard]] LightDrawing light_drawing(const RunReport& run);

}  // namespace widegate
