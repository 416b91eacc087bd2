// How many bytes a frame takes: one form of data per kind of codec, one function per form.
// Cards, audio and time live in store.h.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "core/base/rational.h"

namespace widegate {

/// A count known exactly (least == most) or only within bounds (a lossless codec).
struct ByteRange {
  std::int64_t least = 0;
  std::int64_t most = 0;

  [[nodiscard]] constexpr bool exact() const { return least == most; }
  friend constexpr bool operator==(ByteRange, ByteRange) = default;
};

/// Fixed-size samples in a fixed layout. A row is ceil(width / block_pixels) blocks, filled up to a
/// multiple of row_multiple_bytes, plus row_extra_bytes; the frame adds frame_extra_bytes.
/// Holds uncompressed raw (12-bit: 2 photosites in 3 bytes), DPX, packed 4:2:2 and half-float
/// images.
struct PackedForm {
  std::int64_t block_pixels = 1;
  std::int64_t block_bytes = 1;
  std::int64_t row_multiple_bytes = 1;
  std::int64_t row_extra_bytes = 0;
  std::int64_t frame_extra_bytes = 0;
  friend bool operator==(const PackedForm&, const PackedForm&) = default;
};

/// Bits for each pixel or photosite before compression, divided by a ratio (1 or more):
/// bytes = ceil(width * height * bits / ratio / 8). "12 bits at 3:1", "20 bits (4:2:2 10-bit) at
/// 6:1".
struct RatioForm {
  Rational bits_per_pixel;
  Rational ratio = 1;
  friend bool operator==(const RatioForm&, const RatioForm&) = default;
};

/// Lossless coding: the ratio depends on the picture, so only bounds are known.
/// least bytes at best_ratio, most bytes at worst_ratio; worst_ratio may be below 1 (pure noise
/// grows).
struct LosslessForm {
  Rational bits_per_pixel;
  Rational worst_ratio = 1;
  Rational best_ratio = 1;
  friend bool operator==(const LosslessForm&, const LosslessForm&) = default;
};

/// A frame size that grows with the count of 16x16 macroblocks, in steps:
/// max(minimum, step * floor((floor(blocks * numerator / denominator) + step / 2) / step)).
/// The resolution-independent profiles of SMPTE ST 2019-1 (VC-3) have this form.
struct MacroblockForm {
  std::int64_t numerator = 1;
  std::int64_t denominator = 255;
  std::int64_t step_bytes = 4096;
  std::int64_t minimum_bytes = 8192;
  friend bool operator==(const MacroblockForm&, const MacroblockForm&) = default;
};

/// Published bytes per frame by raster, and where it matters by frame rate.
struct TableForm {
  struct Row {
    std::int64_t width_pixels = 0;
    std::int64_t height_pixels = 0;
    std::vector<Rational> rates;  ///< Rates this row is for; empty for every rate.
    std::int64_t bytes = 0;
    friend bool operator==(const Row&, const Row&) = default;
  };
  std::vector<Row> rows;
  friend bool operator==(const TableForm&, const TableForm&) = default;
};

/// A constant bit rate whatever the raster; a frame gets its share: ceil(bits / 8 / rate).
struct BitRateForm {
  std::int64_t bits_per_s = 0;
  friend bool operator==(const BitRateForm&, const BitRateForm&) = default;
};

/// One's own measurement: `bytes` for `frames` frames of a known raster, scaled by the pixel count.
struct MeasuredForm {
  std::int64_t bytes = 0;
  std::int64_t frames = 0;
  std::int64_t width_pixels = 0;
  std::int64_t height_pixels = 0;
  friend bool operator==(const MeasuredForm&, const MeasuredForm&) = default;
};

using CodecForm = std::variant<PackedForm, RatioForm, LosslessForm, MacroblockForm, TableForm,
                               BitRateForm, MeasuredForm>;

/// How the samples of a pixel are stored: colour at a quarter, at half or at all of the pixels, or
/// one sample for a photosite of the sensor's mosaic, before any picture is made of it.
enum class Chroma { c420, c422, c444, raw };

/// What a codec keeps of the picture, apart from how large it is. Nothing means not known.
struct CodecFacts {
  std::optional<std::int64_t> bit_depth;  ///< Of a sample, 1 to 32.
  std::optional<Chroma> chroma;
  std::optional<bool> lossless;  ///< Every sample comes back as it was; uncompressed counts.
  std::optional<bool> intra;     ///< Every frame is coded by itself.
  /// An edit suite plays it as it is: a picture, not a mosaic, that usual machines decode at speed.
  std::optional<bool> plays_at_once;
  std::string facts_source;  ///< Where these come from; empty when nothing is said.
  friend bool operator==(const CodecFacts&, const CodecFacts&) = default;
};

/// Whether photosites are recorded rather than a picture; nothing when the chroma is not known.
[[nodiscard]] std::optional<bool> is_sensor_raw(const CodecFacts& facts);

/// Samples stored for a recorded pixel: raw 1, 4:2:0 3/2, 4:2:2 2, 4:4:4 3.
/// @source ITU-R BT.601 and BT.2020 for the sampling structures; raw by definition.
[[nodiscard]] Rational samples_per_pixel(Chroma chroma);

/// One codec of the catalogue.
struct Codec {
  std::string id;
  std::string name;
  std::string
      source;  ///< Standard or measurement the figures come from, or "invented for the demo".
  CodecForm form;
  CodecFacts facts = {};
  friend bool operator==(const Codec&, const Codec&) = default;
};

/// Bytes of one coded frame, without audio or container.
/// @param width_pixels, height_pixels  recorded raster, 1 to 65535.
/// @param rate  sensor rate in frames per second, positive.
/// @return least and most bytes; nothing when a table has no row for this raster and rate, or the
///         result is 2^53 or more.
/// @source the form's own; see docs/formulas/store.md, "Bytes per frame".
[[nodiscard]] std::optional<ByteRange> bytes_per_frame(const CodecForm& form,
                                                       std::int64_t width_pixels,
                                                       std::int64_t height_pixels, Rational rate);

}  // namespace widegate
