#include "core/encode/base64url.h"

namespace widegate {
namespace {

constexpr std::string_view kAlphabet =
    "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";

}  // namespace

std::string to_base64url(const Bytes& bytes) {
  std::string text;
  text.reserve((bytes.size() * 4 + 2) / 3);
  std::uint32_t bits = 0;
  int count = 0;
  for (const std::uint8_t byte : bytes) {
    bits = (bits << 8) | byte;
    for (count += 8; count >= 6; count -= 6) text += kAlphabet[(bits >> (count - 6)) & 63];
  }
  if (count > 0) text += kAlphabet[(bits << (6 - count)) & 63];
  return text;
}

std::optional<Bytes> from_base64url(std::string_view text) {
  if (text.size() % 4 == 1) return std::nullopt;
  Bytes bytes;
  bytes.reserve(text.size() * 3 / 4);
  std::uint32_t bits = 0;
  int count = 0;
  for (const char c : text) {
    const std::size_t value = kAlphabet.find(c);
    if (value == std::string_view::npos) return std::nullopt;
    bits = (bits << 6) | static_cast<std::uint32_t>(value);
    count += 6;
    if (count >= 8) {
      count -= 8;
      bytes.push_back(static_cast<std::uint8_t>(bits >> count));
    }
  }
  if ((bits & ((1U << count) - 1)) != 0) return std::nullopt;
  return bytes;
}

}  // namespace widegate
