#include "core/encode/qr.h"

#include <qrcodegen.h>

#include <string>

namespace widegate {

std::optional<QrCode> make_qr(std::string_view text) {
  if (text.find('\0') != std::string_view::npos) return std::nullopt;
  std::vector<std::uint8_t> code(qrcodegen_BUFFER_LEN_MAX);
  std::vector<std::uint8_t> scratch(qrcodegen_BUFFER_LEN_MAX);
  if (!qrcodegen_encodeText(std::string(text).c_str(), scratch.data(), code.data(),
                            qrcodegen_Ecc_LOW, qrcodegen_VERSION_MIN, qrcodegen_VERSION_MAX,
                            qrcodegen_Mask_AUTO, true)) {
    return std::nullopt;
  }
  QrCode qr;
  qr.size = qrcodegen_getSize(code.data());
  qr.dark.reserve(qr.index(0, qr.size));
  for (int y = 0; y < qr.size; ++y) {
    for (int x = 0; x < qr.size; ++x) {
      qr.dark.push_back(qrcodegen_getModule(code.data(), x, y));
    }
  }
  return qr;
}

}  // namespace widegate
