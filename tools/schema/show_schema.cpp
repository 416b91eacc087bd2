#include "core/field/field_json.h"
#include "core/show/show_fields.h"
#include "tools/schema/schema.h"

namespace widegate::schema {
namespace {

/// The schema of a key of a row, or of a part of it ("price/date") that is made on the way.
Json& place_in(Json& row, std::string_view key) {
  const auto end = key.find('/');
  if (end == std::string_view::npos) return row["properties"][std::string(key)];
  Json& part = row["properties"][std::string(key.substr(0, end))];
  if (part.is_null()) part = closed_object();
  return place_in(part, key.substr(end + 1));
}

/// Adds the scalars of a row; required are those whose default would not be accepted.
template <class Row>
void add_scalars(Json& schema) {
  const Row fresh;
  for (const Field<Row>& info : show_fields<Row>()) {
    const std::string_view key = info.pointer.substr(1);
    Json field = field_schema(info);
    const FieldValue value = info.read(fresh, 0);
    if (value_accepted(info, value)) {
      field["default"] = value_to_json(info, value);
    } else {
      schema["required"].push_back(std::string(key));
    }
    place_in(schema, key) = std::move(field);
  }
}

Json list_of(Json items, std::size_t least, std::size_t most) {
  Json list = {{"type", "array"}};
  if (least > 0) list["minItems"] = least;
  list["maxItems"] = most;
  list["items"] = std::move(items);
  return list;
}

Json day_schema() { return {{"type", "string"}, {"format", "date"}}; }

Json weekdays_schema() {
  Json names = Json::array();
  for (const ChoiceName& day : weekday_names()) names.push_back(std::string(day.token));
  Json list = list_of({{"enum", names}}, 0, 6);
  list["title"] = "Days of the week that are off, in their order";
  list["uniqueItems"] = true;
  return list;
}

Json part_schema() {
  Json part = closed_object();
  add_scalars<ShowPart>(part);
  part["properties"]["plan"] = {{"$ref", "plan.schema.json"}};
  part["required"].push_back("plan");
  return part;
}

}  // namespace

Json show_schema() {
  Json schema = document_schema(
      "show.schema.json", "Widegate show",
      "Several plans that shoot together. Names and models must be known, days rise, and an amount "
      "has its currency; that is checked by `widegate check`.",
      "widegate_show");
  add_scalars<Show>(schema);
  Json& properties = schema["properties"];
  properties["parts"] = list_of(part_schema(), 1, kMaxShowParts);
  schema["required"].push_back("parts");
  const Show none;
  for_show_lists(none, [&](std::string_view key, const auto& rows) {
    using Row = typename std::remove_cvref_t<decltype(rows)>::value_type;
    Json row = closed_object();
    add_scalars<Row>(row);
    properties[std::string(key)] = list_of(std::move(row), 0, kMaxShowRows);
  });
  Json& calendar = properties["calendar"]["properties"];
  calendar["weekdays_off"] = weekdays_schema();
  calendar["days_off"] = list_of(day_schema(), 0, kMaxShowDaysOff);
  calendar["days_off"]["title"] = "Days off, named one by one, rising";
  return schema;
}

}  // namespace widegate::schema
