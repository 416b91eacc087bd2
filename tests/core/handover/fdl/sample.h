// A small framing decision list of our own for tests to start from, and JSON Patch edits of it.
#pragma once

#include <string>
#include <string_view>

#include "core/handover/fdl/document.h"

namespace widegate::fdl {

/// One context with one canvas (4096 x 2160) that carries a 2.39:1 decision; ids FI_239 and
/// CVS_OCF.
inline constexpr std::string_view kSample = R"({
  "uuid": "0f8fad5b-d9cb-469f-a165-70867728950e",
  "version": {"major": 2, "minor": 0},
  "fdl_creator": "tests",
  "framing_intents": [
    {"label": "wide", "id": "FI_239", "aspect_ratio": {"width": 239, "height": 100},
     "protection": 0.0}
  ],
  "contexts": [
    {"label": "ferry deck",
     "canvases": [
       {"label": "gate", "id": "CVS_OCF", "source_canvas_id": "CVS_OCF",
        "dimensions": {"width": 4096, "height": 2160}, "anamorphic_squeeze": 1.0,
        "framing_decisions": [
          {"label": "wide", "id": "CVS_OCF-FI_239", "framing_intent_id": "FI_239",
           "dimensions": {"width": 4096.0, "height": 1714.0},
           "anchor_point": {"x": 0.0, "y": 223.0}}
        ]}
     ]}
  ],
  "canvas_templates": []
})";

/// `text` with an RFC 6902 patch applied.
[[nodiscard]] std::string patched(std::string_view text, std::string_view patch);

/// `text` read; the test ends when it is refused.
[[nodiscard]] Document read_or_fail(std::string_view text);

}  // namespace widegate::fdl
