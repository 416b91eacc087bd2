#include "core/field/field_json.h"
#include "core/lesson/lesson_fields.h"
#include "core/plan/plan_fields.h"
#include "tools/schema/schema.h"

namespace widegate::schema {
namespace {

/// A property for every field; one that a new owner does not hold rightly must be there.
template <class Owner>
void add_fields(Json& schema, std::span<const Field<Owner>> fields) {
  const Owner plain;
  for (const Field<Owner>& info : fields) {
    const std::string key(info.pointer.substr(1));
    Json field = field_schema(info);
    const FieldValue value = info.read(plain, 0);
    if (value_accepted(info, value)) {
      field["default"] = value_to_json(info, value);
    } else {
      schema["required"].push_back(key);
    }
    schema["properties"][key] = std::move(field);
  }
}

Json list_of(const char* title, const char* items, std::size_t most) {
  return {{"title", title},
          {"type", "array"},
          {"minItems", 1},
          {"maxItems", most},
          {"items", {{"$ref", items}}}};
}

Json figure_schema() {
  Json schema = closed_object();
  add_fields(schema, lesson_figure_fields());
  return schema;
}

/// The properties of a plan, none of them with what it is when left out.
Json without_defaults(Json schema) {
  if (schema.is_object()) {
    schema.erase("default");
    if (schema.contains("required")) schema.erase("required");
  }
  if (!schema.is_structured()) return schema;
  for (Json& each : schema) each = without_defaults(std::move(each));
  return schema;
}

Json difference_schema() {
  Json schema = without_defaults({{"properties", plan_schema()["properties"]}});
  schema["properties"].erase("widegate_plan");
  schema["properties"].erase("mandate");
  schema["properties"]["choose"]["properties"].erase("must_meet_mandate");
  Json difference = closed_object();
  difference["title"] = "What is other than in the step before";
  difference["properties"] = std::move(schema["properties"]);
  return difference;
}

Json step_schema() {
  Json schema = closed_object();
  add_fields(schema, lesson_step_fields());
  schema["required"].push_back("figures");
  schema["properties"]["plan"] = {
      {"title", "The plan of the step: whole, or what is other than in the step before"},
      {"anyOf",
       {{{"$ref", "plan.schema.json"}}, {{"$ref", "lesson.schema.json#/$defs/difference"}}}}};
  schema["properties"]["figures"] = list_of("Figures to watch; the working of the first is shown",
                                            "lesson.schema.json#/$defs/figure", kMaxLessonFigures);
  return schema;
}

}  // namespace

Json lesson_schema() {
  Json schema = document_schema(
      "lesson.schema.json", "Widegate lesson",
      "Steps of words, a plan, the control to move and the figures that prove the words. Whether "
      "plans, figures and step numbers fit one another, and whether the claims hold, is told by "
      "`widegate check`.",
      "widegate_lesson");
  add_fields(schema, lesson_fields());
  schema["required"].push_back("steps");
  schema["properties"]["steps"] =
      list_of("Steps, in order", "lesson.schema.json#/$defs/step", kMaxLessonSteps);
  schema["$defs"] = {
      {"step", step_schema()}, {"figure", figure_schema()}, {"difference", difference_schema()}};
  return schema;
}

}  // namespace widegate::schema
