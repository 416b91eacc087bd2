#include "core/field/field_json.h"
#include "core/plan/plan_fields.h"
#include "tools/schema/schema.h"

namespace widegate::schema {
namespace {

/// The schema at a pointer, made on the way; "#" steps into the items of a list.
Json& place_at(Json& root, std::string_view pointer) {
  Json* at = &root;
  while (!pointer.empty()) {
    pointer.remove_prefix(1);
    const std::string step(pointer.substr(0, pointer.find('/')));
    pointer.remove_prefix(step.size());
    if (step == "#") {
      Json& items = (*at)["items"];
      if (items.is_null()) items = closed_object();
      at = &items;
      continue;
    }
    Json& place = (*at)["properties"][step];
    if (place.is_null() && !pointer.empty() && pointer.substr(0, 2) != "/#")
      place = closed_object();
    at = &place;
  }
  return *at;
}

void add_lists(Json& schema) {
  Json& lines = place_at(schema, kFrameLinesPointer);
  lines["title"] = "Frame lines; the first is the main one";
  lines["type"] = "array";
  lines["minItems"] = 1;
  lines["maxItems"] = kMaxFrameLines;
  place_at(schema, kCamerasPointer) = {
      {"title", "Cameras considered; none for all"},
      {"type", "array"},
      {"uniqueItems", true},
      {"items", {{"type", "string"}, {"pattern", "^[a-z0-9][a-z0-9.-]{0,47}$"}}}};
  Json own = closed_object();
  own["title"] = "One's own rows, found before the library's";
  add_list_properties(own["properties"], "catalogue.schema.json#/$defs/");
  place_at(schema, "/own") = own;
}

}  // namespace

Json plan_schema() {
  Json schema = document_schema(
      "plan.schema.json", "Widegate plan",
      "Everything a person chose. Keys left out keep their default. Ids must name rows of the "
      "library or of the plan's own; that, and values that only hold beside one another, is "
      "checked "
      "by `widegate check`.",
      "widegate_plan");
  const Plan plan;
  for (const FieldInfo& info : plan_fields()) {
    Json field = field_schema(info);
    field["default"] = value_to_json(info, info.read(plan, 0));
    place_at(schema, info.pointer) = std::move(field);
  }
  add_lists(schema);
  return schema;
}

}  // namespace widegate::schema
