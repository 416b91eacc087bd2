// Bytes per frame against frames and files that other software wrote, and the laws of each form.
#include "core/catalogue/codec.h"

#include <doctest/doctest.h>

#include <array>
#include <map>
#include <random>
#include <string>
#include <string_view>

#include "core/base/wide.h"

namespace widegate {
namespace {

// The single frame size of a codec whose sizes are exact; -1 when there is none.
std::int64_t exact_bytes(const CodecForm& form, std::int64_t width, std::int64_t height,
                         Rational rate = 24) {
  const auto bytes = bytes_per_frame(form, width, height, rate);
  return bytes && bytes->exact() ? bytes->least : -1;
}

// Numerators over 255 by the compression id of the resolution-independent frames.
const std::map<int, CodecForm> kVc3Frames = {
    {1270, MacroblockForm{.numerator = 57344}}, {1271, MacroblockForm{.numerator = 28672}},
    {1272, MacroblockForm{.numerator = 28672}}, {1273, MacroblockForm{.numerator = 18944}},
    {1274, MacroblockForm{.numerator = 5888}},
};

struct Vc3Row {
  int id;
  std::int64_t width, height, bytes;
};
constexpr auto kVc3Rows = std::to_array<Vc3Row>({
#include "tests/data/vc3_profiles.inc"
});

TEST_CASE("VC-3 resolution-independent frames are as measured") {
  for (const Vc3Row& row : kVc3Rows) {
    CAPTURE(row.id);
    CAPTURE(row.width);
    CAPTURE(row.height);
    CHECK(exact_bytes(kVc3Frames.at(row.id), row.width, row.height) == row.bytes);
  }
}

TEST_CASE("VC-3 sizes do not overflow where 32 bits would") {
  CHECK(exact_bytes(kVc3Frames.at(1270), 16384, 16384) == 235'802'624);
  CHECK(exact_bytes(kVc3Frames.at(1270), 65535, 65535) > 3'700'000'000);
}

struct CompressionIdRow {
  int id;
  std::int64_t width, height;
  Rational rate;
  std::int64_t bytes;
};
constexpr auto kCompressionIdRows = std::to_array<CompressionIdRow>({
#include "tests/data/vc3_compression_ids.inc"
});

TEST_CASE(
    "VC-3 fixed compression ids keep one size, and two of them are a resolution-independent "
    "one's") {
  std::map<int, TableForm> codecs;
  for (const CompressionIdRow& row : kCompressionIdRows) {
    TableForm& form = codecs[row.id];
    if (form.rows.empty()) form.rows.push_back({row.width, row.height, {}, row.bytes});
  }
  REQUIRE(codecs.size() >= 10);
  for (const CompressionIdRow& row : kCompressionIdRows) {
    CAPTURE(row.id);
    CHECK(exact_bytes(codecs[row.id], row.width, row.height, row.rate) == row.bytes);
    CHECK_FALSE(bytes_per_frame(codecs[row.id], row.width + 2, row.height, row.rate));
  }
  CHECK(exact_bytes(codecs[1237], 1920, 1080) == exact_bytes(kVc3Frames.at(1273), 1920, 1080));
  CHECK(exact_bytes(codecs[1253], 1920, 1080) == exact_bytes(kVc3Frames.at(1274), 1920, 1080));
}

struct AvcIntraRow {
  int class_number;
  std::int64_t width, height;
  Rational rate;
  bool interlaced;
  std::int64_t bytes;
  double megabits_per_s;
};
constexpr auto kAvcIntraRows = std::to_array<AvcIntraRow>({
#include "tests/data/avc_intra.inc"
});

TEST_CASE("AVC intra classes are tables by raster and rate") {
  std::map<int, TableForm> classes;
  for (const AvcIntraRow& row : kAvcIntraRows) {
    if (row.interlaced) continue;
    classes[row.class_number].rows.push_back({row.width, row.height, {row.rate}, row.bytes});
  }
  for (const AvcIntraRow& row : kAvcIntraRows) {
    CAPTURE(row.class_number);
    CAPTURE(row.width);
    CAPTURE(row.interlaced);
    const CodecForm form = classes[row.class_number];
    const std::int64_t bytes = exact_bytes(form, row.width, row.height, row.rate);
    CHECK(bytes == row.bytes);
    const double megabits_per_s = static_cast<double>(bytes) * 8e-6 * row.rate.to_double();
    CHECK(megabits_per_s == doctest::Approx(row.megabits_per_s).epsilon(2e-5));
    CHECK_FALSE(bytes_per_frame(form, row.width, row.height, 90));
  }
}

TEST_CASE("A table row for the very rate goes before a row for every rate") {
  const TableForm form{{{1920, 1080, {}, 100}, {1920, 1080, {25, 50}, 200}}};
  CHECK(exact_bytes(form, 1920, 1080, 24) == 100);
  CHECK(exact_bytes(form, 1920, 1080, 50) == 200);
}

// Header sizes are this writer's: 1664 bytes for DPX, 392 and 410 for three and four EXR channels.
const std::map<std::string_view, CodecForm> kLayouts = {
    {"dpx_10_filled", PackedForm{.block_bytes = 4, .frame_extra_bytes = 1664}},
    {"dpx_16", PackedForm{.block_bytes = 6, .row_multiple_bytes = 4, .frame_extra_bytes = 1664}},
    {"dpx_8", PackedForm{.block_bytes = 3, .row_multiple_bytes = 4, .frame_extra_bytes = 1664}},
    {"exr_rgb_half", PackedForm{.block_bytes = 6, .row_extra_bytes = 16, .frame_extra_bytes = 392}},
    {"exr_rgba_half",
     PackedForm{.block_bytes = 8, .row_extra_bytes = 16, .frame_extra_bytes = 410}},
    {"exr_rgb_float",
     PackedForm{.block_bytes = 12, .row_extra_bytes = 16, .frame_extra_bytes = 392}},
    {"packed_422_10", PackedForm{.block_pixels = 6, .block_bytes = 16, .row_multiple_bytes = 128}},
    {"packed_422_8", PackedForm{.block_pixels = 2, .block_bytes = 4}},
};
// TIFF writers add tags and strip tables as they like; only the samples have a rule.
const std::map<std::string_view, CodecForm> kTiffSamples = {
    {"tiff_rgb_16", PackedForm{.block_bytes = 6}},
    {"tiff_rgb_8", PackedForm{.block_bytes = 3}},
    {"tiff_gray_16", PackedForm{.block_bytes = 2}},
};

struct UncompressedRow {
  std::string_view layout;
  std::int64_t width, height, bytes;
};
constexpr auto kUncompressedRows = std::to_array<UncompressedRow>({
#include "tests/data/uncompressed.inc"
});

TEST_CASE("Uncompressed layouts are as measured, odd widths included") {
  int checked = 0;
  for (const UncompressedRow& row : kUncompressedRows) {
    const auto layout = kLayouts.find(row.layout);
    if (layout == kLayouts.end()) continue;
    CAPTURE(row.layout);
    CAPTURE(row.width);
    CAPTURE(row.height);
    CHECK(exact_bytes(layout->second, row.width, row.height) == row.bytes);
    ++checked;
  }
  CHECK(checked >= 100);
}

TEST_CASE("TIFF files are their samples plus a small table") {
  int checked = 0;
  for (const UncompressedRow& row : kUncompressedRows) {
    const auto layout = kTiffSamples.find(row.layout);
    if (layout == kTiffSamples.end()) continue;
    CAPTURE(row.layout);
    CAPTURE(row.width);
    CAPTURE(row.height);
    const std::int64_t tables = row.bytes - exact_bytes(layout->second, row.width, row.height);
    CHECK(tables > 0);
    CHECK(tables < 20'000);
    ++checked;
  }
  CHECK(checked >= 30);
}

TEST_CASE("8-bit 4:2:0 is 12 bits for each pixel at even sizes") {
  int checked = 0;
  for (const UncompressedRow& row : kUncompressedRows) {
    if (row.layout != "planar_420_8" || row.width % 2 != 0) continue;
    CHECK(exact_bytes(RatioForm{.bits_per_pixel = 12}, row.width, row.height) == row.bytes);
    ++checked;
  }
  CHECK(checked >= 10);
}

struct BayerRow {
  std::int64_t width, height, bits, bytes;
  double gigabits_per_s, minutes_per_tb, minutes_per_tib;
};
constexpr auto kBayerRows = std::to_array<BayerRow>({
#include "tests/data/bayer_packed.inc"
});

// Fewest photosites that fill whole bytes: 12 bits take 3 bytes for 2, 10 bits take 5 for 4.
PackedForm packed_bayer(std::int64_t bits) {
  for (std::int64_t pixels = 1;; ++pixels) {
    if (pixels * bits % 8 == 0) return {.block_pixels = pixels, .block_bytes = pixels * bits / 8};
  }
}

TEST_CASE("Packed Bayer raw is its bits, as blocks and as a ratio of one") {
  for (const BayerRow& row : kBayerRows) {
    CAPTURE(row.width);
    CAPTURE(row.bits);
    const std::int64_t bytes = exact_bytes(packed_bayer(row.bits), row.width, row.height);
    CHECK(bytes == row.bytes);
    CHECK(exact_bytes(RatioForm{.bits_per_pixel = row.bits}, row.width, row.height) == row.bytes);
    CHECK(static_cast<double>(bytes) * 8 * 24 / 1e9 ==
          doctest::Approx(row.gigabits_per_s).epsilon(1e-9));
  }
}

struct LosslessRow {
  std::string_view picture;
  std::int64_t bits, packed, ffv1, jpeg2000;
  double bound_ratio;
};
constexpr auto kLosslessRows = std::to_array<LosslessRow>({
#include "tests/data/lossless.inc"
});

TEST_CASE("A lossless range spans what two coders made of the same picture") {
  for (const LosslessRow& row : kLosslessRows) {
    CAPTURE(row.picture);
    CAPTURE(row.bits);
    const Rational ffv1(row.packed, row.ffv1);
    const Rational jpeg2000(row.packed, row.jpeg2000);
    const LosslessForm form{.bits_per_pixel = row.bits,
                            .worst_ratio = std::min(ffv1, jpeg2000),
                            .best_ratio = std::max(ffv1, jpeg2000)};
    const auto bytes = bytes_per_frame(form, 1920, 1080, 24);
    REQUIRE(bytes);
    CHECK(bytes->least == std::min(row.ffv1, row.jpeg2000));
    CHECK(bytes->most == std::max(row.ffv1, row.jpeg2000));
  }
}

TEST_CASE("No coder went below the entropy of the noise, and noise alone grows") {
  int bounded = 0;
  for (const LosslessRow& row : kLosslessRows) {
    if (row.bound_ratio == 0) continue;
    CAPTURE(row.picture);
    CAPTURE(row.bits);
    const auto thousandths = static_cast<std::int64_t>(row.bound_ratio * 1000 + 0.5);
    const LosslessForm form{.bits_per_pixel = row.bits,
                            .worst_ratio = Rational(17, 20),
                            .best_ratio = Rational(thousandths, 1000)};
    const auto bytes = bytes_per_frame(form, 1920, 1080, 24);
    REQUIRE(bytes);
    for (const std::int64_t coded : {row.ffv1, row.jpeg2000}) {
      CHECK(coded >= bytes->least);
      CHECK(coded <= bytes->most);
    }
    if (row.picture == "uniform noise") CHECK(row.ffv1 > row.packed);
    ++bounded;
  }
  CHECK(bounded == 12);
}

TEST_CASE("Lossless coding of raw saves up to about 40 % (common practice, no source)") {
  // 10-bit with noise of sigma 16 codes is the measured case nearest to a camera's raw.
  for (const LosslessRow& row : kLosslessRows) {
    if (row.picture != "ramp+gauss sigma=16" || row.bits != 10) continue;
    const double saved = 1 - static_cast<double>(row.ffv1) / static_cast<double>(row.packed);
    CHECK(saved > 0.3);
    CHECK(saved < 0.45);
  }
  const auto range = bytes_per_frame(
      LosslessForm{.bits_per_pixel = 12, .worst_ratio = 1, .best_ratio = Rational(5, 3)}, 4992,
      3744, 24);
  REQUIRE(range);
  CHECK(range->most == 4992 * 3744 * 3 / 2);
  CHECK(static_cast<double>(range->least) / static_cast<double>(range->most) ==
        doctest::Approx(0.6));
}

TEST_CASE("16:9 resampled to 4096 against a 4:3-like open gate saves about a third") {
  // Common practice, no source. Sensors of invented sizes, 4.3K to 4.5K wide, 12-bit packed raw.
  const PackedForm raw = packed_bayer(12);
  struct OpenGate {
    std::int64_t width, height;
  };
  for (const OpenGate& gate : {OpenGate{4320, 3240}, OpenGate{4416, 3184}, OpenGate{4480, 3168}}) {
    CAPTURE(gate.width);
    const double share = static_cast<double>(exact_bytes(raw, 4096, 2304)) /
                         static_cast<double>(exact_bytes(raw, gate.width, gate.height));
    CHECK(1 - share == doctest::Approx(1.0 / 3).epsilon(0.03));
  }
}

TEST_CASE("A ratio rounds up to whole bytes; a ratio of fractions stays exact") {
  CHECK(exact_bytes(RatioForm{.bits_per_pixel = 12, .ratio = 3}, 4992, 3744) == 9'345'024);
  CHECK(exact_bytes(RatioForm{.bits_per_pixel = 10, .ratio = 3}, 1, 1) == 1);
  CHECK(exact_bytes(RatioForm{.bits_per_pixel = 20, .ratio = Rational(11, 2)}, 1003, 1) == 456);
}

TEST_CASE("A constant bit rate gives each frame its share, whatever the raster") {
  // 250 Mbit/s is the ceiling of a digital cinema picture: 1 302 083.3 bytes at 24, half at 48
  // (DCI system specification).
  const BitRateForm form{.bits_per_s = 250'000'000};
  CHECK(exact_bytes(form, 4096, 2160, 24) == 1'302'084);
  CHECK(exact_bytes(form, 2048, 1080, 48) == 651'042);
  CHECK(exact_bytes(form, 2048, 1080, Rational(24000, 1001)) == 1'303'386);
}

TEST_CASE("A measurement scales with the pixel count and is itself at its own raster") {
  const MeasuredForm form{
      .bytes = 7'000'000'001, .frames = 1000, .width_pixels = 3840, .height_pixels = 2160};
  CHECK(exact_bytes(form, 3840, 2160) == 7'000'001);
  CHECK(exact_bytes(form, 1920, 1080) == 1'750'001);
}

TEST_CASE("What cannot be counted exactly is refused, not wrapped") {
  constexpr std::int64_t kHuge = std::int64_t{1} << 52;
  CHECK_FALSE(bytes_per_frame(PackedForm{.block_bytes = kHuge}, 65535, 65535, 24));
  CHECK_FALSE(bytes_per_frame(RatioForm{.bits_per_pixel = kHuge}, 65535, 65535, 24));
  CHECK_FALSE(bytes_per_frame(MacroblockForm{.numerator = INT64_MAX}, 65535, 65535, 24));
  CHECK_FALSE(bytes_per_frame(BitRateForm{.bits_per_s = INT64_MAX}, 16, 16, Rational(1, 100)));
  CHECK_FALSE(bytes_per_frame(RatioForm{.bits_per_pixel = 12, .ratio = 0}, 16, 16, 24));
  CHECK_FALSE(bytes_per_frame(LosslessForm{.bits_per_pixel = 12, .worst_ratio = 0}, 16, 16, 24));
  CHECK_FALSE(bytes_per_frame(MeasuredForm{}, 16, 16, 24));
  CHECK_FALSE(bytes_per_frame(BitRateForm{.bits_per_s = 8}, 16, 16, Rational(0, 0)));
}

TEST_CASE("No form shrinks when the raster grows, and a range is the right way round") {
  const std::vector<CodecForm> forms = {
      packed_bayer(12),
      kLayouts.at("packed_422_10"),
      RatioForm{.bits_per_pixel = 12, .ratio = Rational(7, 2)},
      LosslessForm{.bits_per_pixel = 16, .worst_ratio = Rational(9, 10), .best_ratio = 3},
      MacroblockForm{.numerator = 18944},
      BitRateForm{.bits_per_s = 400'000'000},
      MeasuredForm{.bytes = 123'456'789, .frames = 77, .width_pixels = 2880, .height_pixels = 2160},
  };
  std::mt19937_64 random(20261125);
  std::uniform_int_distribution<std::int64_t> side(1, 16384);
  for (int round = 0; round < 2000; ++round) {
    const std::int64_t width = side(random);
    const std::int64_t height = side(random);
    CAPTURE(width);
    CAPTURE(height);
    for (const CodecForm& form : forms) {
      CAPTURE(form.index());
      const auto bytes = bytes_per_frame(form, width, height, 25);
      REQUIRE(bytes);
      CHECK(bytes->least <= bytes->most);
      CHECK(bytes_per_frame(form, width + 1, height, 25)->least >= bytes->least);
      CHECK(bytes_per_frame(form, width, height + 1, 25)->most >= bytes->most);
    }
  }
}

}  // namespace
}  // namespace widegate
