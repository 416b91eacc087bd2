#include "core/catalogue/codec.h"

#include <algorithm>

#include "core/base/wide.h"

namespace widegate {
namespace {

struct Raster {
  std::int64_t width = 0;
  std::int64_t height = 0;
  Rational rate;
};

using MaybeBytes = std::optional<ByteRange>;

MaybeBytes exactly(Wide bytes) {
  const std::optional<std::int64_t> count = bytes.count();
  if (!count) return std::nullopt;
  return ByteRange{*count, *count};
}

Wide multiple_at_or_above(Wide value, std::int64_t unit) { return ceil_div(value, unit) * unit; }

// Smallest whole number of bytes that holds pixels * bits; invalid bits give an invalid result.
Wide bytes_for_bits(const Raster& raster, Rational bits_per_pixel) {
  if (!bits_per_pixel.ok()) return Wide(-1);
  const Wide pixels = Wide(raster.width) * raster.height;
  return ceil_div(pixels * bits_per_pixel.num(), Wide(bits_per_pixel.den()) * 8);
}

MaybeBytes frame_bytes(const PackedForm& form, const Raster& raster) {
  const Wide blocks = ceil_div(raster.width, form.block_pixels);
  const Wide row = multiple_at_or_above(blocks * form.block_bytes, form.row_multiple_bytes);
  return exactly((row + form.row_extra_bytes) * raster.height + form.frame_extra_bytes);
}

MaybeBytes frame_bytes(const RatioForm& form, const Raster& raster) {
  return exactly(bytes_for_bits(raster, form.bits_per_pixel / form.ratio));
}

MaybeBytes frame_bytes(const LosslessForm& form, const Raster& raster) {
  const auto least = bytes_for_bits(raster, form.bits_per_pixel / form.best_ratio).count();
  const auto most = bytes_for_bits(raster, form.bits_per_pixel / form.worst_ratio).count();
  if (!least || !most) return std::nullopt;
  return ByteRange{*least, *most};
}

MaybeBytes frame_bytes(const MacroblockForm& form, const Raster& raster) {
  const Wide blocks = ceil_div(raster.width, 16) * ceil_div(raster.height, 16);
  const Wide scaled = floor_div(blocks * form.numerator, form.denominator);
  const Wide steps = floor_div(scaled + form.step_bytes / 2, form.step_bytes);
  const std::optional<std::int64_t> bytes = (steps * form.step_bytes).count();
  if (!bytes) return std::nullopt;
  return exactly(std::max(*bytes, form.minimum_bytes));
}

// A row for this very rate goes before a row for every rate.
MaybeBytes frame_bytes(const TableForm& form, const Raster& raster) {
  MaybeBytes any_rate;
  for (const TableForm::Row& row : form.rows) {
    if (row.width_pixels != raster.width || row.height_pixels != raster.height) continue;
    if (std::find(row.rates.begin(), row.rates.end(), raster.rate) != row.rates.end()) {
      return exactly(row.bytes);
    }
    if (row.rates.empty() && !any_rate) any_rate = exactly(row.bytes);
  }
  return any_rate;
}

MaybeBytes frame_bytes(const BitRateForm& form, const Raster& raster) {
  if (!raster.rate.ok()) return std::nullopt;
  return exactly(ceil_div(Wide(form.bits_per_s) * raster.rate.den(), Wide(raster.rate.num()) * 8));
}

MaybeBytes frame_bytes(const MeasuredForm& form, const Raster& raster) {
  const Wide measured = Wide(form.width_pixels) * form.height_pixels * form.frames;
  return exactly(ceil_div(Wide(form.bytes) * raster.width * raster.height, measured));
}

}  // namespace

std::optional<bool> is_sensor_raw(const CodecFacts& facts) {
  return facts.chroma ? std::optional(*facts.chroma == Chroma::raw) : std::nullopt;
}

Rational samples_per_pixel(Chroma chroma) {
  switch (chroma) {
    case Chroma::raw:
      return 1;
    case Chroma::c420:
      return Rational(3, 2);
    case Chroma::c422:
      return 2;
    case Chroma::c444:
      return 3;
  }
  return 1;
}

std::optional<ByteRange> bytes_per_frame(const CodecForm& form, std::int64_t width_pixels,
                                         std::int64_t height_pixels, Rational rate) {
  const Raster raster{width_pixels, height_pixels, rate};
  return std::visit([&raster](const auto& kind) { return frame_bytes(kind, raster); }, form);
}

}  // namespace widegate
