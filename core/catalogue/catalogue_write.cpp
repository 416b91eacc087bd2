#include <utility>

#include "core/catalogue/catalogue_fields.h"
#include "core/catalogue/catalogue_object.h"
#include "core/field/field_json.h"

namespace widegate {
namespace {

/// Scalars by their keys; of a part of a row only what differs from a new row, so that a part that
/// says nothing is not there.
template <class Row>
Json scalars_to_object(const Row& row) {
  Json object = Json::object();
  const Row fresh;
  for (const Field<Row>& info : row_fields<Row>()) {
    const FieldValue value = info.read(row, 0);
    if (std::holds_alternative<std::monostate>(value)) continue;
    const bool in_part = info.pointer.find('/', 1) != std::string_view::npos;
    if (in_part && value == info.read(fresh, 0)) continue;
    object[Json::json_pointer(std::string(info.pointer))] = value_to_json(info, value);
  }
  return object;
}

Json numbers_to_json(const FieldSpec& spec, const std::vector<Rational>& numbers) {
  Json list = Json::array();
  for (const Rational number : numbers) list.push_back(value_to_json(spec, number));
  return list;
}

template <class Row>
Json row_to_json(const Row& row) {
  return scalars_to_object(row);
}

template <class Row>
Json list_to_json(const std::vector<Row>& rows);

Json row_to_json(const Recording& row) {
  Json object = scalars_to_object(row);
  object["codecs"] = row.codecs;
  return object;
}

Json row_to_json(const SensorMode& row) {
  Json object = scalars_to_object(row);
  object["recordings"] = list_to_json(row.recordings);
  return object;
}

Json row_to_json(const Camera& row) {
  Json object = scalars_to_object(row);
  if (!row.media.empty()) object["media"] = row.media;
  object["modes"] = list_to_json(row.modes);
  return object;
}

Json row_to_json(const LensSet& row) {
  Json object = scalars_to_object(row);
  if (!row.extenders.empty()) object["extenders"] = numbers_to_json(extender_spec(), row.extenders);
  object["lenses"] = list_to_json(row.lenses);
  return object;
}

Json row_to_json(const TableForm::Row& row) {
  Json object = scalars_to_object(row);
  if (!row.rates.empty()) object["rates"] = numbers_to_json(table_rate_spec(), row.rates);
  return object;
}

Json row_to_json(const TableForm& form) { return Json{{"rows", list_to_json(form.rows)}}; }

Json row_to_json(const Codec& row) {
  Json object = scalars_to_object(row);
  object[std::string(kFormKeys[row.form.index()])] =
      std::visit([](const auto& form) { return row_to_json(form); }, row.form);
  return object;
}

template <class Row>
Json list_to_json(const std::vector<Row>& rows) {
  Json list = Json::array();
  for (const Row& row : rows) list.push_back(row_to_json(row));
  return list;
}

}  // namespace

void add_catalogue(Json& object, const Catalogue& catalogue) {
  for_each_list(catalogue, [&](std::string_view key, const auto& rows) {
    if (!rows.empty()) object[std::string(key)] = list_to_json(rows);
  });
}

}  // namespace widegate
