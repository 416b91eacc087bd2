#include "core/handover/link/link_bytes.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

#include "core/base/number_text.h"

namespace widegate {
namespace {

constexpr std::size_t kChecksumBytes = 3;

std::uint32_t crc24(const std::uint8_t* bytes, std::size_t length) {
  std::uint32_t crc = 0xB704CE;
  for (std::size_t i = 0; i < length; ++i) {
    crc ^= static_cast<std::uint32_t>(bytes[i]) << 16;
    for (int bit = 0; bit < 8; ++bit) {
      crc <<= 1;
      if ((crc & 0x1000000) != 0) crc ^= 0x1864CFB;
    }
  }
  return crc & 0xFFFFFF;
}

/// A finite double as digits x 10^exponent, without trailing zeros.
struct Decimal {
  std::int64_t digits = 0;
  std::int64_t exponent = 0;
};

Decimal shortest_decimal(double value) {
  char text[40] = {};
  for (int digits = 0; digits < 17; ++digits) {
    std::snprintf(text, sizeof text, "%.*e", digits, value);
    if (parse_decimal(text) == value) break;
  }
  const std::string_view all(text);
  const std::size_t e = all.find('e');
  Decimal decimal;
  for (const char c : all.substr(0, e)) {
    if (c >= '0' && c <= '9') decimal.digits = decimal.digits * 10 + (c - '0');
  }
  const std::size_t point = all.find('.');
  const std::size_t decimals = point == std::string_view::npos ? 0 : e - point - 1;
  decimal.exponent = std::atoi(text + e + 1) - static_cast<std::int64_t>(decimals);
  while (decimal.digits != 0 && decimal.digits % 10 == 0) {
    decimal.digits /= 10;
    ++decimal.exponent;
  }
  if (decimal.digits == 0) decimal.exponent = 0;
  if (value < 0) decimal.digits = -decimal.digits;
  return decimal;
}

}  // namespace

void LinkWriter::count(std::size_t value) {
  for (; value >= 0x80; value >>= 7) bytes_.push_back(static_cast<std::uint8_t>(value | 0x80));
  bytes_.push_back(static_cast<std::uint8_t>(value));
}

void LinkWriter::whole(std::int64_t value) {
  auto folded = (static_cast<std::uint64_t>(value) << 1) ^ static_cast<std::uint64_t>(value >> 63);
  for (; folded >= 0x80; folded >>= 7) bytes_.push_back(static_cast<std::uint8_t>(folded | 0x80));
  bytes_.push_back(static_cast<std::uint8_t>(folded));
}

void LinkWriter::decimal(double value) {
  const Decimal decimal = shortest_decimal(value);
  whole(decimal.digits);
  whole(decimal.exponent);
}

void LinkWriter::fraction(Rational value) {
  whole(value.num());
  whole(value.den());
}

void LinkWriter::text(std::string_view value) {
  const auto known = std::find(texts_.begin(), texts_.end(), value);
  count(static_cast<std::size_t>(known - texts_.begin()));
  if (known != texts_.end()) return;
  texts_.emplace_back(value);
  count(value.size());
  bytes_.insert(bytes_.end(), value.begin(), value.end());
}

void LinkWriter::checksum() {
  const std::uint32_t crc = crc24(bytes_.data(), bytes_.size());
  for (const int shift : {16, 8, 0}) bytes_.push_back(static_cast<std::uint8_t>(crc >> shift));
}

std::int64_t LinkReader::whole() {
  std::uint64_t folded = 0;
  for (int shift = 0; ok_; shift += 7) {
    if (at_ == bytes_.size() || shift > 63) {
      ok_ = false;
      break;
    }
    const std::uint8_t byte = bytes_[at_++];
    folded |= static_cast<std::uint64_t>(byte & 0x7F) << shift;
    if (byte < 0x80)
      return static_cast<std::int64_t>(folded >> 1) ^ -static_cast<std::int64_t>(folded & 1);
  }
  return 0;
}

std::size_t LinkReader::count() {
  std::size_t value = 0;
  for (int shift = 0; ok_; shift += 7) {
    if (at_ == bytes_.size() || shift > 28) {
      ok_ = false;
      break;
    }
    const std::uint8_t byte = bytes_[at_++];
    value |= static_cast<std::size_t>(byte & 0x7F) << shift;
    if (byte < 0x80) return value;
  }
  return 0;
}

double LinkReader::decimal() {
  const std::int64_t digits = whole();
  const std::int64_t exponent = whole();
  const auto value = parse_decimal(std::to_string(digits) + "e" + std::to_string(exponent));
  if (!value) ok_ = false;
  return ok_ ? *value : 0;
}

Rational LinkReader::fraction() {
  const std::int64_t num = whole();
  const std::int64_t den = whole();
  if (den <= 0) ok_ = false;
  return ok_ ? Rational(num, den) : Rational(0);
}

std::string LinkReader::text() {
  const std::size_t index = count();
  if (!ok_ || index > texts_.size()) {
    ok_ = false;
    return {};
  }
  if (index < texts_.size()) return texts_[index];
  const std::size_t length = count();
  if (!ok_ || length > bytes_.size() - at_) {
    ok_ = false;
    return {};
  }
  const auto* start = reinterpret_cast<const char*>(bytes_.data()) + at_;
  at_ += length;
  return texts_.emplace_back(start, length);
}

bool LinkReader::checksum() {
  if (bytes_.size() < kChecksumBytes) return false;
  const std::size_t length = bytes_.size() - kChecksumBytes;
  std::uint32_t stored = 0;
  for (std::size_t i = length; i < bytes_.size(); ++i) stored = (stored << 8) | bytes_[i];
  if (stored != crc24(bytes_.data(), length)) return false;
  bytes_.resize(length);
  return true;
}

}  // namespace widegate
