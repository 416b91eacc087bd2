#include "core/encode/qr_svg.h"

#include "core/base/number_text.h"
#include "core/encode/markup.h"

namespace widegate {
namespace {

/// Each run of dark modules in a row as one rectangle.
std::string module_path(const QrCode& qr) {
  std::string path;
  for (int y = 0; y < qr.size; ++y) {
    for (int x = 0; x < qr.size; ++x) {
      if (!qr.at(x, y)) continue;
      int end = x;
      while (end < qr.size && qr.at(end, y)) ++end;
      const std::string length = std::to_string(end - x);
      path.append("M").append(std::to_string(x + kQrQuietModules)).append(" ");
      path.append(std::to_string(y + kQrQuietModules)).append("h").append(length);
      path.append("v1h-").append(length).append("z");
      x = end;
    }
  }
  return path;
}

}  // namespace

std::string qr_svg(const QrCode& qr) {
  const double side = qr.size + 2 * kQrQuietModules;
  Markup svg;
  svg.open("svg", {{"xmlns", "http://www.w3.org/2000/svg"},
                   {"viewBox", "0 0 " + print_number(side) + " " + print_number(side)},
                   {"role", "img"},
                   {"aria-label", "QR code of the link"},
                   {"shape-rendering", "crispEdges"}});
  svg.empty("rect", {{"width", side}, {"height", side}, {"fill", "#fff"}});
  svg.empty("path", {{"d", module_path(qr)}, {"fill", "#000"}});
  svg.close();
  return svg.take();
}

}  // namespace widegate
