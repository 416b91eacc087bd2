// A QR code (ISO/IEC 18004) of a text, as modules; drawing them is for whoever shows it.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

namespace widegate {

/// Square of modules without the quiet zone, which is 4 modules on each side.
struct QrCode {
  int size = 0;            ///< Modules a side: 4 x version + 17.
  std::vector<bool> dark;  ///< Row by row.
  [[nodiscard]] std::size_t index(int x, int y) const {
    return static_cast<std::size_t>(y) * static_cast<std::size_t>(size) +
           static_cast<std::size_t>(x);
  }
  [[nodiscard]] bool at(int x, int y) const { return dark[index(x, y)]; }
};

inline constexpr int kQrQuietModules = 4;

/// The smallest code that holds the text with error correction of at least level L, raised as far
/// as the same size allows. Nothing when the text is longer than a version 40 code holds (2,953
/// bytes) or holds a zero byte.
[[nodiscard]] std::optional<QrCode> make_qr(std::string_view text);

}  // namespace widegate
