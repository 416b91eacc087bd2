// The picture: what is in front of the lens and how it is shown. Which picture is switched on the
// picture itself.
#include <array>

#include "web/view/picture_controls.h"
#include "web/view/sections.h"

namespace widegate {

Panel picture_panel() {
  static constexpr auto kExtra =
      std::to_array<std::string_view>({kScene, kDesqueeze, kMagnifier, kSpotAcross, kSpotDown});
  return {.id = "picture",
          .title = "Picture",
          .question = "What does the lens make of it?",
          .has_verdict = false,
          .extra_controls = kExtra};
}

}  // namespace widegate
