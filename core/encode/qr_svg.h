// A QR code drawn as SVG: for the printed sheet, a file, a page. Always dark on light, with its
// quiet zone, whatever surrounds it.
#pragma once

#include <string>

#include "core/encode/qr.h"

namespace widegate {

/// A complete SVG element without a size of its own; one unit of its box is one module.
[[nodiscard]] std::string qr_svg(const QrCode& qr);

}  // namespace widegate
