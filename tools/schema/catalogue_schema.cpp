#include "core/catalogue/catalogue_fields.h"
#include "core/catalogue/catalogue_object.h"
#include "tools/schema/schema.h"

namespace widegate::schema {
namespace {

/// Name of a row type in "$defs".
std::string name_of(const Camera&) { return "camera"; }
std::string name_of(const LensSet&) { return "lens_set"; }
std::string name_of(const Codec&) { return "codec"; }
std::string name_of(const Card&) { return "card"; }
std::string name_of(const Link&) { return "link"; }
std::string name_of(const Drive&) { return "drive"; }
std::string name_of(const Tape&) { return "tape"; }
std::string name_of(const Checksum&) { return "checksum"; }
std::string name_of(const Container&) { return "container"; }

Json list_of(Json items, int at_least) {
  Json list = {{"type", "array"}};
  if (at_least > 0) list["minItems"] = at_least;
  list["items"] = std::move(items);
  return list;
}

Json id_list(int at_least) {
  Json ids = list_of({{"type", "string"}, {"pattern", "^[a-z0-9][a-z0-9.-]{0,47}$"}}, at_least);
  ids["uniqueItems"] = true;
  return ids;
}

Json reference(const char* name) { return {{"$ref", "#/$defs/" + std::string(name)}}; }

/// The schema of a key of a row, or of a part of it ("facts/chroma") that is made on the way.
Json& place_in(Json& row, const std::string& key) {
  const auto end = key.find('/');
  if (end == std::string::npos) return row["properties"][key];
  Json& part = row["properties"][key.substr(0, end)];
  if (part.is_null()) part = closed_object();
  return place_in(part, key.substr(end + 1));
}

/// The scalars of a row; required are those whose default would not be accepted.
template <class Row>
Json row_schema() {
  Json schema = closed_object();
  Json required = Json::array();
  const Row fresh;
  for (const Field<Row>& info : row_fields<Row>()) {
    const std::string key(info.pointer.substr(1));
    place_in(schema, key) = field_schema(info);
    if (!value_accepted(info, info.read(fresh, 0))) required.push_back(key);
  }
  if (!required.empty()) schema["required"] = std::move(required);
  return schema;
}

/// Adds a list that a row must have.
void add_list(Json& row, const char* key, Json list) {
  row["properties"][key] = std::move(list);
  row["required"].push_back(key);
}

/// Sizes come in any two of photosites, millimetres and pitch; `at_least` lists what must be there.
void relax_size(Json& row, Json at_least) {
  row["properties"]["pitch_um"] = field_schema(pitch_spec());
  Json required = Json::array();
  for (const Json& key : row["required"]) {
    const std::string& name = key.get_ref<const std::string&>();
    const bool size = name.substr(0, 6) == "width_" || name.substr(0, 7) == "height_";
    if (!size) required.push_back(key);
  }
  row["required"] = std::move(required);
  row["anyOf"] = std::move(at_least);
}

Json requires_all(std::initializer_list<const char*> keys) {
  Json list = Json::array();
  for (const char* key : keys) list.push_back(key);
  return {{"required", list}};
}

Json camera_schema() {
  Json row = row_schema<Camera>();
  relax_size(row, {requires_all({"width_photosites", "height_photosites", "pitch_um"}),
                   requires_all({"width_photosites", "height_photosites", "width_mm", "height_mm"}),
                   requires_all({"width_mm", "height_mm", "pitch_um"})});
  row["properties"]["media"] = id_list(0);
  add_list(row, "modes", list_of(reference("mode"), 1));
  return row;
}

Json mode_schema() {
  Json row = row_schema<SensorMode>();
  relax_size(row, {requires_all({"width_photosites", "height_photosites"}),
                   requires_all({"width_mm", "height_mm", "pitch_um"})});
  add_list(row, "recordings", list_of(reference("recording"), 1));
  return row;
}

Json recording_schema() {
  Json row = row_schema<Recording>();
  add_list(row, "codecs", id_list(1));
  return row;
}

Json table_schema() {
  Json row = row_schema<TableForm::Row>();
  row["properties"]["rates"] = list_of(field_schema(table_rate_spec()), 0);
  Json table = closed_object();
  add_list(table, "rows", list_of(std::move(row), 1));
  return table;
}

Json codec_schema() {
  Json row = row_schema<Codec>();
  const Json forms[] = {
      row_schema<PackedForm>(),     row_schema<RatioForm>(), row_schema<LosslessForm>(),
      row_schema<MacroblockForm>(), table_schema(),          row_schema<BitRateForm>(),
      row_schema<MeasuredForm>()};
  static_assert(std::size(forms) == std::size(kFormKeys));
  Json one_of = Json::array();
  for (std::size_t i = 0; i < std::size(forms); ++i) {
    const std::string key(kFormKeys[i]);
    row["properties"][key] = forms[i];
    one_of.push_back({{"required", {key}}});
  }
  row["oneOf"] = std::move(one_of);
  return row;
}

Json lens_set_schema() {
  Json row = row_schema<LensSet>();
  row["properties"]["extenders"] = list_of(field_schema(extender_spec()), 0);
  row["properties"]["extenders"]["uniqueItems"] = true;
  add_list(row, "lenses", list_of(row_schema<Lens>(), 1));
  return row;
}

}  // namespace

void add_list_properties(Json& properties, const std::string& rows_at) {
  const Catalogue none;
  for_each_list(none, [&](std::string_view key, const auto& rows) {
    using Row = typename std::remove_cvref_t<decltype(rows)>::value_type;
    properties[std::string(key)] = list_of({{"$ref", rows_at + name_of(Row{})}}, 0);
  });
}

Json catalogue_schema() {
  Json schema = document_schema(
      "catalogue.schema.json", "Widegate catalogue",
      "Cameras, lenses, codecs, cards and what data passes through. Ids are unique within each "
      "list; "
      "that, and rows that only hold beside one another, is checked by `widegate check`.",
      "widegate_catalogue");
  add_list_properties(schema["properties"], "#/$defs/");
  Json& definitions = schema["$defs"];
  definitions = {{"camera", camera_schema()},
                 {"mode", mode_schema()},
                 {"recording", recording_schema()},
                 {"lens_set", lens_set_schema()},
                 {"codec", codec_schema()},
                 {"card", row_schema<Card>()},
                 {"link", row_schema<Link>()},
                 {"drive", row_schema<Drive>()},
                 {"tape", row_schema<Tape>()},
                 {"checksum", row_schema<Checksum>()},
                 {"container", row_schema<Container>()}};
  return schema;
}

}  // namespace widegate::schema
