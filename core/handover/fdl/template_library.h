// Ready-made canvas templates for the deliveries that come up most, as any other template: to be
// applied by apply_template.h, written by write.h, or used as a start for one's own.
#pragma once

#include <vector>

#include "core/handover/fdl/document.h"

namespace widegate::fdl {

/// The templates for one source canvas, each valid and with an id and a label:
/// UHD       framing into 3840 x 2160 (Recommendation ITU-R BT.2020), the rest of it padding;
/// SCOPE_4K  framing into 4096 x 1716, and
/// FLAT_4K   framing into 3996 x 2160 (areas of the 4096 x 2160 cinema container, SMPTE ST 428-1);
/// HD_PROXY  the whole canvas into 1920 x 1080, so that what surrounds the framing can be seen;
/// VFX_PULL  the whole canvas at its full width, pixel for pixel, squeezed as it was recorded.
/// All but the last give a squeeze of 1. The choice of settings is common practice, no source.
[[nodiscard]] std::vector<CanvasTemplate> delivery_templates(const Canvas& source);

/// A document that holds nothing but templates; its UUID is a hash of them.
[[nodiscard]] Document template_document(std::vector<CanvasTemplate> templates);

}  // namespace widegate::fdl
