// What is shot: one recording format, made of a sensor mode and a recording option. The mode
// decides the lens, the raster decides the file.
#include <array>

#include "web/view/sections.h"

namespace widegate {

Panel format_panel() {
  static constexpr auto kFields = std::to_array<PanelField>({
      {"/format/camera"},
      {"/format/mode"},
      {"/format/recording"},
      {"/format/codec"},
  });
  return {.id = "format",
          .title = "Format",
          .question =
              "Choose what is read and what is written; the numbers and the seven answers "
              "follow.",
          .has_verdict = false,
          .fields = kFields};
}

}  // namespace widegate
