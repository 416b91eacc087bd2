// FNV-1a, 64 bits (Fowler, Noll, Vo; public domain): enough to tell documents apart, not a defence
// against forgery.
#include "core/handover/fdl/identity.h"

#include <cstdint>

namespace widegate::fdl {
namespace {

constexpr std::uint64_t kOffsetBasis = 0xcbf29ce484222325U;
constexpr std::uint64_t kPrime = 0x100000001b3U;
constexpr std::size_t kStemCharacters = 23;

std::uint64_t hash(std::uint64_t state, std::string_view content) {
  for (const char c : content) {
    state ^= static_cast<unsigned char>(c);
    state *= kPrime;
  }
  return state;
}

std::string hexadecimal(std::uint64_t value, int digits) {
  constexpr std::string_view kDigits = "0123456789abcdef";
  std::string text;
  for (int shift = 4 * (digits - 1); shift >= 0; shift -= 4)
    text += kDigits[(value >> shift) & 15U];
  return text;
}

}  // namespace

std::string uuid_from(std::string_view content) {
  std::uint64_t high = hash(kOffsetBasis, content);
  std::uint64_t low = hash(high, content);
  high = (high & ~std::uint64_t{0xF000}) | 0x8000U;
  low = (low & ~(std::uint64_t{3} << 62U)) | std::uint64_t{2} << 62U;
  const std::string digits = hexadecimal(high, 16) + hexadecimal(low, 16);
  return digits.substr(0, 8) + '-' + digits.substr(8, 4) + '-' + digits.substr(12, 4) + '-' +
         digits.substr(16, 4) + '-' + digits.substr(20);
}

std::string id_from(std::string_view stem, std::string_view content) {
  std::string id(stem.substr(0, kStemCharacters));
  id += '_';
  id += hexadecimal(hash(kOffsetBasis, content), 8);
  return id;
}

}  // namespace widegate::fdl
