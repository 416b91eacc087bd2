// One scalar value of a plan or a catalogue row: what kind it is, its limits, its words, and how it
// is read and written. The tables themselves are in plan_fields.h and catalogue_fields.h; JSON is
// in field_json.h.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <type_traits>
#include <variant>
#include <vector>

#include "core/base/problem.h"
#include "core/base/rational.h"

namespace widegate {

enum class FieldKind {
  decimal,   ///< double
  fraction,  ///< Rational
  rate,      ///< Rational in frames per second; 23.976 and its like are names of exact fractions.
  whole,     ///< std::int64_t
  text,      ///< std::string for people
  id,        ///< std::string naming a row of the library, or a row's own id
  choice,    ///< enumeration
  flag,      ///< bool
};

/// Which list of the library an id names a row of. A mode belongs to the chosen camera, a recording
/// option to the chosen mode, a codec to the chosen recording option.
enum class IdList {
  none,
  self,  ///< The row's own id: names nothing else.
  camera,
  mode,
  recording,
  codec,
  lens_set,
  container,
  card,
  link,
  drive,
  tape,
  checksum,
  card_kind,  ///< What cards and cameras have in common: names no row.
};

/// One enumerator of a choice, in the order of the enumeration.
struct ChoiceName {
  std::string_view token;  ///< In JSON and on the command line.
  std::string_view label;  ///< For people.
};

/// What one field is and what it accepts.
struct FieldSpec {
  /// RFC 6901 pointer from its owner; "#" stands for the index of a frame line.
  std::string_view pointer = {};
  std::string_view label = {};  ///< Plain words of the trade, no unit.
  std::string_view unit = {};   ///< "mm", "fps"; empty for a plain number.
  FieldKind kind = FieldKind::text;
  bool optional = false;  ///< May hold nothing (JSON null, empty text).
  /// Limits of a number, or of the length of a text in bytes. Both ends are accepted unless
  /// excluded.
  Rational low = 0;
  Rational high = 0;
  bool low_excluded = false;
  bool high_excluded = false;
  std::int64_t max_num = 0;  ///< Fractions: largest numerator and denominator in lowest terms,
  std::int64_t max_den = 0;  ///< so that exact arithmetic on them cannot overflow.
  Rational step = 0;         ///< Suggested step of a slider or of the arrow keys; 0: none.
  Rational usual_low = 0;    ///< Suggested ends of a slider; equal when low and high serve.
  Rational usual_high = 0;
  std::span<const ChoiceName> choices = {};
  IdList ids = IdList::none;
};

/// Any value of any field: nothing (optional fields), or the type of the field's kind; a choice is
/// the number of its enumerator. Text is a view into whatever it was read from.
using FieldValue =
    std::variant<std::monostate, double, Rational, std::int64_t, bool, std::string_view>;

/// A field together with the way to its value inside an Owner. `line` is the index that "#" in the
/// pointer stands for, below the size of its list; any number for other fields.
template <class Owner>
struct Field : FieldSpec {
  FieldValue (*read)(const Owner& owner, std::size_t line) = nullptr;
  /// The value has passed value_accepted().
  void (*write)(Owner& owner, std::size_t line, const FieldValue& value) = nullptr;
  std::uint64_t holder = 0;  ///< holder_id of the struct that declares the member.
  bool per_line = false;     ///< The pointer has a "#".
};

/// What the field accepts, as a noun phrase: "a number from 1 to 3000 mm".
[[nodiscard]] std::string accepted_values(const FieldSpec& spec);

/// True when the value is of the field's kind and inside its limits (an id: well-formed, or empty
/// when optional; whether it names a row is for plan_check.h).
[[nodiscard]] bool value_accepted(const FieldSpec& spec, const FieldValue& value);

/// The value as text that value_from_text() reads back: "35", "24000/1001", "common_top", "true".
/// Nothing is empty text.
[[nodiscard]] std::string value_text(const FieldSpec& spec, const FieldValue& value);

/// The value for a message: text quoted, nothing as "nothing", the rest as value_text().
[[nodiscard]] std::string shown_value(const FieldSpec& spec, const FieldValue& value);

/// Reads what a person types: "2.39", "2,39", "2.39:1", "239/100", "35 mm", "yes". Rates take the
/// usual roundings of the 1000/1001 family (23.976 and 23.98 are 24000/1001). Empty text is nothing
/// for an optional field. A returned text value is a view into `text`.
/// @return nothing when the text is not understood; limits are not checked here.
[[nodiscard]] std::optional<FieldValue> value_from_text(const FieldSpec& spec,
                                                        std::string_view text);

/// The exact rate that a rounded decimal stands for: 2997/125 (23.976) and 1199/50 (23.98) give
/// 24000/1001. Nothing for any other value.
[[nodiscard]] std::optional<Rational> rate_behind_rounding(Rational rounded);

namespace field_detail {

template <class T>
inline constexpr bool kIsVector = false;
template <class T>
inline constexpr bool kIsVector<std::vector<T>> = true;
template <class T>
inline constexpr bool kIsOptional = false;
template <class T>
inline constexpr bool kIsOptional<std::optional<T>> = true;

template <class T>
struct MemberPointer;
template <class Holder, class Value>
struct MemberPointer<Value Holder::*> {
  using holder = Holder;
  using value = Value;
};

template <auto First, auto...>
struct FirstMember : MemberPointer<decltype(First)> {};
template <auto First, auto... Rest>
struct LastMember : LastMember<Rest...> {};
template <auto Only>
struct LastMember<Only> : MemberPointer<decltype(Only)> {};

/// Follows member pointers; a list on the way is entered at `line`.
template <auto First, auto... Rest>
constexpr auto& follow(auto& owner, std::size_t line) {
  auto& member = owner.*First;
  if constexpr (sizeof...(Rest) == 0) {
    return member;
  } else if constexpr (kIsVector<std::remove_cvref_t<decltype(member)>>) {
    return follow<Rest...>(member[line], line);
  } else {
    return follow<Rest...>(member, line);
  }
}

template <class T>
FieldValue to_value(const T& member) {
  if constexpr (kIsOptional<T>) {
    return member ? to_value(*member) : FieldValue{};
  } else if constexpr (std::is_enum_v<T>) {
    return static_cast<std::int64_t>(member);
  } else if constexpr (std::is_same_v<T, std::string>) {
    return std::string_view(member);
  } else {
    return member;
  }
}

template <class T>
void from_value(T& member, const FieldValue& value) {
  if constexpr (kIsOptional<T>) {
    if (std::holds_alternative<std::monostate>(value)) {
      member.reset();
    } else {
      from_value(member.emplace(), value);
    }
  } else if constexpr (std::is_enum_v<T>) {
    if (const auto* number = std::get_if<std::int64_t>(&value)) member = static_cast<T>(*number);
  } else if constexpr (std::is_same_v<T, std::string>) {
    if (const auto* text = std::get_if<std::string_view>(&value)) member = std::string(*text);
  } else {
    if (const auto* plain = std::get_if<T>(&value)) member = *plain;
  }
}

template <class T>
constexpr FieldKind kind_of(const FieldSpec& spec) {
  if constexpr (kIsOptional<T>) {
    return kind_of<typename T::value_type>(spec);
  } else if constexpr (std::is_enum_v<T>) {
    return FieldKind::choice;
  } else if constexpr (std::is_same_v<T, std::string>) {
    return spec.ids == IdList::none ? FieldKind::text : FieldKind::id;
  } else if constexpr (std::is_same_v<T, Rational>) {
    return spec.unit == "fps" ? FieldKind::rate : FieldKind::fraction;
  } else if constexpr (std::is_same_v<T, double>) {
    return FieldKind::decimal;
  } else if constexpr (std::is_same_v<T, bool>) {
    return FieldKind::flag;
  } else {
    static_assert(std::is_same_v<T, std::int64_t>, "a field of this type has no kind yet");
    return FieldKind::whole;
  }
}

}  // namespace field_detail

/// A number that stands for the struct T in Field::holder: FNV-1a of the compiler's name for it
/// (addresses cannot be compared at compile time under GCC's sanitizers).
template <class T>
[[nodiscard]] consteval std::uint64_t holder_id() {
  std::uint64_t hash = 0xcbf29ce484222325;
  for (const char c : std::string_view(__PRETTY_FUNCTION__)) {
    hash = (hash ^ static_cast<unsigned char>(c)) * 0x100000001b3;
  }
  return hash;
}

/// One row of a table of fields: field<&Plan::lens, &LensChoice::focal_mm>({...}). Kind and
/// optional follow from the member's type (and "fps" makes a fraction a rate, ids make a text an
/// id).
template <auto... Path>
[[nodiscard]] constexpr auto field(FieldSpec spec) {
  using Owner = typename field_detail::FirstMember<Path...>::holder;
  using Last = field_detail::LastMember<Path...>;
  Field<Owner> row;
  static_cast<FieldSpec&>(row) = spec;
  row.kind = field_detail::kind_of<typename Last::value>(spec);
  row.optional = spec.optional || field_detail::kIsOptional<typename Last::value>;
  row.read = [](const Owner& owner, std::size_t line) {
    return field_detail::to_value(field_detail::follow<Path...>(owner, line));
  };
  row.write = [](Owner& owner, std::size_t line, const FieldValue& value) {
    field_detail::from_value(field_detail::follow<Path...>(owner, line), value);
  };
  row.holder = holder_id<typename Last::holder>();
  row.per_line = spec.pointer.find('#') != std::string_view::npos;
  return row;
}

/// How many rows of a table are members that `Holder` declares itself; compared with its member
/// count so that a forgotten member does not compile.
template <class Holder, class Table>
[[nodiscard]] consteval std::size_t rows_of(const Table& table) {
  std::size_t count = 0;
  for (const auto& row : table) {
    if (row.holder == holder_id<Holder>()) ++count;
  }
  return count;
}

/// Names in a list "a, b, c".
[[nodiscard]] consteval std::size_t names_in(std::string_view list) {
  std::size_t names = 1;
  for (const char c : list) names += c == ',' ? 1 : 0;
  return names;
}

}  // namespace widegate

/// Keeps a table complete: binds every member of Type by name, so a new member does not compile
/// until it stands in the list, and then not until `rows` has grown by its row. `others` counts the
/// members that are no scalars and are handled beside the table.
#define WIDEGATE_EVERY_MEMBER(Type, rows, others, ...)                 \
  [[maybe_unused]] static void bind_members(const Type& it) {          \
    [[maybe_unused]] const auto& [__VA_ARGS__] = it;                   \
  }                                                                    \
  static_assert((rows) + (others) == widegate::names_in(#__VA_ARGS__), \
                "a member of " #Type " has no row")
