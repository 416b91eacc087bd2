#include "core/encode/png.h"

#include <algorithm>
#include <string_view>

namespace widegate {
namespace {

constexpr std::uint32_t kEndOfBlock = 256;
constexpr std::uint32_t kLongestMatch = 258;
constexpr std::uint32_t kShortestMatch = 3;
constexpr std::uint32_t kAdlerModulus = 65521;

/// Lengths of matches by their code from 257 on (RFC 1951, 3.2.5).
struct LengthCode {
  std::uint16_t base;
  std::uint8_t extra_bits;
};
constexpr std::array<LengthCode, 29> kLengths = {
    {{3, 0},  {4, 0},  {5, 0},  {6, 0},   {7, 0},   {8, 0},   {9, 0},   {10, 0},  {11, 1}, {13, 1},
     {15, 1}, {17, 1}, {19, 2}, {23, 2},  {27, 2},  {31, 2},  {35, 3},  {43, 3},  {51, 3}, {59, 3},
     {67, 4}, {83, 4}, {99, 4}, {115, 4}, {131, 5}, {163, 5}, {195, 5}, {227, 5}, {258, 0}}};

void put_u32(std::string& out, std::uint32_t value) {
  for (const int shift : {24, 16, 8, 0}) out += static_cast<char>(value >> shift & 0xFFU);
}

std::uint32_t checksum(std::string_view bytes) {
  std::uint32_t crc = 0xFFFFFFFFU;
  for (const char each : bytes) {
    crc ^= static_cast<unsigned char>(each);
    for (int i = 0; i < 8; ++i) crc = (crc >> 1) ^ ((crc & 1U) != 0 ? 0xEDB88320U : 0U);
  }
  return ~crc;
}

void put_chunk(std::string& file, std::string_view name, std::string_view data) {
  put_u32(file, static_cast<std::uint32_t>(data.size()));
  const std::string body = std::string(name).append(data);
  file += body;
  put_u32(file, checksum(body));
}

std::string header(std::uint32_t width, std::uint32_t height) {
  std::string data;
  put_u32(data, width);
  put_u32(data, height);
  // Four bits of a palette entry per pixel; deflate, the standard filters, not interlaced.
  return data.append({4, 3, 0, 0, 0});
}

}  // namespace

PngWriter::PngWriter(std::uint32_t width, std::uint32_t height, const PngPalette& palette)
    : file_("\x89PNG\r\n\x1a\n"), row_((width + 1) / 2), above_((width + 1) / 2) {
  put_chunk(file_, "IHDR", header(width, height));
  std::string colours, alphas;
  bool opaque = true;
  for (const PngColour& each : palette) {
    for (const std::uint8_t part : {each.red, each.green, each.blue}) {
      colours += static_cast<char>(part);
    }
    alphas += static_cast<char>(each.alpha);
    opaque = opaque && each.alpha == 255;
  }
  put_chunk(file_, "PLTE", colours);
  if (!opaque) put_chunk(file_, "tRNS", alphas);
  data_ = "\x78\x01";
  bits(1, 1);  // The only block,
  bits(1, 2);  // in fixed codes.
}

void PngWriter::bits(std::uint32_t value, int count) {
  pending_ |= value << pending_count_;
  pending_count_ += count;
  while (pending_count_ >= 8) {
    data_ += static_cast<char>(pending_ & 0xFFU);
    pending_ >>= 8;
    pending_count_ -= 8;
  }
}

/// Codes, unlike numbers, go most significant bit first.
void PngWriter::code(std::uint32_t value, int count) {
  for (int i = count - 1; i >= 0; --i) bits(value >> i & 1U, 1);
}

/// A literal or length symbol in the fixed code (RFC 1951, 3.2.6).
void PngWriter::symbol(std::uint32_t value) {
  if (value < 144) {
    code(0x30 + value, 8);
  } else if (value < 256) {
    code(0x190 + value - 144, 9);
  } else if (value < 280) {
    code(value - 256, 7);
  } else {
    code(0xC0 + value - 280, 8);
  }
}

/// Repeats the last byte.
void PngWriter::match(std::uint32_t length) {
  std::size_t i = kLengths.size() - 1;
  while (kLengths[i].base > length) --i;
  symbol(257 + static_cast<std::uint32_t>(i));
  bits(length - kLengths[i].base, kLengths[i].extra_bits);
  code(0, 5);  // Distance 1.
}

void PngWriter::end_run() {
  while (run_ >= kShortestMatch) {
    const std::uint32_t length = std::min(run_, kLongestMatch);
    match(length);
    run_ -= length;
  }
  for (; run_ > 0; --run_) symbol(static_cast<std::uint32_t>(last_));
}

void PngWriter::byte(std::uint8_t value) {
  sum_low_ = (sum_low_ + value) % kAdlerModulus;
  sum_high_ = (sum_high_ + sum_low_) % kAdlerModulus;
  if (value == last_) {
    ++run_;
    return;
  }
  end_run();
  symbol(value);
  last_ = value;
}

void PngWriter::add_row(std::span<const std::uint8_t> levels) {
  std::fill(row_.begin(), row_.end(), std::uint8_t{0});
  for (std::size_t x = 0; x < levels.size() && x / 2 < row_.size(); ++x) {
    const int shift = x % 2 == 0 ? 4 : 0;
    row_[x / 2] = static_cast<std::uint8_t>(row_[x / 2] | (levels[x] & 0xF) << shift);
  }
  byte(2);  // Filter "up": what is as in the row above is zero.
  for (std::size_t i = 0; i < row_.size(); ++i) {
    byte(static_cast<std::uint8_t>(row_[i] - above_[i]));
  }
  std::swap(row_, above_);
}

std::string PngWriter::finish() {
  end_run();
  symbol(kEndOfBlock);
  if (pending_count_ > 0) bits(0, 8 - pending_count_);
  put_u32(data_, sum_high_ << 16 | sum_low_);
  put_chunk(file_, "IDAT", data_);
  put_chunk(file_, "IEND", "");
  return std::move(file_);
}

}  // namespace widegate
