// Writing PNG pictures (ISO/IEC 15948) of up to sixteen levels, row by row, so that a chart of any
// raster needs no more memory than one row. Compression is run lengths in fixed codes (RFC 1951,
// RFC 1950), which suits drawings of lines: rows repeat, and what repeats becomes zeros.
#pragma once

#include <array>
#include <cstdint>
#include <span>
#include <string>
#include <vector>

namespace widegate {

struct PngColour {
  std::uint8_t red = 0, green = 0, blue = 0, alpha = 255;
};
using PngPalette = std::array<PngColour, 16>;

/// Collects rows into a PNG file.
class PngWriter {
 public:
  /// @param width, height  pixels, 1 to 2^31 - 1; exactly `height` rows must follow.
  PngWriter(std::uint32_t width, std::uint32_t height, const PngPalette& palette);

  /// One row from the top: `width` entries of the palette, 0 to 15 each.
  void add_row(std::span<const std::uint8_t> levels);

  /// The whole file.
  [[nodiscard]] std::string finish();

 private:
  void byte(std::uint8_t value);
  void end_run();
  void bits(std::uint32_t value, int count);
  void code(std::uint32_t value, int count);
  void symbol(std::uint32_t value);
  void match(std::uint32_t length);

  std::string file_;
  std::string data_;  ///< Compressed so far.
  std::vector<std::uint8_t> row_, above_;
  std::uint32_t pending_ = 0;  ///< Bits that do not fill a byte yet.
  int pending_count_ = 0;
  std::uint32_t sum_low_ = 1, sum_high_ = 0;  ///< Adler-32 of what is compressed.
  int last_ = -1;                             ///< Byte that a run repeats; -1 before the first.
  std::uint32_t run_ = 0;                     ///< Repetitions of it not yet written.
};

}  // namespace widegate
