#include "core/handover/sheet/sheet_text.h"

#include <array>

#include "core/base/number_text.h"

namespace widegate {
namespace {

constexpr std::string_view kDash = " – ";
constexpr double kThousand = 1000;

std::string joined(const std::string& least, const std::string& most, std::string_view unit) {
  std::string text = least == most ? least : least + std::string(kDash) + most;
  if (!unit.empty()) text += " " + std::string(unit);
  return text;
}

}  // namespace

std::string with_unit(double value, int decimals, std::string_view unit) {
  return with_unit(Span{value, value}, decimals, unit);
}

std::string with_unit(Span value, int decimals, std::string_view unit) {
  return joined(print_fixed(value.least, decimals), print_fixed(value.most, decimals), unit);
}

std::string count_text(ByteRange value) {
  return joined(print_grouped(value.least), print_grouped(value.most), "");
}

std::string bytes_text(Span value) {
  constexpr auto kPrefixes = std::to_array<std::string_view>({"B", "kB", "MB", "GB", "TB", "PB"});
  std::size_t prefix = 0;
  double unit = 1;
  for (; prefix + 1 < kPrefixes.size() && value.most >= unit * kThousand; ++prefix) {
    unit *= kThousand;
  }
  return with_unit(Span{value.least / unit, value.most / unit}, prefix == 0 ? 0 : 1,
                   kPrefixes[prefix]);
}

std::string aspect_text(double aspect) {
  std::string text = print_fixed(aspect, 3);
  text.erase(text.find_last_not_of('0') + 1);
  if (text.ends_with('.')) text.pop_back();
  return text + "∶1";
}

std::string rate_text(Rational rate) {
  if (rate.whole()) return print_rational(rate) + " fps";
  return print_fixed(rate.to_double(), 3) + " fps (" + print_rational(rate) + ")";
}

}  // namespace widegate
