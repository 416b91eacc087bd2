#include "core/equipment/typed_amount.h"

#include <algorithm>
#include <array>
#include <string>

#include "core/base/number_text.h"

namespace widegate {
namespace {

enum class Kind { bytes, rate, time };

struct UnitRow {
  std::string_view name;
  Kind kind;
  Rational scale;  ///< To bytes, bytes a second, seconds.
};

constexpr std::int64_t kKibi = 1024;
constexpr std::int64_t kMebi = kKibi * kKibi;
constexpr std::int64_t kGibi = kMebi * kKibi;
constexpr std::int64_t kTebi = kGibi * kKibi;

constexpr auto kUnits = std::to_array<UnitRow>({
    {"B", Kind::bytes, 1},
    {"bytes", Kind::bytes, 1},
    {"kB", Kind::bytes, 1'000},
    {"KB", Kind::bytes, 1'000},
    {"MB", Kind::bytes, 1'000'000},
    {"GB", Kind::bytes, 1'000'000'000},
    {"TB", Kind::bytes, 1'000'000'000'000},
    {"KiB", Kind::bytes, kKibi},
    {"MiB", Kind::bytes, kMebi},
    {"GiB", Kind::bytes, kGibi},
    {"TiB", Kind::bytes, kTebi},
    {"kB/s", Kind::rate, 1'000},
    {"KB/s", Kind::rate, 1'000},
    {"MB/s", Kind::rate, 1'000'000},
    {"GB/s", Kind::rate, 1'000'000'000},
    {"MiB/s", Kind::rate, kMebi},
    {"GiB/s", Kind::rate, kGibi},
    {"kb/s", Kind::rate, 125},
    {"kbit/s", Kind::rate, 125},
    {"Mb/s", Kind::rate, 125'000},
    {"Mbit/s", Kind::rate, 125'000},
    {"Mbps", Kind::rate, 125'000},
    {"Gb/s", Kind::rate, 125'000'000},
    {"Gbit/s", Kind::rate, 125'000'000},
    {"Gbps", Kind::rate, 125'000'000},
    {"s", Kind::time, 1},
    {"sec", Kind::time, 1},
    {"min", Kind::time, 60},
    {"h", Kind::time, 3600},
});

constexpr auto kNames =
    std::to_array<std::string_view>({"bytes", "GB", "MB/s", "Mb/s", "min"});  // AmountUnit's order

const UnitRow* find_unit(std::string_view name) {
  const auto* const found = std::find_if(kUnits.begin(), kUnits.end(),
                                         [name](const UnitRow& row) { return row.name == name; });
  return found == kUnits.end() ? nullptr : found;
}

const UnitRow& row_of(AmountUnit unit) {
  return *find_unit(kNames[static_cast<std::size_t>(unit)]);
}

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
  return text;
}

bool is_digit(char c) { return c >= '0' && c <= '9'; }

/// Length of what can belong to a number.
std::size_t number_length(std::string_view text) {
  std::size_t length = 0;
  while (length < text.size() && (is_digit(text[length]) || text[length] == '.' ||
                                  text[length] == ',' || text[length] == ':')) {
    ++length;
  }
  return length;
}

std::optional<Rational> decimal(std::string_view text) {
  std::string number(text);
  if (const auto comma = number.find(','); comma != std::string::npos) number[comma] = '.';
  return parse_rational(number);
}

/// "1:30" is a minute and a half.
std::optional<Rational> minutes_and_seconds(std::string_view text) {
  const auto colon = text.find(':');
  const std::string_view tail = text.substr(colon + 1);
  if (tail.size() != 2 || !is_digit(tail[0]) || !is_digit(tail[1]) || tail[0] > '5') {
    return std::nullopt;
  }
  const auto minutes = parse_rational(text.substr(0, colon));
  const auto seconds = parse_rational(tail);
  if (!minutes || !seconds || !minutes->whole()) return std::nullopt;
  return *minutes * Rational(60) + *seconds;
}

std::optional<Rational> when_ok(Rational value) {
  return value.ok() && value >= Rational(0) ? std::optional(value) : std::nullopt;
}

}  // namespace

std::optional<Rational> parse_amount(std::string_view text, AmountUnit unit) {
  const std::string_view typed = trimmed(text);
  const std::size_t length = number_length(typed);
  const std::string_view number = typed.substr(0, length);
  const std::string_view name = trimmed(typed.substr(length));
  const UnitRow& usual = row_of(unit);
  const UnitRow* chosen = name.empty() ? &usual : find_unit(name);
  if (number.empty() || chosen == nullptr || chosen->kind != usual.kind) return std::nullopt;
  if (number.find(':') != std::string_view::npos) {
    if (usual.kind != Kind::time || !name.empty()) return std::nullopt;
    const auto seconds = minutes_and_seconds(number);
    return seconds ? when_ok(*seconds) : std::nullopt;
  }
  const auto value = decimal(number);
  return value ? when_ok(*value * chosen->scale) : std::nullopt;
}

Rational amount_scale(AmountUnit unit) { return row_of(unit).scale; }

std::optional<std::int64_t> parse_grouped(std::string_view text) {
  const std::string_view typed = trimmed(text);
  std::string digits;
  std::size_t group = 0;  // digits since the last mark
  char mark = 0;
  for (const char c : typed) {
    if (is_digit(c)) {
      digits += c;
      ++group;
      continue;
    }
    const bool known = c == ' ' || c == ',' || c == '.' || c == '\'';
    const bool first = mark == 0 && group >= 1 && group <= 3;
    const bool later = mark == c && group == 3;
    if (!known || (!first && !later)) return std::nullopt;
    mark = c;
    group = 0;
  }
  if (mark != 0 && group != 3) return std::nullopt;
  const auto value = parse_rational(digits);
  return value ? std::optional(value->num()) : std::nullopt;
}

}  // namespace widegate
