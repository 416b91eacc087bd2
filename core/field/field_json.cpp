#include "core/field/field_json.h"

#include <cmath>

#include "core/base/number_text.h"

namespace widegate {
namespace {

constexpr double kExactWholes = 9007199254740992.0;  // 2^53

std::optional<std::int64_t> whole_from_json(const Json& json) {
  if (json.is_number_unsigned()) {
    const auto value = json.get<std::uint64_t>();
    if (value > static_cast<std::uint64_t>(INT64_MAX)) return std::nullopt;
    return static_cast<std::int64_t>(value);
  }
  if (json.is_number_integer()) return json.get<std::int64_t>();
  if (!json.is_number_float()) return std::nullopt;
  const auto value = json.get<double>();
  if (std::abs(value) > kExactWholes || std::trunc(value) != value) return std::nullopt;
  return static_cast<std::int64_t>(value);
}

std::optional<Rational> fraction_from_json(const Json& json) {
  if (json.is_string()) return parse_rational(json.get_ref<const std::string&>());
  if (const auto whole = whole_from_json(json)) return Rational(*whole);
  return json.is_number_float() ? rational_from_decimal(json.get<double>()) : std::nullopt;
}

/// A value written with a point, not as "a/b": it may be a rounding.
bool written_as_decimal(const Json& json) {
  return json.is_number_float() ||
         (json.is_string() && json.get_ref<const std::string&>().find('.') != std::string::npos);
}

template <class T>
std::optional<FieldValue> wrapped(const std::optional<T>& value) {
  return value ? std::optional(FieldValue(*value)) : std::nullopt;
}

/// Exactly one of the tokens; typed text may be more relaxed.
std::optional<FieldValue> choice_from_json(const FieldSpec& spec, const std::string& text) {
  for (std::size_t i = 0; i < spec.choices.size(); ++i) {
    if (spec.choices[i].token == text) return FieldValue(static_cast<std::int64_t>(i));
  }
  return std::nullopt;
}

std::optional<FieldValue> typed_value(const FieldSpec& spec, const Json& json) {
  if (json.is_null()) return FieldValue{};
  switch (spec.kind) {
    case FieldKind::decimal:
      return json.is_number() ? std::optional(FieldValue(json.get<double>())) : std::nullopt;
    case FieldKind::fraction:
    case FieldKind::rate:
      return wrapped(fraction_from_json(json));
    case FieldKind::whole:
      return wrapped(whole_from_json(json));
    case FieldKind::text:
    case FieldKind::id:
      if (!json.is_string()) return std::nullopt;
      return FieldValue(std::string_view(json.get_ref<const std::string&>()));
    case FieldKind::choice:
      return json.is_string() ? choice_from_json(spec, json.get_ref<const std::string&>())
                              : std::nullopt;
    case FieldKind::flag:
      return json.is_boolean() ? std::optional(FieldValue(json.get<bool>())) : std::nullopt;
  }
  return std::nullopt;
}

}  // namespace

std::optional<FieldValue> value_from_json(const FieldSpec& spec, const Json& json,
                                          const JsonPath& path, Problems& problems) {
  const auto value = typed_value(spec, json);
  if (!value || !value_accepted(spec, *value)) {
    add_problem(problems, path, shown_json(json), accepted_values(spec));
    return std::nullopt;
  }
  const auto* rate = std::get_if<Rational>(&*value);
  if (spec.kind == FieldKind::rate && rate != nullptr && written_as_decimal(json)) {
    if (const auto exact = rate_behind_rounding(*rate)) {
      add_problem(problems, path, shown_json(json),
                  "the exact fraction \"" + print_rational(*exact) + "\"");
      return std::nullopt;
    }
  }
  return value;
}

Json value_to_json(const FieldSpec& spec, const FieldValue& value) {
  if (const auto* number = std::get_if<double>(&value)) {
    const bool whole = std::abs(*number) < kExactWholes && std::trunc(*number) == *number;
    return whole ? Json(static_cast<std::int64_t>(*number)) : Json(*number);
  }
  if (const auto* number = std::get_if<Rational>(&value)) {
    return number->whole() ? Json(number->num()) : Json(print_rational(*number));
  }
  if (const auto* number = std::get_if<std::int64_t>(&value)) {
    return spec.kind == FieldKind::choice ? Json(value_text(spec, value)) : Json(*number);
  }
  if (const auto* flag = std::get_if<bool>(&value)) return Json(*flag);
  if (const auto* text = std::get_if<std::string_view>(&value)) return Json(std::string(*text));
  return nullptr;
}

void add_unknown_key(Problems& problems, const JsonPath& path, const Json& value,
                     std::string_view known) {
  add_problem(problems, path, shown_json(value), "one of the keys " + std::string(known));
}

bool is_object(const Json& json, const JsonPath& path, Problems& problems) {
  if (!json.is_object()) add_problem(problems, path, shown_json(json), "an object");
  return json.is_object();
}

bool is_list(const Json& json, const JsonPath& path, Problems& problems) {
  if (!json.is_array()) add_problem(problems, path, shown_json(json), "a list");
  return json.is_array();
}

bool version_readable(const Json& document, std::string_view key, std::int64_t version,
                      Problems& problems, const JsonPath& path) {
  const auto found = document.find(std::string(key));
  const bool there = found != document.end();
  if (there && whole_from_json(*found) == version) return true;
  add_problem(problems, path.member(key), there ? shown_json(*found) : "nothing",
              std::to_string(version) + ", the version of this kind of document");
  return !there;
}

}  // namespace widegate
