// The figures and cautions of a delivery in words: rounding for people happens here, and the sizes
// that only people need (what is padded, cut off, enlarged).
#pragma once

#include <vector>

#include "core/handover/fdl/plan_delivery.h"

namespace widegate::fdl {

/// The table of a delivery without problems: canvas, effective area, protection, framing, picture
/// and padding with sizes and places in pixels (at most four decimals), squeeze, scale.
[[nodiscard]] std::vector<DeliveryFigure> delivery_figures(const Delivery& delivery);

/// Adds what to look out for: an enlarged picture, a cut one, a framing cut by the canvas, a
/// protection that is left behind.
/// @param source  the layers the template was applied to.
void add_delivery_notes(Delivery& delivery, const Layers& source);

}  // namespace widegate::fdl
