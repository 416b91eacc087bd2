#include "core/field/field_json.h"
#include "tools/schema/schema.h"

namespace widegate::schema {
namespace {

constexpr const char* kFractionPattern = "^-?[0-9]+([.][0-9]+|/[0-9]+)?$";
constexpr const char* kPlainPattern = "^[^\\u0000-\\u001f\\u007f-\\u009f]*$";
constexpr const char* kIdPattern = "^[a-z0-9][a-z0-9.-]{0,47}$";
constexpr const char* kOptionalIdPattern = "^([a-z0-9][a-z0-9.-]{0,47})?$";

void add_limits(Json& schema, const FieldSpec& spec) {
  const auto number = [](Rational limit) {
    return limit.whole() ? Json(limit.num()) : Json(limit.to_double());
  };
  schema[spec.low_excluded ? "exclusiveMinimum" : "minimum"] = number(spec.low);
  schema[spec.high_excluded ? "exclusiveMaximum" : "maximum"] = number(spec.high);
}

Json fraction_schema(const FieldSpec& spec) {
  Json number = {{"type", "number"}};
  add_limits(number, spec);
  return {{"anyOf", {number, {{"type", "string"}, {"pattern", kFractionPattern}}}}};
}

Json text_schema(const FieldSpec& spec) {
  return {{"type", "string"},
          {"minLength", spec.low > Rational(0) ? 1 : 0},
          {"maxLength", spec.high.num()},
          {"pattern", kPlainPattern}};
}

Json number_schema(const char* type, const FieldSpec& spec) {
  Json schema = {{"type", type}};
  add_limits(schema, spec);
  return schema;
}

Json choice_schema(const FieldSpec& spec) {
  Json tokens = Json::array();
  for (const ChoiceName& choice : spec.choices) tokens.push_back(std::string(choice.token));
  return {{"enum", tokens}};
}

Json kind_schema(const FieldSpec& spec) {
  switch (spec.kind) {
    case FieldKind::decimal:
      return number_schema("number", spec);
    case FieldKind::fraction:
    case FieldKind::rate:
      return fraction_schema(spec);
    case FieldKind::whole:
      return number_schema("integer", spec);
    case FieldKind::text:
      return text_schema(spec);
    case FieldKind::id:
      return {{"type", "string"}, {"pattern", spec.optional ? kOptionalIdPattern : kIdPattern}};
    case FieldKind::choice:
      return choice_schema(spec);
    case FieldKind::flag:
      return {{"type", "boolean"}};
  }
  return {};
}

}  // namespace

Json field_schema(const FieldSpec& spec) {
  Json schema = {{"title", std::string(spec.label)},
                 {"description", "Accepted: " + accepted_values(spec) + "."}};
  Json kind = kind_schema(spec);
  if (spec.optional && spec.kind != FieldKind::id) {
    schema["anyOf"] = {std::move(kind), {{"type", "null"}}};
  } else {
    schema.update(kind);
  }
  return schema;
}

Json closed_object() {
  return {{"type", "object"}, {"additionalProperties", false}, {"properties", Json::object()}};
}

Json document_schema(const char* file, const char* title, const char* description,
                     const char* version_key) {
  Json schema = {{"$schema", "https://json-schema.org/draft/2020-12/schema"},
                 {"$id", file},
                 {"title", title},
                 {"description", description}};
  schema.update(closed_object());
  schema["required"] = {version_key};
  schema["properties"][version_key] = {{"const", 1}, {"title", "Version of this kind of document"}};
  return schema;
}

}  // namespace widegate::schema
