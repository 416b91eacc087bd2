// Resolve: photosites behind the frame line, the commission, resampling.
#include <array>

#include "web/view/library_controls.h"
#include "web/view/sections.h"

namespace widegate {

Panel resolve_panel() {
  static constexpr auto kFields = std::to_array<PanelField>({
      {"/commission/id"},
      {"/commission/photosites", true},
      {"/commission/counted_on", true},
      {"/commission/recorded_width_pixels", true},
      {"/commission/recorded_height_pixels", true},
      {"/commission/largest_upscaling", true},
      {"/commission/bit_depth", true},
      {"/commission/chroma", true},
      {"/commission/sensor_raw", true},
      {"/commission/compression", true},
      {"/commission/lossless", true},
      {"/commission/intra", true},
      {"/commission/plays_at_once", true},
      {"/commission/in_camera_desqueeze", true},
      {"/commission/protection", true},
      {"/commission/film_pixels_per_mm", true},
  });
  static constexpr auto kExtra = std::to_array<std::string_view>({kNewCommission});
  return {.id = "resolve",
          .title = "Resolve",
          .question = "Is it enough pixels?",
          .topic = Question::resolve,
          .fields = kFields,
          .extra_controls = kExtra};
}

}  // namespace widegate
