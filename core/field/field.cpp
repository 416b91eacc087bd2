#include "core/field/field.h"

#include <algorithm>
#include <cmath>

#include "core/base/number_text.h"
#include "core/base/plain_text.h"

namespace widegate {
namespace {

constexpr Rational kMaxRate = 10000;  // only to keep rate_behind_rounding() from overflowing

bool inside(const FieldSpec& spec, Rational value) {
  const bool above = spec.low_excluded ? value > spec.low : value >= spec.low;
  const bool below = spec.high_excluded ? value < spec.high : value <= spec.high;
  return above && below;
}

bool inside(const FieldSpec& spec, double value) {
  const double low = spec.low.to_double();
  const double high = spec.high.to_double();
  const bool above = spec.low_excluded ? value > low : value >= low;
  const bool below = spec.high_excluded ? value < high : value <= high;
  return above && below;  // false for NaN
}

bool terms_fit(const FieldSpec& spec, Rational value) {
  return (value.num() < 0 ? -value.num() : value.num()) <= spec.max_num &&
         value.den() <= spec.max_den;
}

template <class T>
bool holds(const FieldValue& value, bool (*good)(const FieldSpec&, const T&),
           const FieldSpec& spec) {
  const T* typed = std::get_if<T>(&value);
  return typed != nullptr && good(spec, *typed);
}

std::string limit_text(const FieldSpec& spec, Rational limit) {
  const bool decimal = spec.kind == FieldKind::decimal;
  return decimal ? print_number(limit.to_double()) : print_rational(limit);
}

std::string range_words(const FieldSpec& spec) {
  return (spec.low_excluded ? " above " : " from ") + limit_text(spec, spec.low) +
         (spec.high_excluded ? " to below " : " to ") + limit_text(spec, spec.high) +
         (spec.unit.empty() ? "" : " " + std::string(spec.unit));
}

std::string text_words(const FieldSpec& spec) {
  return "text on one line, " + print_rational(spec.low) + " to " + print_rational(spec.high) +
         " bytes";
}

std::string choice_words(const FieldSpec& spec) {
  std::string words = "one of";
  for (const ChoiceName& choice : spec.choices) {
    words += (words.size() == 6 ? " " : ", ") + std::string(choice.token);
  }
  return words;
}

std::string kind_words(const FieldSpec& spec) {
  switch (spec.kind) {
    case FieldKind::decimal:
      return "a number" + range_words(spec);
    case FieldKind::fraction:
      return "a number or a fraction \"a/b\"" + range_words(spec) + ", no finer than 1/" +
             std::to_string(spec.max_den);
    case FieldKind::rate:
      return "a whole number or an exact fraction such as \"24000/1001\"" + range_words(spec) +
             ", no finer than 1/" + std::to_string(spec.max_den);
    case FieldKind::whole:
      return "a whole number" + range_words(spec);
    case FieldKind::text:
      return text_words(spec);
    case FieldKind::id:
      return "an id: 1 to 48 of a-z, 0-9, '-' and '.'";
    case FieldKind::choice:
      return choice_words(spec);
    case FieldKind::flag:
      return "true or false";
  }
  return {};
}

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && (text.front() == ' ' || text.front() == '\t')) text.remove_prefix(1);
  while (!text.empty() && (text.back() == ' ' || text.back() == '\t')) text.remove_suffix(1);
  return text;
}

/// "35 mm" -> "35" for a field in mm; any other text stays as it is.
std::string_view without_unit(const FieldSpec& spec, std::string_view text) {
  if (!spec.unit.empty() && text.ends_with(spec.unit)) text.remove_suffix(spec.unit.size());
  return trimmed(text);
}

/// A decimal comma becomes a point; text with both, or two of one, is left to be refused.
std::string with_point(std::string_view text) {
  std::string result(text);
  if (std::count(result.begin(), result.end(), ',') == 1 && result.find('.') == std::string::npos) {
    std::replace(result.begin(), result.end(), ',', '.');
  }
  return result;
}

std::optional<Rational> typed_fraction(std::string_view text) {
  const auto bar = text.find_first_of(":/");
  if (bar == std::string_view::npos) return parse_rational(with_point(text));
  const std::string_view bottom_text = trimmed(text.substr(bar + 1));
  if (bottom_text.find_first_of(":/-") != std::string_view::npos) return std::nullopt;
  const auto top = parse_rational(with_point(trimmed(text.substr(0, bar))));
  const auto bottom = parse_rational(with_point(bottom_text));
  if (!top || !bottom) return std::nullopt;
  const Rational result = *top / *bottom;
  return result.ok() ? std::optional(result) : std::nullopt;
}

template <class T>
std::optional<FieldValue> wrapped(const std::optional<T>& value) {
  return value ? std::optional(FieldValue(*value)) : std::nullopt;
}

std::optional<std::int64_t> typed_choice(const FieldSpec& spec, std::string_view text) {
  for (std::size_t i = 0; i < spec.choices.size(); ++i) {
    if (spec.choices[i].token == text) return static_cast<std::int64_t>(i);
  }
  return std::nullopt;
}

std::optional<bool> typed_flag(std::string_view text) {
  if (text == "true" || text == "yes") return true;
  if (text == "false" || text == "no") return false;
  return std::nullopt;
}

std::optional<std::int64_t> typed_whole(std::string_view text) {
  const auto value = parse_rational(text);
  return value && value->whole() ? std::optional(value->num()) : std::nullopt;
}

std::optional<Rational> typed_rate(std::string_view text) {
  const auto value = typed_fraction(text);
  if (!value) return std::nullopt;
  const bool decimal = text.find_first_of(":/") == std::string_view::npos;
  const auto exact = decimal ? rate_behind_rounding(*value) : std::nullopt;
  return exact ? exact : value;
}

}  // namespace

std::string accepted_values(const FieldSpec& spec) {
  return kind_words(spec) + (spec.optional ? ", or nothing" : "");
}

bool value_accepted(const FieldSpec& spec, const FieldValue& value) {
  if (std::holds_alternative<std::monostate>(value)) return spec.optional;
  switch (spec.kind) {
    case FieldKind::decimal:
      return holds<double>(
          value, [](const FieldSpec& s, const double& v) { return inside(s, v); }, spec);
    case FieldKind::fraction:
    case FieldKind::rate:
      return holds<Rational>(
          value,
          [](const FieldSpec& s, const Rational& v) {
            return v.ok() && inside(s, v) && terms_fit(s, v);
          },
          spec);
    case FieldKind::whole:
      return holds<std::int64_t>(
          value, [](const FieldSpec& s, const std::int64_t& v) { return inside(s, Rational(v)); },
          spec);
    case FieldKind::text:
      return holds<std::string_view>(
          value,
          [](const FieldSpec& s, const std::string_view& v) {
            return inside(s, Rational(static_cast<std::int64_t>(v.size()))) && is_plain_text(v);
          },
          spec);
    case FieldKind::id:
      return holds<std::string_view>(
          value,
          [](const FieldSpec& s, const std::string_view& v) {
            return is_id(v) || (s.optional && v.empty());
          },
          spec);
    case FieldKind::choice:
      return holds<std::int64_t>(
          value,
          [](const FieldSpec& s, const std::int64_t& v) {
            return v >= 0 && v < static_cast<std::int64_t>(s.choices.size());
          },
          spec);
    case FieldKind::flag:
      return std::holds_alternative<bool>(value);
  }
  return false;
}

std::string value_text(const FieldSpec& spec, const FieldValue& value) {
  struct Printer {
    const FieldSpec& spec;
    std::string operator()(std::monostate) const { return {}; }
    std::string operator()(double number) const { return print_number(number); }
    std::string operator()(Rational number) const { return print_rational(number); }
    std::string operator()(std::int64_t number) const {
      if (spec.kind != FieldKind::choice) return std::to_string(number);
      const bool known = number >= 0 && number < static_cast<std::int64_t>(spec.choices.size());
      return known ? std::string(spec.choices[static_cast<std::size_t>(number)].token)
                   : std::to_string(number);
    }
    std::string operator()(bool flag) const { return flag ? "true" : "false"; }
    std::string operator()(std::string_view text) const { return std::string(text); }
  };
  return std::visit(Printer{spec}, value);
}

std::string shown_value(const FieldSpec& spec, const FieldValue& value) {
  if (std::holds_alternative<std::monostate>(value)) return "nothing";
  const auto* text = std::get_if<std::string_view>(&value);
  return text != nullptr ? in_quotes(*text) : value_text(spec, value);
}

std::optional<FieldValue> value_from_text(const FieldSpec& spec, std::string_view text) {
  const std::string_view typed = without_unit(spec, trimmed(text));
  if (typed.empty() && spec.optional && spec.kind != FieldKind::id) return FieldValue{};
  switch (spec.kind) {
    case FieldKind::decimal:
      return wrapped(parse_decimal(with_point(typed)));
    case FieldKind::fraction:
      return wrapped(typed_fraction(typed));
    case FieldKind::rate:
      return wrapped(typed_rate(typed));
    case FieldKind::whole:
      return wrapped(typed_whole(typed));
    case FieldKind::text:
    case FieldKind::id:
      return FieldValue(trimmed(text));
    case FieldKind::choice:
      return wrapped(typed_choice(spec, typed));
    case FieldKind::flag:
      return wrapped(typed_flag(typed));
  }
  return std::nullopt;
}

std::optional<Rational> rate_behind_rounding(Rational rounded) {
  if (!rounded.ok() || rounded.whole() || rounded < Rational(0) || rounded > kMaxRate) {
    return std::nullopt;
  }
  const std::int64_t nominal = rounded.ceil();
  if (nominal % 24 != 0 && nominal % 30 != 0) return std::nullopt;
  const Rational exact = Rational(nominal * 1000, 1001);
  for (const std::int64_t places : {std::int64_t{100}, std::int64_t{1000}}) {
    const Rational scaled = exact * Rational(places) + Rational(1, 2);
    if (Rational(scaled.floor(), places) == rounded) return exact;
  }
  return std::nullopt;
}

}  // namespace widegate
