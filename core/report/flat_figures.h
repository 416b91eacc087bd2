// A Report as a flat list: every value under its whole key ("cover.frame.margin_mm"). What the
// workings, lessons and tables look figures up in.
#pragma once

#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "core/report/report.h"

namespace widegate {

/// One value. Numbers are spans (least == most unless the codec is a range); everything else is
/// text: names, "true" and "false", exact fractions, "null" for what does not exist.
struct Figure {
  std::string key;
  std::variant<Span, std::string> value;

  [[nodiscard]] const Span* number() const { return std::get_if<Span>(&value); }
  [[nodiscard]] const std::string* text() const { return std::get_if<std::string>(&value); }
};

/// Every value of report_fields.h in its order; items of lists have their index in the key.
[[nodiscard]] std::vector<Figure> figures_of(const Report& report);

/// The figure with this key, or nullptr.
[[nodiscard]] const Figure* find_figure(const std::vector<Figure>& figures, std::string_view key);

}  // namespace widegate
