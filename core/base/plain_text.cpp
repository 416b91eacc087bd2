#include "core/base/plain_text.h"

#include <algorithm>

namespace widegate {
namespace {

constexpr std::size_t kShownBytes = 80;
constexpr std::size_t kMaxIdBytes = 48;

bool is_continuation(char c) { return (static_cast<unsigned char>(c) & 0xC0) == 0x80; }

/// Length of the UTF-8 sequence at the front of `text`, 0 when it is malformed.
std::size_t sequence_length(std::string_view text) {
  const auto lead = static_cast<unsigned char>(text.front());
  const std::size_t length = lead < 0x80   ? 1
                             : lead < 0xC2 ? 0
                             : lead < 0xE0 ? 2
                             : lead < 0xF0 ? 3
                             : lead < 0xF5 ? 4
                                           : 0;
  if (length == 0 || text.size() < length) return 0;
  for (std::size_t i = 1; i < length; ++i) {
    if (!is_continuation(text[i])) return 0;
  }
  const auto second = length > 1 ? static_cast<unsigned char>(text[1]) : 0U;
  const bool overlong = (lead == 0xE0 && second < 0xA0) || (lead == 0xF0 && second < 0x90);
  const bool surrogate = lead == 0xED && second >= 0xA0;
  const bool above_unicode = lead == 0xF4 && second >= 0x90;
  return overlong || surrogate || above_unicode ? 0 : length;
}

/// False for a control character (C0, DEL, C1) at the front of well-formed text.
bool is_printable(std::string_view text) {
  const auto lead = static_cast<unsigned char>(text.front());
  const bool c1_control = lead == 0xC2 && static_cast<unsigned char>(text[1]) < 0xA0;
  return lead >= 0x20 && lead != 0x7F && !c1_control;
}

}  // namespace

bool is_plain_text(std::string_view text) {
  while (!text.empty()) {
    const std::size_t length = sequence_length(text);
    if (length == 0 || !is_printable(text)) return false;
    text.remove_prefix(length);
  }
  return true;
}

bool is_id(std::string_view text) {
  const auto letter_or_digit = [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
  };
  if (text.empty() || text.size() > kMaxIdBytes || !letter_or_digit(text.front())) return false;
  return std::all_of(text.begin(), text.end(),
                     [&](char c) { return letter_or_digit(c) || c == '-' || c == '.'; });
}

std::string in_quotes(std::string_view text) {
  constexpr std::size_t kRoom = kShownBytes - 5;  // two quotes and three dots
  std::string result = "\"";
  while (!text.empty()) {
    const std::size_t length = sequence_length(text);
    if (result.size() + std::max<std::size_t>(length, 1) > kRoom + 1) return result + "...\"";
    const bool printable = length > 0 && is_printable(text);
    result += printable ? text.substr(0, length) : "?";
    text.remove_prefix(length > 0 ? length : 1);
  }
  return result + "\"";
}

}  // namespace widegate
