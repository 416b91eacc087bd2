#include "core/handover/link/link_rows.h"

namespace widegate {

void write_value(LinkWriter& writer, const FieldSpec& spec, const FieldValue& value) {
  const bool nothing = std::holds_alternative<std::monostate>(value);
  if (spec.optional) writer.count(nothing ? 0 : 1);
  if (const auto* decimal = std::get_if<double>(&value)) writer.decimal(*decimal);
  if (const auto* fraction = std::get_if<Rational>(&value)) writer.fraction(*fraction);
  if (const auto* whole = std::get_if<std::int64_t>(&value)) writer.whole(*whole);
  if (const auto* flag = std::get_if<bool>(&value)) writer.count(*flag ? 1 : 0);
  if (const auto* text = std::get_if<std::string_view>(&value)) writer.text(*text);
}

namespace {

FieldValue read_present(LinkReader& reader, FieldKind kind, std::string& storage) {
  switch (kind) {
    case FieldKind::decimal:
      return reader.decimal();
    case FieldKind::fraction:
    case FieldKind::rate:
      return reader.fraction();
    case FieldKind::whole:
    case FieldKind::choice:
      return reader.whole();
    case FieldKind::flag:
      return reader.count() != 0;
    case FieldKind::text:
    case FieldKind::id:
      storage = reader.text();
      return std::string_view(storage);
  }
  return {};
}

}  // namespace

FieldValue read_value(LinkReader& reader, const FieldSpec& spec, std::string& storage) {
  const bool present = !spec.optional || reader.count() != 0;
  const FieldValue value =
      present ? read_present(reader, spec.kind, storage) : FieldValue(std::monostate());
  if (!value_accepted(spec, value)) reader.fail();
  return value;
}

std::size_t tag_of(std::span<const std::string_view> tags, std::string_view pointer) {
  const auto at = std::find(tags.begin(), tags.end(), pointer);
  return at == tags.end() ? 0 : static_cast<std::size_t>(at - tags.begin()) + 1;
}

}  // namespace widegate
